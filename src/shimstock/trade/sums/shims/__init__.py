"""How thick a shim must be, which shims make it up, and what play it leaves."""
