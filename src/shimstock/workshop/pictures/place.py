"""Which words and data beside a picture tell where it was taken."""

from __future__ import annotations

import re

from shimstock.workshop.pictures.exif import Broken, without_place

IN_WORDS = re.compile(
    rb"GPS|geo:|\blatitude|\blongitude|photoshop:(City|State|Country)|Iptc4xmp\w*:(Location|Country)",
    re.IGNORECASE,
)
"""In XMP and other text: properties that tell a place (ISO 16684-2, and IPTC's own)."""

IN_IPTC = re.compile(rb"\x1c\x02[\x1a\x1b\x5a\x5c\x5f\x64\x65]")
"""In IPTC data: content location, city, sublocation, province, country."""

EXIF_FIRST = b"Exif\0\0"


def told_in_words(text: bytes) -> bool:
    """Whether a text tells a place."""
    return IN_WORDS.search(text) is not None or IN_IPTC.search(text) is not None


def exif_without_place(data: bytes) -> bytes:
    """Exif data, with or without their first word, without the place.

    Nothing at all of data that do not hold together: what cannot be read may tell a place.
    """
    first = EXIF_FIRST if data.startswith(EXIF_FIRST) else b""
    try:
        return first + without_place(data[len(first) :])
    except Broken:
        return b""
