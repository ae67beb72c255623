"""Diesel injection: deliveries, holes, squeezed fuel, waves in the pipe, and pumps in balance."""
