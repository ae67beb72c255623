"""How thick a shim must be."""
