"""Pictures made for tests: of any kind, orientation and metadata, drawn so that corners differ."""

from __future__ import annotations

from io import BytesIO

from PIL import Image

CORNERS = {"red": (230, 20, 20), "green": (20, 200, 20), "blue": (20, 20, 230), "white": (250,) * 3}


def corners(width: int = 96, height: int = 64) -> Image.Image:
    """Red at the left above, green at the right above, blue at the left below, white beside it."""
    picture = Image.new("RGB", (width, height))
    half, middle = width // 2, height // 2
    for colour, at in zip(
        CORNERS.values(), [(0, 0), (half, 0), (0, middle), (half, middle)], strict=True
    ):
        picture.paste(colour, (*at, at[0] + half, at[1] + middle))
    return picture


def file(kind: str = "JPEG", picture: Image.Image | None = None, **options: object) -> bytes:
    """A picture as a file."""
    written = BytesIO()
    (picture or corners()).save(written, kind, **options)
    return written.getvalue()


def exif(orientation: int = 1, *, taken: str = "", offset: str = "", place: bool = False):
    """Exif data as a phone writes them."""
    data = Image.Exif()
    data[0x0112] = orientation
    data[0x010F] = "A maker"
    within = data.get_ifd(0x8769)
    if taken:
        within[0x9003] = taken
    if offset:
        within[0x9011] = offset
    if place:
        gps = data.get_ifd(0x8825)
        gps[1], gps[2] = "N", (47.0, 22.0, 12.34)
        gps[3], gps[4] = "E", (8.0, 33.0, 4.56)
        gps[29] = "2026:10:03"
    return data


def read(data: bytes) -> Image.Image:
    """A file as a picture, all of it."""
    picture = Image.open(BytesIO(data))
    picture.load()
    return picture
