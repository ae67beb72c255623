"""Files on their way, a piece at a time, each under a key of its own."""

from __future__ import annotations

import time
from contextlib import suppress
from pathlib import Path

from shimstock.workshop.pictures.store import FOLDER

PIECE = 512_000
"""Bytes of one piece at most: it is through before a bad line breaks again."""
FORGOTTEN = 30 * 24 * 3600  # seconds after which nobody will send the rest


class NotNext(Exception):
    """A piece that does not follow on what is here; `offset` is where the next one begins."""

    def __init__(self, offset: int) -> None:
        self.offset = offset
        super().__init__(f"the next piece begins at {offset}")


def begin(shed: Path, key: str) -> None:
    """Make room for a file, and throw away what was begun long ago and never sent whole."""
    folder = _part(shed, key).parent
    folder.mkdir(parents=True, exist_ok=True)
    for old in folder.iterdir():
        with suppress(FileNotFoundError):  # another one was kept this moment
            if time.time() - old.stat().st_mtime > FORGOTTEN:
                old.unlink()
    _part(shed, key).touch()


def arrived(shed: Path, key: str) -> int | None:
    """How many bytes have arrived; None where nothing was begun."""
    part = _part(shed, key)
    return part.stat().st_size if part.is_file() else None


def add(shed: Path, key: str, offset: int, piece: bytes) -> int:
    """Put a piece where it belongs; gives how many bytes have arrived then. Raises NotNext.

    A piece that is sent twice at once is written twice at the same place, so nothing is doubled.
    """
    part = _part(shed, key)
    if part.stat().st_size != offset:
        raise NotNext(part.stat().st_size)
    with part.open("r+b") as out:
        out.seek(offset)
        out.write(piece)
    return offset + len(piece)


def whole(shed: Path, key: str) -> bytes:
    """All that has arrived."""
    return _part(shed, key).read_bytes()


def done(shed: Path, key: str) -> None:
    """Forget a file that is kept elsewhere by now, or will not be kept."""
    _part(shed, key).unlink(missing_ok=True)


def _part(shed: Path, key: str) -> Path:
    return shed / FOLDER / "arriving" / key
