"""Drive: ground speed, belts and pulleys, power take-off, hydraulics and traction."""
