"""What an archive says of itself: its version, and the size and digest of every file in it."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass
from pathlib import PurePosixPath
from typing import Any

from shimstock.workshop.refused import Refused

NAME = "manifest.json"
DATABASE = "workshop.sqlite3"
FOLDERS = ("photos", "books")
FORMAT = 1
"""Counts up when an older program could no longer take an archive back."""

SECRET_TABLES = (
    "workshop_joincode",
    "workshop_device",
    "workshop_signintry",
    "workshop_upload",
    "django_session",
)
"""Tables that stay at home: who may come in here, and what is on its way."""


@dataclass(frozen=True)
class FileKept:
    """A file of the archive. size: bytes. sha256: its digest, in hexadecimal figures."""

    name: str
    size: int
    sha256: str


@dataclass(frozen=True)
class Manifest:
    """All that an archive says of itself.

    format: see FORMAT. version: of the program that made it. made_at: ISO time. migrations: steps
    that the database has been through. counts: rows by what they are. files: all but this one.
    """

    format: int
    version: str
    made_at: str
    migrations: tuple[str, ...]
    counts: Mapping[str, int]
    left_out: tuple[str, ...]
    files: tuple[FileKept, ...]

    @property
    def size(self) -> int:
        """Bytes of all files."""
        return sum(file.size for file in self.files)

    def written(self) -> bytes:
        """As it stands in the archive."""
        return json.dumps(asdict(self), ensure_ascii=False, indent=1).encode()


def manifest_read(text: bytes) -> Manifest:
    """A manifest as it was written. Raises Refused for anything else, and for a newer format."""
    try:
        said: dict[str, Any] = json.loads(text)
        if int(said["format"]) > FORMAT:
            raise Refused(
                [f"It was made by a newer shimstock, {said['version']}; install that version"]
            )
        files = tuple(_file(each) for each in said["files"])
        return Manifest(
            format=int(said["format"]),
            version=str(said["version"]),
            made_at=str(said["made_at"]),
            migrations=tuple(map(str, said["migrations"])),
            counts={str(name): int(count) for name, count in said["counts"].items()},
            left_out=tuple(map(str, said["left_out"])),
            files=files,
        )
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError) as error:
        raise Refused(["Its manifest cannot be read: it is damaged, or no archive"]) from error


def _file(said: Mapping[str, Any]) -> FileKept:
    name, size = str(said["name"]), int(said["size"])
    if size < 0 or not safe(name):
        raise Refused([f"It names a file that has no place in a shed: {name!r}"])
    return FileKept(name, size, str(said["sha256"]))


def safe(name: str) -> bool:
    """Whether a file of this name belongs into a shed, and nowhere outside it.

    >>> safe("photos/2026/a.jpg"), safe("photos/../../a"), safe("/etc/a"), safe("secret.key")
    (True, False, False, False)
    """
    if name == DATABASE:
        return True
    path = PurePosixPath(name)
    plain = name.isprintable() and not set(name) & set('\\:*?"<>|') and str(path) == name
    parts = path.parts
    return (
        plain
        and len(parts) > 1
        and parts[0] in FOLDERS
        and not any(part.startswith(".") or part.endswith((" ", ".")) for part in parts)
    )
