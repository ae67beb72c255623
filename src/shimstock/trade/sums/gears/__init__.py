"""Backlash, ratios and how play travels through a train of gears."""
