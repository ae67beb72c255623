"""Sums of the engine."""
