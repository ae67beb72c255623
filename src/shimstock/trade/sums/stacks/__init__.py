"""Tolerances that add up."""
