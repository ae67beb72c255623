"""Weights and lifting: axle loads, centre of gravity, ballast, slings and rearing."""
