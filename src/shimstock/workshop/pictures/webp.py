"""WebP files as chunks (RFC 9649): all but the picture data can be left out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from shimstock.workshop.pictures.kind import NotAPicture
from shimstock.workshop.pictures.place import exif_without_place, told_in_words

FLAG_OF = {b"EXIF": 0x08, b"XMP ": 0x04}  # in the first byte of the chunk VP8X
PICTURE = frozenset({b"VP8X", b"VP8 ", b"VP8L", b"ALPH", b"ANIM", b"ANMF", b"ICCP"})


@dataclass(frozen=True)
class Chunk:
    """A piece of a WebP file."""

    kind: bytes
    data: bytes

    def __bytes__(self) -> bytes:
        even = b"\0" if len(self.data) % 2 else b""
        return self.kind + len(self.data).to_bytes(4, "little") + self.data + even


def chunks(data: bytes) -> Iterator[Chunk]:
    """The chunks of a file. Raises NotAPicture."""
    end = 8 + int.from_bytes(data[4:8], "little")
    at = 12
    while at + 8 <= end <= len(data):
        length = int.from_bytes(data[at + 4 : at + 8], "little")
        if at + 8 + length > end:
            break
        yield Chunk(data[at : at + 4], data[at + 8 : at + 8 + length])
        at += 8 + length + length % 2
    if at < end or end > len(data):
        raise NotAPicture("The picture ends before its end: it did not come whole. Send it again.")


def without_place(data: bytes) -> bytes:
    """A WebP file in which nothing tells where it was taken; the picture data are the same bytes.

    What hangs on behind the picture's end is left off. Raises NotAPicture.
    """
    held = list(chunks(data))
    stay = [each for each in map(_without_place, held) if each is not None]
    gone = {each.kind for each in held} - {each.kind for each in stay}
    body = b"WEBP" + b"".join(bytes(_flagged(each, gone)) for each in stay)
    return b"RIFF" + len(body).to_bytes(4, "little") + body


def beside(data: bytes) -> bytes:
    """All that a file holds beside its picture, what hangs on behind it included."""
    held = [each.data for each in chunks(data) if each.kind not in PICTURE]
    return b"\n".join(held) + b"\n" + data[8 + int.from_bytes(data[4:8], "little") :]


def _without_place(chunk: Chunk) -> Chunk | None:
    if chunk.kind in PICTURE:
        return chunk
    if chunk.kind == b"EXIF":
        exif = exif_without_place(chunk.data)
        return replace(chunk, data=exif) if exif else None
    return None if told_in_words(chunk.data) else chunk


def _flagged(chunk: Chunk, gone: set[bytes]) -> Chunk:
    """The chunk that says what else there is, without what is gone."""
    if chunk.kind != b"VP8X" or not chunk.data:
        return chunk
    flags = chunk.data[0]
    for kind in gone:
        flags &= ~FLAG_OF.get(kind, 0)
    return replace(chunk, data=bytes([flags]) + chunk.data[1:])
