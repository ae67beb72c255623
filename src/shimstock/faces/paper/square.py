"""The square that a phone reads: an address as a QR code (ISO/IEC 18004), drawn as SVG."""

from __future__ import annotations

from io import BytesIO
from typing import TYPE_CHECKING
from urllib.parse import quote, urlsplit

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop.labels import Labelled, code_of

if TYPE_CHECKING:
    from segno import QRCode

QUIET = 4
"""White modules that the standard wants on each side."""
SMALLEST = 0.4
"""Millimetres that a module must measure, so that a phone reads it under oil and scratches."""


def address_of(base: str, labelled: Labelled) -> str:
    """The address that a label bears. base: where phones find the shed, without a last stroke."""
    return f"{base}/l/{quote(code_of(labelled), safe='.')}/"


def base_typed(typed: str) -> str:
    """Where phones find the shed, as a person types it. Raises NotUnderstood.

    >>> base_typed("192.168.1.20:8140/")
    'http://192.168.1.20:8140'
    """
    text = typed.strip()
    given = text if "://" in text else f"http://{text}"
    if not _whole(given):
        would = ("http://192.168.1.20:8140",)
        raise NotUnderstood(typed, "is no address at which phones find the shed", would)
    return given.rstrip("/")


def _whole(given: str) -> bool:
    """Whether it is an address of a computer, and of no page on it."""
    try:
        parts = urlsplit(given)
        known = parts.scheme in ("http", "https") and bool(parts.hostname) and parts.port != 0
    except ValueError:  # what stands after the colon is no port
        return False
    beyond = (parts.path.strip("/"), parts.query, parts.fragment, parts.username)
    return known and not any(beyond) and not any(letter.isspace() for letter in given)


def square_of(address: str, room: float) -> QRCode:
    """The QR code of an address; a quarter of it may be lost to oil.

    room: millimetres there are for it and its quiet zone. Raises NotUnderstood where its modules
    would come out too small to be read.
    """
    import segno

    try:
        made = segno.make(address, error="m", micro=False)
    except segno.DataOverflowError:
        would = ("a shorter address",)
        raise NotUnderstood(f"{address[:40]}…", "is too long for any label", would) from None
    across = made.symbol_size(border=QUIET)[0]
    if room / across < SMALLEST:
        wrong = f"is too long for a label: its squares would be {room / across:.2f} mm"
        raise NotUnderstood(address, wrong, ("a shorter address", "a larger label"))
    return made


def drawn(made: QRCode) -> str:
    """The code and its quiet zone as SVG text, one unit a module."""
    out = BytesIO()
    made.save(out, kind="svg", border=QUIET, xmldecl=False, omitsize=True, svgclass=None)
    return out.getvalue().decode()
