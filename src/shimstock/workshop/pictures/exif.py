"""Exif data: when a picture was taken, and the same data without the place.

The layout is that of TIFF 6.0, section 2, and of CIPA DC-008 (Exif): a directory is a count,
entries of 12 bytes, and the offset of the next directory.
"""

from __future__ import annotations

import struct
from collections.abc import Iterator
from datetime import datetime

from PIL import Image

TAKEN, TAKEN_OFFSET = 0x9003, 0x9011  # DateTimeOriginal, OffsetTimeOriginal
DIRECTORY = 0x8769  # the Exif directory, within the first one
GPS = 0x8825
TELL_A_PLACE = frozenset({GPS, 0x02BC, 0x83BB})  # and XMP or IPTC text held as an entry
BEYOND = frozenset({DIRECTORY, 0xA005})  # entries that lead to a further directory
SIZES = {1: 1, 2: 1, 3: 2, 4: 4, 5: 8, 6: 1, 7: 1, 8: 2, 9: 4, 10: 8, 11: 4, 12: 8, 13: 4}
MOST_DIRECTORIES = 16


class Broken(Exception):
    """Exif data that do not hold together."""


def taken_at(picture: Image.Image) -> datetime | None:
    """When a picture was taken, by the camera's clock; None where it does not say.

    With an offset from UTC only where the camera wrote one.
    """
    within = picture.getexif().get_ifd(DIRECTORY)
    said, offset = _text(within.get(TAKEN)), _text(within.get(TAKEN_OFFSET))
    for text, form in ((said + offset, "%Y:%m:%d %H:%M:%S%z"), (said, "%Y:%m:%d %H:%M:%S")):
        try:
            return datetime.strptime(text, form)
        except ValueError:
            continue
    return None


def without_place(tiff: bytes) -> bytes:
    """Exif data of the same length in which nothing tells a place, all else where it was.

    Entries that tell a place are taken out of their directory, and what they led to is made zero,
    so that every other offset stays true. Raises Broken.
    """
    try:
        return _Scrubbed(tiff).data
    except (struct.error, IndexError) as error:
        raise Broken(str(error)) from error


class _Scrubbed:
    def __init__(self, tiff: bytes) -> None:
        if tiff[:4] not in (b"II*\x00", b"MM\x00*"):
            raise Broken("no byte order")
        self.order = "<" if tiff[:1] == b"I" else ">"
        self.held = bytearray(tiff)
        self.seen: set[int] = set()
        self._look_at(self._number("L", 4))
        self.data = bytes(self.held)

    def _look_at(self, at: int) -> None:
        """Take what tells a place out of a directory and of those it leads to."""
        while at and at not in self.seen:
            if len(self.seen) == MOST_DIRECTORIES:
                raise Broken("too many directories")
            self.seen.add(at)
            for entry in list(self._entries(at)):
                if self._number("H", entry) in BEYOND:
                    self._look_at(self._number("L", entry + 8))
            at = self._take_out(at)

    def _take_out(self, at: int) -> int:
        """Close the entries of a directory up over those that tell a place; gives the next one."""
        entries = list(self._entries(at))
        end = at + 2 + 12 * len(entries)
        following = self._number("L", end) if end + 4 <= len(self.held) else 0
        stay = [each for each in entries if self._number("H", each) not in TELL_A_PLACE]
        if len(stay) == len(entries):
            return following
        kept = b"".join(bytes(self.held[each : each + 12]) for each in stay)
        for entry in set(entries).difference(stay):
            self._make_zero(entry)
        begins = struct.pack(f"{self.order}H", len(stay)) + kept
        whole = begins + struct.pack(f"{self.order}L", following)
        self.held[at : end + 4] = whole.ljust(end + 4 - at, b"\0")[: len(self.held[at : end + 4])]
        return following

    def _make_zero(self, entry: int) -> None:
        """Make what an entry leads to zero: its value, or the directory and its values."""
        if self._number("H", entry) == GPS:
            directory = self._number("L", entry + 8)
            entries = list(self._entries(directory))
            for each in entries:
                self._value_zero(each)
            self._zero(directory, 2 + 12 * len(entries))
        else:
            self._value_zero(entry)

    def _value_zero(self, entry: int) -> None:
        size = SIZES.get(self._number("H", entry + 2), 1) * self._number("L", entry + 4)
        if size > 4:
            self._zero(self._number("L", entry + 8), size)

    def _zero(self, at: int, size: int) -> None:
        if at < 8 or at + size > len(self.held):
            raise Broken("an offset leads outside")
        self.held[at : at + size] = bytes(size)

    def _entries(self, at: int) -> Iterator[int]:
        count = self._number("H", at)
        if at < 8 or at + 2 + 12 * count > len(self.held):
            raise Broken("a directory leads outside")
        return (at + 2 + 12 * each for each in range(count))

    def _number(self, form: str, at: int) -> int:
        return int(struct.unpack_from(f"{self.order}{form}", self.held, at)[0])


def _text(value: object) -> str:
    return value.strip("\0 ") if isinstance(value, str) else ""
