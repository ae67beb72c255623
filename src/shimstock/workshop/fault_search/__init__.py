"""A search for a fault as it stands: what is told, how likely each cause is, what to check next."""
