"""Where a picture was taken is cut out of its file, and not a byte of the picture.

Read back with Pillow, which reads Exif data by itself; the picture data are found in the files by
the standards' own marks (ITU-T T.81 B.1.1.3, ISO/IEC 15948 5.3, RFC 9649 2.3).
"""

from __future__ import annotations

import struct
from datetime import datetime
from io import BytesIO

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some
from PIL import Image, PngImagePlugin

from shimstock.workshop.pictures.exif import taken_at
from shimstock.workshop.pictures.kind import kind_of
from shimstock.workshop.pictures.opened import without_place
from workshop.pictures_made import corners, exif, file, read

XMP = b"""<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF
 xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about=""
 xmlns:exif="http://ns.adobe.com/exif/1.0/" %s/></rdf:RDF></x:xmpmeta>"""
XMP_PLACE = XMP % b'exif:GPSLatitude="47,22.2N" exif:GPSLongitude="8,33.1E"'
XMP_PLAIN = XMP % b'exif:FNumber="28/10"'
KINDS = ["JPEG", "PNG", "WEBP"]


def cut(data: bytes) -> bytes:
    return without_place(data, kind_of(data))


def picture_data(data: bytes) -> bytes:
    """What the pixels are made of, as the file holds it."""
    if data.startswith(b"\xff\xd8"):
        at = 2
        while data[at + 1] != 0xDA:
            at += 2 + struct.unpack(">H", data[at + 2 : at + 4])[0]
        return data[at:]
    first, order, sizes, names = (
        (8, ">", slice(0, 4), slice(4, 8)) if data[:1] == b"\x89" else
        (12, "<", slice(4, 8), slice(0, 4))
    )  # fmt: skip
    found, at = b"", first
    while at + 8 <= len(data):
        head = data[at : at + 8]
        length = struct.unpack(f"{order}L", head[sizes])[0]
        if head[names] in (b"IHDR", b"IDAT", b"VP8 ", b"VP8L", b"ALPH"):
            found += data[at : at + 8 + length]
        at += 8 + length + (4 if order == ">" else length % 2)
    return found


texts = some.text(some.characters(min_codepoint=32, max_codepoint=126), max_size=30)
ratios = some.fractions(0, 180, max_denominator=10_000).map(float)


@some.composite
def any_exif(draw) -> tuple[Image.Exif, dict[int, object]]:
    """Exif data that Pillow makes, with a place, and what else they say."""
    made = exif(draw(some.integers(1, 8)), place=True)
    gps = made.get_ifd(0x8825)
    for tag in draw(some.sets(some.sampled_from([0x1B, 0x1C, 0x12]))):
        gps[tag] = draw(texts)
    gps[6] = draw(ratios)
    for tag in draw(some.sets(some.sampled_from([0x010E, 0x0110, 0x0131, 0x013B, 0x8298]))):
        made[tag] = draw(texts)
    within = made.get_ifd(0x8769)
    within[0x9003] = draw(some.datetimes()).strftime("%Y:%m:%d %H:%M:%S")
    if draw(some.booleans()):
        within[0x927C] = draw(some.binary(max_size=200))
    made.endian = draw(some.sampled_from(["<", ">"]))
    return made


def said(data: bytes) -> tuple[dict[int, object], dict[int, object], dict[int, object]]:
    held = read(data).getexif()
    first = {tag: value for tag, value in held.items() if tag not in (0x8825, 0x8769)}
    return first, dict(held.get_ifd(0x8769)), dict(held.get_ifd(0x8825))


@pytest.mark.parametrize("kind", KINDS)
@settings(max_examples=40, deadline=None)  # the computer may be busy
@given(made=any_exif())
def test_the_place_is_gone_and_all_else_is_there(kind, made):
    whole = file(kind, corners(16, 8), exif=made.tobytes())
    without = cut(whole)

    first, within, place = said(whole)
    assert place
    assert said(without) == (first, within, {})
    assert picture_data(without) == picture_data(whole) != b""
    assert read(without).tobytes() == read(whole).tobytes()
    for number in (struct.pack(f"{made.endian}LL", 47, 1), b"2026:10:03"):
        assert number not in without


@pytest.mark.parametrize("kind", KINDS)
def test_a_picture_without_a_place_stays_the_same_file(kind):
    for options in ({}, {"exif": exif(6, taken="2026:10:03 20:14:05").tobytes()}):
        whole = file(kind, **options)
        assert cut(whole) == whole


def with_xmp(kind: str, xmp: bytes) -> bytes:
    if kind != "PNG":
        return file(kind, xmp=xmp)
    return file("PNG", pnginfo=png_text("iTXt", "XML:com.adobe.xmp", xmp.decode()))


def png_text(how: str, name: str, text: str) -> PngImagePlugin.PngInfo:
    info = PngImagePlugin.PngInfo()
    if how == "iTXt":
        info.add_itxt(name, text)
    elif how == "iTXt packed":
        info.add_itxt(name, text, zip=True)
    else:
        info.add_text(name, text, zip=how == "zTXt")
    return info


@pytest.mark.parametrize("kind", KINDS)
def test_xmp_that_tells_a_place_is_left_out_and_other_xmp_stays(kind):
    whole = with_xmp(kind, XMP_PLACE)
    without = cut(whole)

    assert b"GPS" in whole and b"GPS" not in without
    assert not {"xmp", "XML:com.adobe.xmp"} & read(without).info.keys()
    assert picture_data(without) == picture_data(whole)
    plain = with_xmp(kind, XMP_PLAIN)
    assert cut(plain) == plain


@pytest.mark.parametrize("how", ["tEXt", "zTXt", "iTXt", "iTXt packed"])
def test_text_in_a_png_that_tells_a_place_is_left_out(how):
    for name, text in (("Comment", "geo:47.2,8.5"), ("Raw profile type exif", "4578696600")):
        without = cut(file("PNG", pnginfo=png_text(how, name, text)))
        assert name not in read(without).info
    plain = file("PNG", pnginfo=png_text(how, "Comment", "the pump"))
    assert cut(plain) == plain


def test_a_webp_says_what_it_still_holds():
    whole = file("WEBP", exif=exif(6, place=True).tobytes(), xmp=XMP_PLACE)
    without = cut(whole)

    assert whole[12:16] == without[12:16] == b"VP8X"
    assert (whole[20], without[20]) == (0x0C, 0x08)  # the flags: Exif and XMP; Exif alone
    assert struct.unpack("<L", without[4:8])[0] == len(without) - 8


def test_what_hangs_on_behind_a_picture_is_left_off():
    for kind in KINDS:
        whole = file(kind)
        assert cut(whole + b"\0\0\0\x18ftypmp42 +47.2+008.5/") == whole


def test_pictures_behind_the_first_are_left_off():
    first, second = corners(), corners(40, 40)
    several = file("MPO", first, save_all=True, append_images=[second])
    without = cut(several)

    assert Image.open(BytesIO(several)).n_frames == 2
    assert read(without).format == "JPEG"
    assert read(without).tobytes() == read(several).tobytes()


def test_exif_data_that_do_not_hold_together_are_left_out_whole():
    whole = exif(6, place=True).tobytes()
    latitude = struct.pack(">HHL", 2, 5, 3)  # three ratios
    broken = whole.replace(latitude, struct.pack(">HHL", 2, 5, 9999))
    assert broken != whole

    without = cut(file(exif=broken))

    assert "exif" not in read(without).info


@pytest.mark.parametrize(
    ("taken", "offset", "when"),
    [
        ("2026:10:03 20:14:05", "", datetime(2026, 10, 3, 20, 14, 5)),
        ("2026:10:03 20:14:05", "+02:00", datetime.fromisoformat("2026-10-03T20:14:05+02:00")),
        ("2026:10:03 20:14:05", "  :  ", datetime(2026, 10, 3, 20, 14, 5)),
        ("0000:00:00 00:00:00", "", None),
        ("", "", None),
    ],
)
@pytest.mark.parametrize("kind", KINDS)
def test_the_time_is_read_and_stays(kind, taken, offset, when):
    whole = file(kind, exif=exif(taken=taken, offset=offset, place=True).tobytes())

    for data in (whole, cut(whole)):
        assert taken_at(read(data)) == when
