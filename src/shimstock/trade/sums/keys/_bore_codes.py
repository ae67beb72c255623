"""The bore that a bearing's code names in its last two figures, or behind a stroke."""

import re
from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.declare import Read

EXAMPLES = ("6205", "NU 207", "62/22")
LAST_CODE = 96  # 480 mm; larger bores stand behind a stroke
CODE = re.compile(
    r"(?P<letters>[A-Z]{0,4}) ?(?P<figures>\d{2,5})(?:/(?P<direct>\d{2,4})(?!\d))?"
    r"(?:[ /.-]*[A-Z].*|[ /.-]+\d?[A-Z].*)?",
    re.ASCII,
)


@dataclass(frozen=True)
class BoreCode:
    """A bearing's code as typed, its bore code, or the bore itself in mm where a stroke says it."""

    typed: str
    code: int | None
    direct: int | None


def parse_bore_code(text: str) -> BoreCode:
    """Reads a bearing's code for its bore. Raises NotUnderstood.

    >>> parse_bore_code("NU 207").code, parse_bore_code("62/22").direct
    (7, 22)
    """
    plain = " ".join(text.upper().split())
    match = CODE.fullmatch(plain)
    if not match:
        raise NotUnderstood(text, "is no bearing code", EXAMPLES)
    if match["direct"]:
        return BoreCode(plain, None, int(match["direct"]))
    figures = match["figures"]
    if len(figures) < (3 if match["letters"] else 4):
        wrong = "is too short: a bore code is the last two figures of four or more"
        raise NotUnderstood(text, wrong, EXAMPLES)
    code = int(figures[-2:])
    if code > LAST_CODE:
        raise NotUnderstood(text, f"ends above {LAST_CODE}, where no bore code is", EXAMPLES)
    return BoreCode(plain, code, None)


BoreCodeText = Annotated[BoreCode, Read(parse_bore_code, "6205")]
