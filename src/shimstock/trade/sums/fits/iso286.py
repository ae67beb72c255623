import re

from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.units import Mm
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.fits.fit import Fit, fit
from shimstock.trade.sums.fits.iso286_tables import FINE, GRADES, LOWER, MAIN, UPPER

SOURCE = "ISO 286-1:2010, tables 1 to 3"
ZONE = re.compile(r"(js|JS|[A-Za-z])(\d{1,2})")
LETTERS = ("js", *UPPER, *LOWER)
GRADES_HELD = range(5, 12)


def iso_limits(*, size: Mm, zone: str) -> Worked[Range]:
    """Limits of size of a hole (H7) or shaft (s6) of the ISO system, in mm.

    size: nominal size, in mm, above 0 and up to 500.
    zone: letter and grade, as H7 or js6, no unit; a capital letter is a hole.
    Raises ValueError for a size or zone that the tables here do not hold.
    Source: ISO 286-1:2010, tables 1 to 3; rows also read in printed copies of them.

    >>> got = iso_limits(size=Mm(50), zone="s6").value
    >>> round(got.low, 3), round(got.high, 3)
    (50.043, 50.059)
    """
    letter, grade = _zone(zone)
    if not 0 < size <= 500:
        raise ValueError(f"size {size:g} mm: these tables hold sizes above 0, up to 500 mm")
    w = Working(source=SOURCE)
    w.given("D", size, "mm", meaning="nominal size")
    tolerance = w.given("IT", _entry(GRADES[grade], size), "um", meaning=f"grade {grade}")
    if letter.lower() == "js":
        upper = w.step("es", "IT/2", tolerance / 2, "um")
        lower = w.step("ei", "−IT/2", -tolerance / 2, "um")
    else:
        deviations = _hole if letter.isupper() else _shaft
        upper, lower = deviations(w, letter, grade, size, tolerance)
    top, bottom = ("ES", "EI") if letter.isupper() and letter != "JS" else ("es", "ei")
    high = w.step("D_max", f"D + {top}/1000", size + upper / 1000, "mm", meaning="largest")
    low = w.step("D_min", f"D + {bottom}/1000", size + lower / 1000, "mm", meaning="smallest")
    return Worked(Range(low, high, "mm", f"{size:g} {zone}"), w)


def iso_fit(*, designation: str) -> Worked[Fit]:
    """Clearance or interference of an ISO fit such as 50 H7/s6, in mm.

    designation: nominal size in mm, hole zone, stroke, shaft zone.
    Raises ValueError where the text is no such fit or the tables here do not hold it.
    Source: ISO 286-1:2010, tables 1 to 3.

    >>> got = iso_fit(designation="50 H7/s6").value
    >>> round(got.least, 3), round(got.most, 3)
    (-0.059, -0.018)
    """
    match = re.fullmatch(
        r"\s*[Øø⌀]?\s*(\d+(?:\.\d+)?)\s*([A-Z]+\d+)\s*/\s*([a-z]+\d+)\s*", designation
    )
    if not match:
        raise ValueError(f"{designation!r} is no fit; write size, hole and shaft as 50 H7/s6")
    size = Mm(float(match[1]))
    hole = iso_limits(size=size, zone=match[2]).value
    shaft = iso_limits(size=size, zone=match[3]).value
    worked = fit(hole=hole, shaft=shaft)
    worked.working.source = SOURCE
    return worked


def _zone(zone: str) -> tuple[str, int]:
    match = ZONE.fullmatch(zone.strip())
    if match and match[1].lower() in LETTERS and int(match[2]) in GRADES_HELD:
        return match[1], int(match[2])
    raise ValueError(
        f"zone {zone!r} is not held here; letters {', '.join(LETTERS)} (capitals for holes) with "
        f"grades {GRADES_HELD[0]} to {GRADES_HELD[-1]}, as H7 or s6"
    )


def _shaft(w: Working, letter: str, grade: int, size: float, tol: float) -> tuple[float, float]:
    """Upper and lower deviation of a shaft, in micrometres."""
    if letter in UPPER:
        upper = w.given("es", _entry(UPPER[letter], size), "um", meaning=f"letter {letter}")
        return upper, w.step("ei", "es − IT", upper - tol, "um")
    lower = w.given("ei", _lower(letter, grade, size), "um", meaning=f"letter {letter}")
    return w.step("es", "ei + IT", lower + tol, "um"), lower


def _hole(w: Working, letter: str, grade: int, size: float, tol: float) -> tuple[float, float]:
    """Upper and lower deviation of a hole, in micrometres: the shaft's, turned over."""
    small = letter.lower()
    if small in UPPER:
        es = w.given("es", _entry(UPPER[small], size), "um", meaning=f"shaft letter {small}")
        lower = w.step("EI", "−es", -es, "um")
        return w.step("ES", "EI + IT", lower + tol, "um"), lower
    if small == "n" and grade > 8 and size > 3:
        upper = w.given("ES", 0, "um", meaning="letter N above grade 8")
        return upper, w.step("EI", "ES − IT", upper - tol, "um")
    ei = w.given("ei", _lower(small, grade, size), "um", meaning=f"shaft letter {small}")
    delta = w.given("Δ", _delta(small, grade, size), "um", meaning="finer grade of the hole")
    upper = w.step("ES", "Δ − ei", delta - ei, "um")
    return upper, w.step("EI", "ES − IT", upper - tol, "um")


def _lower(letter: str, grade: int, size: float) -> int:
    return 0 if letter == "k" and grade > 7 else _entry(LOWER[letter], size)


def _delta(letter: str, grade: int, size: float) -> int:
    """What a close hole gets back, so that it fits like the next finer shaft (ITn − ITn−1)."""
    closest = 8 if letter in ("k", "m", "n") else 7
    if size <= 3 or grade > closest:
        return 0
    if letter == "m" and grade == 6 and 250 < size <= 315:
        return 11  # the one entry of table 3 that does not follow the rule
    return _entry(GRADES[grade], size) - _entry(GRADES[grade - 1], size)


def _entry(row: tuple[int, ...], size: float) -> int:
    """The entry of a table row for a size in mm, above 0 and up to 500."""
    ends = FINE if len(row) == len(FINE) else MAIN
    return row[next(i for i, end in enumerate(ends) if size <= end)]
