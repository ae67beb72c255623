"""Electrics: wires, starter cables, batteries, ballast resistors, lamps and fuses."""
