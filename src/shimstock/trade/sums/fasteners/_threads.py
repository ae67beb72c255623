"""Threads as people write them: 3/8-16 UNC, 1 1/4-12, #10-32, M10, M12×1.25, 1/2 BSW, 2 BA."""

import re
from dataclasses import dataclass
from math import isfinite
from typing import Annotated

from shimstock.trade.numbers.coherent import Coherent, coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.typed_number import tidy
from shimstock.trade.sums.declare import Read
from shimstock.trade.sums.fasteners._forms import ISO, UNIFIED, WHITWORTH, Form
from shimstock.trade.sums.fasteners._series import INCH_SERIES, Row, rows, size_of

EXAMPLES = ("3/8-16 UNC", "M10×1.5")
LARGEST = {"in": 12.0, "mm": 300.0}
SIZE = r"#\d{1,2}|(?:\d{1,2}[ _-])?\d{1,2}/\d{1,3}|\d{0,2}\.\d{1,4}|\d{1,2}"
INCH = re.compile(
    rf"(?P<size>{SIZE}) ?(?:\"|in\b|inch\b)?(?: ?[-x] ?(?P<n>\d{{1,3}}(?:\.\d)?) ?(?:tpi)?)?"
    r"(?:[ -]*(?P<series>[a-z]{1,9}))?(?:[ -]*[123][ab])?(?: lh)?",
    re.ASCII,
)
METRIC = re.compile(
    r"m ?(?P<d>\d{1,3}(?:\.\d{1,2})?)(?: ?[x-] ?(?P<p>\d{1,2}(?:\.\d{1,3})?))?(?: ?- ?\d[a-h])?",
    re.ASCII,
)
ASSOCIATION = re.compile(r"(?:(\d{1,2}) ?ba|ba ?(\d{1,2}))", re.ASCII)
OLD_NAMES = {
    "nc": "UNC", "nf": "UNF", "unrc": "UNC", "unrf": "UNF", "w": "BSW", "whit": "BSW",
    "whitworth": "BSW", "cei": "BSC", "bscy": "BSC",
}  # fmt: skip
FREE = {"UN": UNIFIED, "UNEF": UNIFIED, "UNJ": UNIFIED}


@dataclass(frozen=True)
class Thread:
    """A thread: diameter and pitch in `unit` (in or mm), form, and threads an inch if counted so.

    remark: what the reading of its text took for granted.
    Raises NotPossible where diameter and pitch cannot belong to one thread.
    """

    name: str
    d: float
    pitch: float
    unit: str
    form: Form
    n: float | None = None
    remark: str = ""

    def __post_init__(self) -> None:
        sized = isfinite(self.d) and isfinite(self.pitch) and 0 < self.d <= LARGEST[self.unit]
        if not (sized and 0 < 1.5 * self.pitch < self.d):
            rule = f"cannot be: {self.d:g} {self.unit} thick with a pitch of {self.pitch:.4g}"
            raise NotPossible(self.name, rule, "look whether diameter and pitch are swapped")

    @property
    def units(self) -> Coherent:
        """Units that its sums work in."""
        return coherent(self.unit)


def parse_thread(text: str) -> Thread:
    """Reads a thread; an inch thread without a name is taken as unified where there is such a one.

    Raises NotUnderstood.

    >>> parse_thread("3/8-16 UNC").d, parse_thread("M10").pitch, parse_thread("1/2-12").form.angle
    (0.375, 1.5, 55)
    """
    return _read(text, ("UNC", "UNF", "UNS"))


def parse_whitworth(text: str) -> Thread:
    """Reads a thread of Whitworth form, also where no name stands behind it.

    Raises NotUnderstood.

    >>> parse_whitworth("3/8-16").name
    '3/8-16 BSW'
    """
    found = _read(text, ("BSW", "BSF"))
    if found.form is not WHITWORTH:
        wrong = f"is of {found.form.name} form, not of Whitworth form"
        raise NotUnderstood(text, wrong, ("3/8-16 BSW", "3/8-20 BSF"))
    return found


def _read(text: str, first: tuple[str, ...]) -> Thread:
    plain = (
        re.sub("[×*]", "x", tidy(text))
        .lower()
        .replace(",", ".")
        .replace("no. ", "#")
        .replace("no.", "#")
    )
    plain = plain.replace("# ", "#")
    try:
        if match := METRIC.fullmatch(plain):
            return _metric(text, match)
        if match := ASSOCIATION.fullmatch(plain):
            return _association(text, int(match[1] or match[2]))
        if match := INCH.fullmatch(plain):
            return _inch(text, match, first)
    except NotPossible as error:
        raise NotUnderstood(text, error.rule, EXAMPLES) from None
    raise NotUnderstood(text, "is no thread known here", EXAMPLES)


def _metric(text: str, match: re.Match[str]) -> Thread:
    d = float(match["d"])
    if match["p"] is None:
        found = [row for row in rows() if row.series == "ISO coarse" and row.d == d]
        if not found:
            raise NotUnderstood(text, "has no coarse pitch in ISO 261", (f"M{d:g}×1.5", "M10"))
        return _of_row(found[0])
    pitch = float(match["p"])
    found = [r for r in rows() if r.form is ISO and (r.d, r.pitch) == (d, pitch)]
    return _of_row(found[0]) if found else Thread(f"M{d:g}×{pitch:g}", d, pitch, "mm", ISO)


def _association(text: str, number: int) -> Thread:
    found = [row for row in rows() if row.name == f"{number} BA"]
    if not found:
        raise NotUnderstood(text, "is no BA size of this table", ("0 BA", "2 BA", "10 BA"))
    return _of_row(found[0])


def _inch(text: str, match: re.Match[str], first: tuple[str, ...]) -> Thread:
    series = _series(text, match["series"])
    n = float(match["n"]) if match["n"] else None
    if n == 0:
        raise NotUnderstood(text, "has no threads", EXAMPLES)
    d = _diameter(text, match["size"].replace(" ", "_").replace("-", "_"), n, series)
    same = [r for r in rows() if r.unit == "in" and abs(r.d - d) < 1e-9]
    alike = (series, "UNS") if series == "UNF" else (series,)
    of_series = [r for r in same if r.series in alike]
    if n is None:
        return _without_count(text, of_series, same)
    if of_series and n not in [r.n for r in of_series]:
        would = tuple(r.name for r in of_series)
        raise NotUnderstood(text, f"is no {series} thread of this size", would)
    fitting = [r for r in same if r.n == n]
    if series:
        form = FREE.get(series) or INCH_SERIES[series][1]
        own = [r for r in fitting if r.series in alike]
        name = f"{_written(match)}-{n:g} {series}"
        return _of_row(own[0]) if own else Thread(name, d, 1 / n, "in", form, n)
    return _unnamed(f"{_written(match)}-{n:g}", d, n, fitting, first)


def _unnamed(name: str, d: float, n: float, fitting: list[Row], first: tuple[str, ...]) -> Thread:
    """The thread that a size and count without a name are taken for, and what else it could be."""
    fitting = sorted(fitting, key=lambda row: row.series not in first)
    if not fitting:
        form = WHITWORTH if "BSW" in first else UNIFIED
        remark = f"{name} stands in no series: {form.name} form is taken."
        return Thread(name, d, 1 / n, "in", form, n, remark)
    others = [row for row in fitting[1:] if row.form is not fitting[0].form]
    remark = f"Taken as {fitting[0].name}."
    if others:
        names = " or ".join(row.name for row in others)
        remark += f" It could be {names}: only the form differs; type the name where it is."
    return _of_row(fitting[0], remark)


def _without_count(text: str, of_series: list[Row], same: list[Row]) -> Thread:
    if len(of_series) == 1:
        return _of_row(of_series[0])
    would = tuple(row.name for row in same) or EXAMPLES
    raise NotUnderstood(text, "does not say how many threads an inch", would)


def _series(text: str, said: str | None) -> str:
    if said is None:
        return ""
    name = OLD_NAMES.get(said, said.upper())
    if name not in INCH_SERIES and name not in FREE:
        raise NotUnderstood(text, f"ends in {said}, no series known here", EXAMPLES)
    return name


def _diameter(text: str, size: str, n: float | None, series: str) -> float:
    """Diameter in in; a bare whole number is a number size where the tables have it with that n."""
    try:
        if size.isdigit() and n is not None and series in ("", "UNC", "UNF"):
            numbered = float(size_of(f"#{size}"))
            if any(r.name.startswith("#") and (r.d, r.n) == (numbered, n) for r in rows()):
                return numbered
        return float(size_of(size))
    except ZeroDivisionError:
        raise NotUnderstood(text, "divides by nothing", EXAMPLES) from None


def _written(match: re.Match[str]) -> str:
    """The size as it is written in a name."""
    return " ".join(re.split("[ _-]", match["size"]))


def _of_row(row: Row, remark: str = "") -> Thread:
    return Thread(row.name, row.d, row.pitch, row.unit, row.form, row.n, remark)


ThreadText = Annotated[Thread, Read(parse_thread, "3/8-16 UNC", found="thread")]
