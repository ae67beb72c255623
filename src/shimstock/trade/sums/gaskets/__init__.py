"""Gaskets: bolt load, stiffness, squeeze, bolt spacing and edge."""
