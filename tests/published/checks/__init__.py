"""Published values by family: each module has CHECKS, and may have MISPRINTS."""
