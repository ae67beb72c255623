"""Keys, key seats and bearings that are known by their size."""
