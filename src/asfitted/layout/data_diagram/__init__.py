"""The CCTV and data diagram: one row for each device, cable legs left to right, ports in order."""
