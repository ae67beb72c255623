"""Pictures made small for the screen: upright, in the colours of a screen, nothing beside them."""

from __future__ import annotations

from io import BytesIO

from PIL import Image, ImageCms, ImageOps

SMALL, LARGE = 480, 1600  # pixels along the longer side
QUALITY = {SMALL: 75, LARGE: 82}
ORIENTATION = 0x0112  # Exif: how the picture is to be turned; from 5 on, onto its side
MODES = ("RGB", "L")


def upright_size(picture: Image.Image) -> tuple[int, int]:
    """Width and height in pixels as the picture is seen upright."""
    width, height = picture.size
    on_its_side = picture.getexif().get(ORIENTATION, 1) in range(5, 9)
    return (height, width) if on_its_side else (width, height)


def made_small(picture: Image.Image) -> dict[int, bytes]:
    """A picture upright as JPEG files, by the length of their longer side in pixels.

    The picture is used up by it. Raises OSError where its data end too early.
    """
    picture.draft("RGB", (LARGE, LARGE))  # of a JPEG no more is unpacked than is needed
    picture.load()
    plain = _without_alpha(picture)
    plain.thumbnail((LARGE, LARGE), Image.Resampling.LANCZOS, reducing_gap=3.0)
    large = ImageOps.exif_transpose(_in_colours_of_a_screen(plain))
    small = large.copy()
    small.thumbnail((SMALL, SMALL), Image.Resampling.LANCZOS)
    return {LARGE: _jpeg(large, QUALITY[LARGE]), SMALL: _jpeg(small, QUALITY[SMALL])}


def _without_alpha(picture: Image.Image) -> Image.Image:
    """The picture in red, green and blue, or grey; what can be seen through is white."""
    if picture.mode.startswith("I"):  # grey in 16 bits
        return picture.point(lambda value: value / 256).convert("L")
    if not picture.has_transparency_data:
        return picture if picture.mode in MODES else picture.convert("RGB")
    seen_through = picture.convert("RGBA")
    seen_through.thumbnail((LARGE, LARGE), Image.Resampling.LANCZOS, reducing_gap=3.0)
    paper = Image.new("RGBA", seen_through.size, "white")
    paper.alpha_composite(seen_through)
    plain = paper.convert("RGB")
    plain.info = picture.info
    return plain


def _in_colours_of_a_screen(picture: Image.Image) -> Image.Image:
    """The picture in sRGB, from the colours that its profile describes."""
    profile = picture.info.get("icc_profile")
    if not profile or picture.mode != "RGB":
        return picture
    try:
        own, screen = ImageCms.ImageCmsProfile(BytesIO(profile)), ImageCms.createProfile("sRGB")
        changed = ImageCms.profileToProfile(picture, own, screen)
    except (ImageCms.PyCMSError, OSError):  # a profile that is none, or of other colours
        return picture
    return changed or picture


def _jpeg(picture: Image.Image, quality: int) -> bytes:
    picture.info = {}
    written = BytesIO()
    picture.save(written, "JPEG", quality=quality, optimize=True, progressive=True)
    return written.getvalue()
