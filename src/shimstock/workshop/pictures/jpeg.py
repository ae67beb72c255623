"""JPEG files as segments (ITU-T T.81, annex B): all but the picture data can be left out."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from shimstock.workshop.pictures.kind import NotAPicture
from shimstock.workshop.pictures.place import EXIF_FIRST, exif_without_place, told_in_words

START, END, SCAN, COMMENT = 0xD8, 0xD9, 0xDA, 0xFE
APP1, APP2 = 0xE1, 0xE2
APPLICATION = range(0xE0, 0xF0)
NEXT_MARKER = re.compile(rb"\xff+([^\x00\xd0-\xd7\xff])")
XMP_FIRST, FURTHER_XMP_FIRST = b"http://ns.adobe.com/xap/", b"http://ns.adobe.com/xmp/extension/"
KNOWN = (b"JFIF", b"ICC_PROFILE", b"Adobe")
"""Application data that the picture is shown by, and that tell no place."""


@dataclass(frozen=True)
class Segment:
    """A piece of a JPEG file. data: what it holds. scan: the picture data that follow it."""

    marker: int
    data: bytes
    scan: bytes = b""

    @property
    def beside(self) -> bool:
        """Whether it holds something beside the picture."""
        return self.marker in APPLICATION or self.marker == COMMENT

    @property
    def xmp(self) -> bool:
        """Whether it holds XMP, or a further piece of it."""
        return self.marker == APP1 and self.data.startswith((XMP_FIRST, FURTHER_XMP_FIRST))

    def __bytes__(self) -> bytes:
        length = (len(self.data) + 2).to_bytes(2, "big")
        return b"\xff" + bytes([self.marker]) + length + self.data + self.scan


def segments(data: bytes) -> Iterator[Segment]:
    """The segments of a file from its start to the end of the picture. Raises NotAPicture."""
    at = 2
    while (found := NEXT_MARKER.match(data, at)) is not None:
        marker, at = found[1][0], found.end()
        if marker == END:
            return
        length = int.from_bytes(data[at : at + 2], "big")
        held, at = data[at + 2 : at + length], at + length
        if length < 2 or at > len(data):
            break
        if (later := NEXT_MARKER.search(data, at)) is None:
            break
        yield Segment(marker, held, data[at : later.start()] if marker == SCAN else b"")
        at = later.start()
    raise NotAPicture("The picture ends before its end: it did not come whole. Send it again.")


def without_place(data: bytes) -> bytes:
    """A JPEG file in which nothing tells where it was taken; the picture data are the same bytes.

    What hangs on behind the picture's end, such as a short film with a place of its own, is left
    off. Raises NotAPicture.
    """
    held = list(segments(data))
    xmp = b"".join(each.data for each in held if each.xmp)
    tells = told_in_words(xmp)
    stay = (each for each in held if not (each.xmp and tells))
    pieces = (bytes(each) for each in map(_without_place, stay) if each is not None)
    return b"\xff\xd8" + b"".join(pieces) + b"\xff\xd9"


def beside(data: bytes) -> bytes:
    """All that a file holds beside its picture, what hangs on behind it included."""
    held = list(segments(data))
    whole = 4 + sum(len(each.data) + len(each.scan) + 4 for each in held)
    return b"\n".join(each.data for each in held if each.beside) + b"\n" + data[whole:]


def _without_place(segment: Segment) -> Segment | None:
    if not segment.beside or segment.data.startswith(KNOWN):
        return segment
    if segment.marker == APP1 and segment.data.startswith(EXIF_FIRST):
        exif = exif_without_place(segment.data)
        return replace(segment, data=exif) if exif else None
    further_pictures = segment.marker == APP2 and segment.data.startswith(b"MPF\0")
    return None if further_pictures or told_in_words(segment.data) else segment
