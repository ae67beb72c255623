"""The ways in and out: the same acts, typed, and on paper."""
