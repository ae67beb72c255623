"""A picture as it came from a phone, checked and ready to be kept."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from hashlib import sha256
from threading import Lock

from shimstock.workshop.pictures.exif import taken_at
from shimstock.workshop.pictures.kind import Kind, NotAPicture
from shimstock.workshop.pictures.opened import cannot_be_read, opened, without_place
from shimstock.workshop.pictures.smaller import made_small, upright_size

_one_at_a_time = Lock()  # unpacked pictures are large, and phones send many at once


@dataclass(frozen=True)
class Picture:
    """A picture to be kept.

    data: the file. width, height: in pixels, as seen upright. taken: by the camera's clock, with
    an offset from UTC only where the camera wrote one. smaller: JPEG files to be shown, by the
    length of their longer side in pixels.
    """

    kind: Kind
    data: bytes
    sha256: str
    width: int
    height: int
    taken: datetime | None
    smaller: dict[int, bytes]


def received(data: bytes, *, keep_place: bool = False) -> Picture:
    """Check a file by its content, and make it ready to be kept.

    keep_place: leave in it where it was taken; else that is cut out, and nothing of the picture.
    Raises NotAPicture, which says in words why it is not kept.
    """
    with _one_at_a_time:
        kind, picture = opened(data)
        width, height = upright_size(picture)
        taken = taken_at(picture)
        try:
            smaller = made_small(picture)
        except Exception as error:  # a broken file makes the reader raise anything
            raise NotAPicture(cannot_be_read(kind)) from error
    held = data if keep_place else without_place(data, kind)
    return Picture(kind, held, sha256(held).hexdigest(), width, height, taken, smaller)
