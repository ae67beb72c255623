"""PNG files as chunks (ISO/IEC 15948): all but the picture data can be left out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from zlib import crc32, decompressobj, error

from shimstock.workshop.pictures.kind import NotAPicture
from shimstock.workshop.pictures.place import exif_without_place, told_in_words

FIRST = b"\x89PNG\r\n\x1a\n"
TEXTS = frozenset({b"tEXt", b"zTXt", b"iTXt"})
MOST_TEXT = 2**20
"""Bytes of a packed text that are looked at; a longer one is no note on a picture."""


@dataclass(frozen=True)
class Chunk:
    """A piece of a PNG file."""

    kind: bytes
    data: bytes

    def __bytes__(self) -> bytes:
        proof = crc32(self.kind + self.data).to_bytes(4, "big")
        return len(self.data).to_bytes(4, "big") + self.kind + self.data + proof


def chunks(data: bytes) -> Iterator[Chunk]:
    """The chunks of a file from its start to the end of the picture. Raises NotAPicture."""
    at = len(FIRST)
    while at + 12 <= len(data):
        length = int.from_bytes(data[at : at + 4], "big")
        if at + 12 + length > len(data):
            break
        chunk = Chunk(data[at + 4 : at + 8], data[at + 8 : at + 8 + length])
        yield chunk
        if chunk.kind == b"IEND":
            return
        at += 12 + length
    raise NotAPicture("The picture ends before its end: it did not come whole. Send it again.")


def without_place(data: bytes) -> bytes:
    """A PNG file in which nothing tells where it was taken; the picture data are the same bytes.

    What hangs on behind the picture's end is left off. Raises NotAPicture.
    """
    stay = (each for each in map(_without_place, chunks(data)) if each is not None)
    return FIRST + b"".join(map(bytes, stay))


def beside(data: bytes) -> bytes:
    """All that a file holds beside its picture, what hangs on behind it included."""
    held = list(chunks(data))
    whole = len(FIRST) + sum(len(each.data) + 12 for each in held)
    return b"\n".join(_read(each) for each in held if each.kind in TEXTS) + b"\n" + data[whole:]


def _without_place(chunk: Chunk) -> Chunk | None:
    if chunk.kind == b"eXIf":
        exif = exif_without_place(chunk.data)
        return replace(chunk, data=exif) if exif else None
    if chunk.kind not in TEXTS:
        return chunk
    raw_profile = chunk.data.startswith(b"Raw profile type")  # Exif or XMP, in digits
    return None if raw_profile or told_in_words(_read(chunk)) else chunk


def _read(chunk: Chunk) -> bytes:
    """A text chunk's text; of one that cannot be read, a text that might tell anything."""
    name, _, rest = chunk.data.partition(b"\0")
    if chunk.kind == b"tEXt" or (chunk.kind == b"iTXt" and not rest.startswith(b"\1")):
        return name + b" " + rest
    packed = rest[1:] if chunk.kind == b"zTXt" else rest[2:].split(b"\0", 2)[-1]
    unpacking = decompressobj()
    try:
        text = unpacking.decompress(packed, MOST_TEXT)
    except error:
        return b"GPS"
    return name + b" " + text if unpacking.eof else b"GPS"
