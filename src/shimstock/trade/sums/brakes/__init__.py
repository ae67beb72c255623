"""Brakes: shoes, bands and blocks, linings and rivets, stopping and its heat."""
