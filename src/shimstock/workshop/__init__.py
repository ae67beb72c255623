"""What this workshop remembers: its machines, readings, joints, orders and diary."""
