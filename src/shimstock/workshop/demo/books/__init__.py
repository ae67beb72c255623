"""The books of the two invented machines."""

from importlib.resources import files

NAMES = ("brackwater-40", "lowmere-crawler")


def demo_book(name: str) -> str:
    """The text of one of the books in `NAMES`."""
    return files(__name__).joinpath(f"{name}.yaml").read_text(encoding="utf-8")
