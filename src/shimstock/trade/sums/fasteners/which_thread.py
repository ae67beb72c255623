from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.conversion import convert
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fasteners._candidates import (
    Candidate,
    candidates,
    fineness,
    nearest_names,
    told_apart,
)

ERROR = {"in": 0.004, "mm": 0.1}
UNDER = {"in": 0.07, "mm": 0.07 * 25.4 ** (1 / 3)}  # allowance and tolerance, times P^(2/3)


@a_sum(example="--diameter '0.372 in' --tpi 16")
def which_thread(
    *,
    diameter: Annotated[float, Of("length", above=0)],
    tpi: Annotated[float, Of("tpi", above=0, most=200)] | None = None,
    pitch: Annotated[float, Of("length", above=0)] | None = None,
    error: Annotated[float, Of("length", least=0)] | None = None,
    pitch_error: Annotated[float, Of("%", least=0, most=20)] = 2,
    unit: str = "mm",
) -> Worked[tuple[str, ...]]:
    """Every thread that a measured bolt could be, and what tells them apart.

    Looks through UNC, UNF, BSW, BSF, BSC, BA and ISO metric, coarse and fine; pipe threads and
    makers' own are not among them. A bolt is made a little thinner than its name.

    diameter: outside diameter of the bolt over its crests, in `unit`.
    tpi: threads an inch, counted or by gauge, in tpi.
    pitch: one crest to the next, best over ten threads, in `unit`.
    error: how far the diameter may be off, also by wear and rust, in `unit`; 0.1 mm or 0.004 in
        where nothing is typed.
    pitch_error: how far the pitch may be off, in %.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where neither or both of tpi and pitch are given.
    Source: ASME B1.1, BS 84, BS 93, BS 811, ISO 261 and ISO 262; outside diameters by ASME B1.1
    class 2A, up to about 0.07·P^(2/3) in under the nominal.

    >>> which_thread(diameter=0.372, tpi=16, unit="in").value
    ('3/8-16 UNC', '3/8-16 BSW')
    """
    if (tpi is None) == (pitch is None):
        raise NotPossible("the pitch", "is said by one of tpi and pitch", "give one of the two")
    w, unit = Working(), coherent(unit).length
    w.given("D", diameter, unit, meaning="outside diameter as measured")
    p = _pitch(w, tpi, pitch, unit)
    off = ERROR[unit] if error is None else error
    w.given("e", off, unit, meaning="error of the diameter")
    w.given("e_P", pitch_error, "%", meaning="error of the pitch")
    under = w.step("t", f"{UNDER[unit]:.6g}·P^(2/3)", float(f"{UNDER[unit]:.6g}") * p ** (2 / 3),
                   unit, meaning="made thinner by up to")  # fmt: skip
    low = w.step("d_low", "D − e", diameter - off, unit, meaning="nominal from")
    high = w.step("d_high", "D + e + t", diameter + off + under, unit, meaning="nominal to")
    found = candidates((low, high), p, pitch_error / 100, unit)
    _say(w, found, diameter, p, unit)
    return Worked(tuple(each.row.name for each in found), w)


def _pitch(w: Working, tpi: float | None, pitch: float | None, unit: str) -> float:
    if pitch is not None:
        return w.given("P", pitch, unit, meaning="pitch as measured")
    counted = w.given("n", tpi or 1, "tpi", meaning="threads an inch as counted")
    inch = convert(1, "in", unit)
    return w.step("P", f"{inch:g}/n", inch / counted, unit, meaning="pitch")


def _say(w: Working, found: list[Candidate], diameter: float, p: float, unit: str) -> None:
    """The candidates as lines and as results."""
    if not found:
        near = ", ".join(nearest_names(diameter, p, unit))
        w.note(f"No thread of these series fits; nearest are {near}.")
        w.tell("candidates", "none of these series")
        w.tell("tell apart by", "measuring again: crest to crest over ten threads")
        return
    for i, each in enumerate(found, start=1):
        form = each.row.form
        what = f"{each.row.name}: {form.angle:g}°, {form.crests} crests, {fineness(each.row)}"
        d = w.given(f"d_{i}", each.d, unit, meaning=what)
        w.step(f"u_{i}", f"d_{i} − D", d - diameter, unit, meaning="measured under it")
    w.tell("candidates", "; ".join(each.row.name for each in found))
    w.tell("tell apart by", told_apart(found, unit))
