"""Where the pictures of a shed lie, by what they hold; a file once written is never changed."""

from __future__ import annotations

import os
import secrets
from pathlib import Path

from shimstock.workshop.pictures.kind import Kind
from shimstock.workshop.pictures.received import Picture
from shimstock.workshop.pictures.smaller import LARGE, SMALL

FOLDER = "photos"
SIDES = {"small": SMALL, "large": LARGE}


def keep(shed: Path, picture: Picture) -> str:
    """Write a picture and its smaller ones; gives its name under the shed's folder for photos.

    When this comes back the files are on the disk, whole, also if the plug is pulled.
    """
    name = f"{picture.sha256[:2]}/{picture.sha256}.{picture.kind}"
    for side, data in picture.smaller.items():
        _write(shed / FOLDER / _smaller(name, side), data)
    _write(shed / FOLDER / name, picture.data)
    return name


def file_of(shed: Path, name: str, size: str) -> tuple[Path, str]:
    """Where a picture lies, and its type as browsers are told it.

    name: as `keep` gave it. size: small, large or original. Raises KeyError for another size.
    """
    if size == "original":
        return shed / FOLDER / name, Kind(Path(name).suffix[1:]).content_type
    return shed / FOLDER / _smaller(name, SIDES[size]), Kind.JPEG.content_type


def _smaller(name: str, side: int) -> str:
    return f"{name.rpartition('.')[0]}.{side}.jpg"


def _write(path: Path, data: bytes) -> None:
    """Write a file so that it is there whole or not at all."""
    if path.is_file() and path.read_bytes() == data:
        return
    path.parent.mkdir(parents=True, exist_ok=True)
    beside = path.with_name(f".{path.name}.{secrets.token_hex(4)}")
    try:
        with beside.open("xb") as out:
            out.write(data)
            out.flush()
            os.fsync(out.fileno())
        beside.replace(path)
    finally:
        beside.unlink(missing_ok=True)
    for folder in (path.parent, path.parent.parent):
        _sync_folder(folder)


def _sync_folder(folder: Path) -> None:
    """Wait until the disk knows the names in a folder, where the system lets one ask."""
    if os.name != "posix":
        return
    held = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(held)
    finally:
        os.close(held)
