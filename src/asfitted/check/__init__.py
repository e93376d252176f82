"""Compare the figures of a job with their limits. Nothing is computed or changed here."""
