"""What benchmarks are run on, made anew each time."""
