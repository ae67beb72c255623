"""Screws, bolts and threads: how strong, how tight, in which order, and which thread it is."""
