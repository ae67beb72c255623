"""A file is taken for what it holds, not for what it is called; what is kept is shown upright."""

from __future__ import annotations

import struct
import subprocess
import sys
import zlib
from io import BytesIO

import pytest
from PIL import Image, ImageCms

from shimstock.workshop.pictures.kind import Kind, NotAPicture
from shimstock.workshop.pictures.received import received
from workshop.pictures_made import CORNERS, corners, exif, file, read

KINDS = {"JPEG": Kind.JPEG, "PNG": Kind.PNG, "WEBP": Kind.WEBP}


def chunk(kind: bytes, data: bytes) -> bytes:
    return struct.pack(">L", len(data)) + kind + data + struct.pack(">L", zlib.crc32(kind + data))


def bomb(width: int, height: int) -> bytes:
    """A small PNG file that unpacks to very much."""
    head = struct.pack(">LLBBBBB", width, height, 8, 2, 0, 0, 0)
    packing, row = zlib.compressobj(1), bytes(300_000)
    body = b"".join(packing.compress(row) for _ in range(200)) + packing.flush()
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", body) + chunk(b"IEND", b"")


def refused(data: bytes) -> str:
    with pytest.raises(NotAPicture) as caught:
        received(data)
    (reason,) = caught.value.reasons
    return reason


@pytest.mark.parametrize("kind", KINDS)
def test_the_three_kinds_are_taken_by_what_they_hold(kind):
    picture = received(file(kind))

    assert (picture.kind, picture.width, picture.height) == (KINDS[kind], 96, 64)
    assert picture.data == file(kind)


@pytest.mark.parametrize(
    ("data", "what"),
    [
        (b"", "empty"),
        (b"the pump, before", "no picture"),
        (file("GIF"), "a GIF"),
        (file("BMP"), "a BMP"),
        (file("TIFF"), "a TIFF"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "an SVG"),
        (b'\xef\xbb\xbf<?xml version="1.0"?>\n<!-- drawn -->\n<svg/>', "an SVG"),
        (b"<html><script>alert(1)</script>" + file(), "a web page"),
        (b"\0\0\0\x18ftypheic\0\0\0\0", "an HEIC"),
        (b"%PDF-1.7", "a PDF"),
        (b"\xff\xd8\xff\xe0 and then nothing of it", "cannot be read"),
        (b"\x89PNG\r\n\x1a\n<html>", "cannot be read"),
        (b"RIFF\x10\0\0\0WEBPVP8 \x04\0\0\0abcd", "cannot be read"),
    ],
)
def test_what_is_no_picture_is_refused_and_said(data, what):
    assert what in refused(data)


@pytest.mark.parametrize("kind", KINDS)
def test_a_web_page_hidden_in_a_picture_is_refused(kind):
    page = b"<html><script>alert(1)</script></html>"
    beside = {"JPEG": {"comment": page}, "WEBP": {"xmp": page}, "PNG": {}}

    assert "web page beside" in refused(file(kind) + page)
    if beside[kind]:
        assert "web page beside" in refused(file(kind, **beside[kind]))


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("share", [0.3, 0.9, 0.999])
def test_a_picture_that_did_not_come_whole_is_refused(kind, share):
    whole = file(kind, Image.effect_noise((200, 200), 90).convert("RGB"))

    assert "Send it again" in refused(whole[: int(len(whole) * share)])


@pytest.mark.parametrize("size", [(10_000, 10_000), (60_000, 60_000), (2**31 - 1, 2**31 - 1)])
def test_too_many_pixels_are_refused_by_the_head_alone(size):
    assert "megapixels is the most" in refused(bomb(*size))


def test_too_many_bytes_are_refused():
    assert "40 MB is the most" in refused(file() + bytes(40_000_000))


def test_a_bomb_takes_no_memory(tmp_path):
    """In a program of its own, since the most it ever held is asked of the system."""
    bombs = tmp_path / "bomb.png"
    bombs.write_bytes(bomb(20_000, 20_000))
    program = f"""
import resource
from shimstock.workshop.pictures.received import received
from shimstock.workshop.pictures.kind import NotAPicture
before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
try:
    received(open({str(bombs)!r}, "rb").read())
except NotAPicture:
    print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before)
"""
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True)

    assert int(done.stdout) < 30_000, done.stderr  # kB; unpacked it would be 1 200 000


def corner_colours(picture: Image.Image) -> list[str]:
    """What is seen above at the left, above at the right, below at the left, below at the right."""
    width, height = picture.size
    places = [(x, y) for y in (height // 4, 3 * height // 4) for x in (width // 4, 3 * width // 4)]

    def nearest(colour: tuple[int, ...]) -> str:
        return min(
            CORNERS,
            key=lambda name: sum(abs(a - b) for a, b in zip(CORNERS[name], colour, strict=True)),
        )

    return [nearest(picture.convert("RGB").getpixel(place)) for place in places]


R, G, B, W = CORNERS
UPRIGHT = {  # Exif 2.32, 4.6.5.1.6: what the first row and the first column of the data show
    1: [R, G, B, W],
    2: [G, R, W, B],
    3: [W, B, G, R],
    4: [B, W, R, G],
    5: [R, B, G, W],
    6: [B, R, W, G],
    7: [W, G, B, R],
    8: [G, W, R, B],
}


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("orientation", UPRIGHT)
def test_pictures_are_shown_upright(kind, orientation):
    picture = received(file(kind, corners(2000, 1000), exif=exif(orientation).tobytes()))

    on_its_side = orientation >= 5
    assert (picture.width, picture.height) == ((1000, 2000) if on_its_side else (2000, 1000))
    for side, data in picture.smaller.items():
        shown = read(data)
        assert shown.size == ((side // 2, side) if on_its_side else (side, side // 2))
        assert corner_colours(shown) == UPRIGHT[orientation]


@pytest.mark.parametrize("kind", KINDS)
def test_what_is_shown_tells_nothing_beside_the_picture(kind):
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    made = exif(6, taken="2026:10:03 20:14:05", place=True).tobytes()
    picture = received(file(kind, exif=made, icc_profile=profile), keep_place=True)

    for data in picture.smaller.values():
        shown = read(data)
        assert not dict(shown.getexif())
        assert shown.info.keys() <= {"jfif", "jfif_version", "jfif_unit", "jfif_density",
                                     "progressive", "progression"}  # fmt: skip
    assert read(picture.data).getexif().get_ifd(0x8825)


@pytest.mark.parametrize(
    "made",
    [
        corners().convert("L"),
        corners().convert("P"),
        corners().convert("1"),
        corners().convert("RGBA"),
        corners().convert("LA"),
        Image.new("I;16", (96, 64), 40_000),
    ],
    ids=lambda made: made.mode,
)
def test_pictures_of_every_mode_can_be_shown(made):
    picture = received(file("PNG", made))

    assert {side: read(data).size for side, data in picture.smaller.items()} == {
        1600: (96, 64),
        480: (96, 64),
    }


def test_grey_in_16_bits_stays_as_light_as_it_is():
    picture = received(file("PNG", Image.new("I;16", (96, 64), 40_000)))

    assert abs(read(picture.smaller[480]).convert("L").getpixel((9, 9)) - 40_000 / 256) < 3


def test_what_can_be_seen_through_is_white():
    picture = received(file("PNG", Image.new("RGBA", (96, 64), (0, 0, 0, 0))))

    assert read(picture.smaller[480]).getpixel((9, 9)) == (255, 255, 255)


def test_a_press_picture_in_four_colours_can_be_shown():
    assert received(file("JPEG", corners().convert("CMYK"))).width == 96


@pytest.mark.parametrize("kind", ["WEBP", "PNG"])
def test_of_a_moving_picture_the_first_is_shown(kind):
    moving = BytesIO()
    first, second = corners(), Image.new("RGB", (96, 64), "black")
    first.save(moving, kind, save_all=True, append_images=[second], duration=100)

    picture = received(moving.getvalue())

    assert Image.open(BytesIO(moving.getvalue())).n_frames == 2
    assert corner_colours(read(picture.smaller[480])) == UPRIGHT[1]


def test_colours_of_another_profile_are_shown_in_those_of_a_screen():
    """Lab's own white point and axes: a profile in which the numbers mean other colours."""
    swapped = swapped_profile()
    plain = received(file(icc_profile=None)).smaller[480]
    shown = received(file(icc_profile=swapped)).smaller[480]

    assert read(shown).getpixel((9, 9)) != read(plain).getpixel((9, 9))


def swapped_profile() -> bytes:
    """The profile of sRGB with its red and its blue changed for each other."""
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    return profile.replace(b"rXYZ", b"tmp1").replace(b"bXYZ", b"rXYZ").replace(b"tmp1", b"bXYZ")
