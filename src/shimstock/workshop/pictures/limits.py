"""How large a picture may be."""

MOST_BYTES = 40_000_000
MOST_PIXELS = 64_000_000


def too_many_bytes(count: int) -> str:
    """Say that a file is too large."""
    most = f"{MOST_BYTES / 1e6:.0f} MB"
    return f"It has {count / 1e6:.1f} MB; {most} is the most. Send it smaller."


def too_many_pixels(how_many: str) -> str:
    """Say that a picture is too large."""
    most = f"{MOST_PIXELS / 1e6:.0f} megapixels"
    return f"It has {how_many}; {most} is the most. Send it smaller."
