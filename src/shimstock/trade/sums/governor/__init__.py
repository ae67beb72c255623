"""Governors: springs and weights, droop, and how steadily an engine is held."""
