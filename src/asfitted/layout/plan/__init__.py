"""The key plan: rooms from above, what stands where, and which sheet shows which wall."""
