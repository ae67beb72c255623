"""Files opened as the pictures that their first bytes say they are, within limits."""

from __future__ import annotations

import re
from io import BytesIO

from PIL import Image

from shimstock.workshop.pictures import jpeg, png, webp
from shimstock.workshop.pictures.kind import Kind, NotAPicture, kind_of
from shimstock.workshop.pictures.limits import (
    MOST_BYTES,
    MOST_PIXELS,
    too_many_bytes,
    too_many_pixels,
)

BESIDE = {Kind.JPEG: jpeg.beside, Kind.PNG: png.beside, Kind.WEBP: webp.beside}
WITHOUT_PLACE = {
    Kind.JPEG: jpeg.without_place,
    Kind.PNG: png.without_place,
    Kind.WEBP: webp.without_place,
}
WEB_PAGE = re.compile(rb"<script|<html|<!doctype", re.IGNORECASE)


def opened(data: bytes) -> tuple[Kind, Image.Image]:
    """A picture whose head was read and found good, not yet a pixel of it.

    Raises NotAPicture for what is none, is cut short, hides a web page, or is too large.
    """
    if len(data) > MOST_BYTES:
        raise NotAPicture(too_many_bytes(len(data)))
    kind = kind_of(data)
    picture = _read_head(data, kind)
    if picture.width * picture.height > MOST_PIXELS:
        raise NotAPicture(too_many_pixels(f"{picture.width} × {picture.height} pixels"))
    if WEB_PAGE.search(BESIDE[kind](data)):
        raise NotAPicture("It holds a web page beside the picture. Send the camera's own file.")
    return kind, picture


def without_place(data: bytes, kind: Kind) -> bytes:
    """The same picture in which nothing tells where it was taken. Raises NotAPicture."""
    return WITHOUT_PLACE[kind](data)


def _read_head(data: bytes, kind: Kind) -> Image.Image:
    try:
        with Image.open(BytesIO(data), formats=[kind.name]) as checking:
            if checking.width * checking.height <= MOST_PIXELS:
                checking.verify()  # after which it cannot be read
        return Image.open(BytesIO(data), formats=[kind.name])
    except (Image.DecompressionBombError, Image.DecompressionBombWarning) as error:
        raise NotAPicture(too_many_pixels("far too many pixels")) from error
    except Exception as error:  # a broken file makes the reader raise anything
        raise NotAPicture(cannot_be_read(kind)) from error


def cannot_be_read(kind: Kind) -> str:
    """Say that a file is broken."""
    return f"It begins as a {kind.name} picture and cannot be read as one. Send it again."
