"""Play in a chain: what each link is likely to have, by everything that was read along it."""
