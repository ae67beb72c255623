"""Fits as people write them: 50 H7/s6, Ø50 H7-s6, 2 in H7/s6."""

import re
from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import parse
from shimstock.trade.sums.declare import Read
from shimstock.trade.sums.fits._zones import LARGEST, Zone, parse_zone

EXAMPLES = ("50 H7/s6", "2 in H7/s6")
WRITTEN = re.compile(
    r"[Øø⌀]?\s*(?P<size>\d.*?)\s*(?P<hole>JS\d{1,2}|[A-Z]\d{1,2})\s*[/-]\s*"
    r"(?P<shaft>js\d{1,2}|[a-z]\d{1,2})",
    re.ASCII,
)


@dataclass(frozen=True)
class Designation:
    """A fit of the ISO system: nominal size in mm, zones of hole and shaft."""

    size: float
    hole: Zone
    shaft: Zone
    remark: str = ""


def parse_designation(text: str) -> Designation:
    """Reads a fit; a size without a unit is in mm. Raises NotUnderstood.

    >>> parse_designation("2 in H7/s6").remark
    '2 in is 50.8 mm.'
    """
    match = WRITTEN.fullmatch(text.strip())
    if not match:
        raise NotUnderstood(text, "is no fit: write size, hole zone and shaft zone", EXAMPLES)
    size = parse(match["size"], unit="mm", what="size")
    if not 0 < size.value <= LARGEST:
        wrong = f"is beyond these tables, which hold sizes above 0 and up to {LARGEST} mm"
        raise NotUnderstood(text, wrong, EXAMPLES)
    remark = "" if size.said == "mm" else f"{match['size']} is {size.value:.8g} mm."
    return Designation(size.value, parse_zone(match["hole"]), parse_zone(match["shaft"]), remark)


DesignationText = Annotated[Designation, Read(parse_designation, "50 H7/s6")]
