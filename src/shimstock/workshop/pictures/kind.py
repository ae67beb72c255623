"""What a file is, by its first bytes and not by its name."""

from __future__ import annotations

import re
from enum import StrEnum

from shimstock.workshop.refused import Refused


class Kind(StrEnum):
    """The kinds of picture that are kept; the value is how the file's name ends."""

    JPEG = "jpg"
    PNG = "png"
    WEBP = "webp"

    @property
    def content_type(self) -> str:
        """As a browser is told it."""
        return f"image/{self.name.lower()}"


class NotAPicture(Refused):
    """A file that is not kept; the reason says what it is or what is wrong with it."""

    def __init__(self, why: str) -> None:
        super().__init__([why])


WOULD_DO = "A JPEG, PNG or WebP picture would do."
OTHERS = (
    (rb"GIF8", "a GIF"),
    (rb"....ftyp(hei|hev|mif1|msf1)", "an HEIC picture; set the camera to JPEG"),
    (rb"....ftypavif", "an AVIF picture"),
    (rb"....ftyp", "a film"),
    (rb"BM", "a BMP picture"),
    (rb"II\*\x00|MM\x00\*", "a TIFF or raw picture"),
    (rb"%PDF", "a PDF paper"),
    (rb"PK", "a packed folder"),
    (
        rb"\s*(<\?xml[^>]*>\s*)?(<!--.{0,999}?-->\s*)?(<!DOCTYPE svg[^>]*>\s*)?<svg",
        "an SVG drawing",
    ),
    (rb"\s*<", "a web page or other marked-up text"),
)
"""First bytes of files that people take for photos, and what they are."""


def kind_of(data: bytes) -> Kind:
    """The kind of picture that some bytes begin as. Raises NotAPicture, which says what it is."""
    if data.startswith(b"\xff\xd8\xff"):
        return Kind.JPEG
    if data.startswith(b"\x89PNG\r\n\x1a\n"):
        return Kind.PNG
    if data[:4] == b"RIFF" and data[8:12] == b"WEBP":
        return Kind.WEBP
    if not data:
        raise NotAPicture(f"The file is empty. {WOULD_DO}")
    raise NotAPicture(f"It is {_what(data[:2048])}. {WOULD_DO}")


def _what(head: bytes) -> str:
    head = head.removeprefix(b"\xef\xbb\xbf")
    for begins, what in OTHERS:
        if re.match(begins, head, re.IGNORECASE | re.DOTALL):
            return what
    return "no picture, whatever its name says"
