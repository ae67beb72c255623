"""Limits and fits, and what holds a part that is pressed or shrunk on."""
