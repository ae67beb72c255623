"""Power: brakes, drawbar and fuel, corrections to reference air, and what a test means."""
