"""Play along a train of gears: which mesh it is in, found by holding one shaft after another."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from math import prod, sqrt

from shimstock.trade.machine.book import Book, Link, Train
from shimstock.trade.machine.words import Stage, Verdict
from shimstock.trade.measure.bore import mean
from shimstock.trade.measure.gasket_share import GasketShare, explained, gasket_shares
from shimstock.trade.measure.judge import Judged, judge
from shimstock.trade.measure.measured import Measured
from shimstock.trade.measure.reading import Reading
from shimstock.trade.measure.verdicts import Readings, as_a_sum
from shimstock.trade.numbers.instruments import good_to, named
from shimstock.trade.numbers.quantity import convert, parse, show
from shimstock.trade.numbers.units import Length, PerInch, Teeth
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.gears.lash_at_end import lash_from_end
from shimstock.trade.sums.gears.pitch_radius import pitch_radius

NOT_ALONE = "the readings do not part it from its neighbours"


@dataclass(frozen=True)
class LinkFound:
    """What the rocking says of one mesh or clearance of the train.

    verdict: `not measured` where the readings do not part it from its neighbours.
    judged: by its own figure, where it stands alone. most: the play it would have if all that was
    read with its neighbours were here. gasket: what is left after a wrong gasket is allowed for.
    """

    name: str
    figure: str
    verdict: Verdict
    says: str
    judged: Judged | None = None
    most: float | None = None
    gasket: tuple[GasketShare, ...] = ()
    look_first: tuple[str, ...] = ()


@dataclass(frozen=True)
class TrainFound:
    """What the rocking of a train says.

    total: never worn out by itself. next_hold: what to hold next, and why; empty when every link
    stands alone.
    """

    total: Judged | None
    links: tuple[LinkFound, ...]
    next_hold: str

    @property
    def worn(self) -> tuple[LinkFound, ...]:
        """The links that are proven worn."""
        return tuple(link for link in self.links if link.verdict is Verdict.WORN_OUT)


def rock(
    book: Book,
    train_key: str,
    tip_readings: Sequence[Reading | Sequence[str] | None],
    *,
    within: float | None = None,
    gasket_found: str | float | None = None,
    gasket_book: str | float | None = None,
) -> TrainFound:
    """Part the play at the end of a train among its links.

    tip_readings: for each link in the book's order, what was read at the end with that link's
    shaft held, as typed; None where it was not held. The first alone is the whole play.
    within: the ± of one reading at the end, k = 2, in the unit of the train's figure; without it,
    the instrument that the book names. gasket_found, gasket_book: thickness of the gasket that
    sets a mesh, in the same unit; without the second, the book's.
    Source: trade practice; geometry of gears; JCGM 100:2008, 5.1.2 for the uncertainties.
    """
    train = book.trains[train_key]
    readings = list(_readings(book, train, tip_readings, within))
    held = [at for at, reading in enumerate(readings) if reading is not None]
    extra = _extra_gasket(book, train, gasket_found, gasket_book)
    links = tuple(_link(book, train, at, readings, held, extra) for at in range(len(train.links)))
    return TrainFound(_total(book, train, readings), links, _next_hold(book, train, held))


def tip_readings(
    book: Book, train_key: str, readings: Readings, stage: Stage = Stage.FOUND
) -> list[Reading | None]:
    """The readings of a train's figure and of its holds' figures, in the order that `rock` takes.

    readings: everything that was read on the machine.
    """
    train = book.trains[train_key]
    figures = [train.figure, *(link.hold.figure for link in train.links[1:])]
    found = []
    for key in figures:
        piece = book.parts[book.measures[key].of].instances[0] if key else ""
        found.append(readings.get((key, piece, stage)) if key else None)
    return found


def _readings(
    book: Book,
    train: Train,
    tip_readings: Sequence[Reading | Sequence[str] | None],
    within: float | None,
) -> Iterator[Reading | None]:
    if len(tip_readings) > len(train.links):
        raise ValueError(
            f"{len(tip_readings)} holds were read, but {train.name} has {len(train.links)} links"
        )
    figure = book.measures[train.figure]
    unit = figure.measured_in
    gauge = good_to(within, unit) if within is not None else named(figure.with_ or "rule", unit)
    for at in range(len(train.links)):
        typed = tip_readings[at] if at < len(tip_readings) else None
        if isinstance(typed, Reading):
            yield typed if within is None else replace(typed, instrument=gauge)
            continue
        if not typed:
            yield None
            continue
        texts = tuple(str(text) for text in typed)
        values = tuple(parse(text, unit=unit, what=figure.name).value for text in texts)
        yield Reading(train.figure, texts, values, unit, gauge)


def _extra_gasket(
    book: Book, train: Train, found: str | float | None, book_says: str | float | None
) -> float:
    """How much thicker the gasket found is than the book's, in the unit of the train's figure."""
    if found is None:
        return 0.0
    unit = book.measures[train.figure].measured_in
    right = book_says if book_says is not None else _gasket_in_book(book, train, unit)
    if right is None:
        raise ValueError("the book gives no thickness for this gasket; type the right one too")
    return _thickness(found, unit) - _thickness(right, unit)


def _thickness(said: str | float, unit: str) -> float:
    return parse(str(said), unit=unit, what="gasket thickness").value


def _gasket_in_book(book: Book, train: Train, unit: str) -> float | None:
    for link in train.links:
        for use in book.joints[link.spread_by].uses if link.spread_by else ():
            if use.gasket and use.thickness:
                return convert(use.thickness.value, use.thickness.unit, unit)
    return None


def _total(book: Book, train: Train, readings: Sequence[Reading | None]) -> Judged | None:
    whole = readings[0]
    if whole is None:
        return None
    figure = book.measures[train.figure]
    got = mean(figure, whole)
    judged = judge(
        *(train.figure, figure, got.value, got.u),
        working=got.working,
        symbol=got.symbol,
        gauge=got.gauge,
    )
    return as_a_sum(book, judged)


def _link(
    book: Book,
    train: Train,
    at: int,
    readings: Sequence[Reading | None],
    held: Sequence[int],
    extra: float,
) -> LinkFound:
    link = train.links[at]
    before = [n for n in held if n <= at]
    after = [n for n in held if n > at]
    if not before:
        says = f"{link.name}: not rocked; hold {link.hold.what}"
        return LinkFound(link.name, link.figure, Verdict.NOT_MEASURED, says)
    first, last = before[-1], (after[0] if after else len(train.links))
    got = _lash(book, train, at, readings[first], readings[last] if after else None)
    if last - first > 1:
        return _among(book, train, at, got, range(first, last))
    return _alone(book, link, got, extra)


def _lash(
    book: Book, train: Train, at: int, whole: Reading | None, beyond: Reading | None
) -> Measured:
    """The play of a link that takes up all the movement between two readings."""
    assert whole is not None
    link, unit = train.links[at], whole.unit
    w = Working()
    moved, u_moved = _movement(w, book, train, whole, beyond)
    if link.ratio is not None:
        ratio = w.given("k", link.ratio, "", meaning="movement at the end for each unit here")
        lash = w.step("j", "Δ/k", moved / ratio, unit, meaning=f"play of {link.name}")
        return Measured(
            lash, w, w.step("u_j", "u_Δ/k", u_moved / ratio, unit), unit, "j", whole.instrument
        )
    radius, speed, end = _geometry(train, at, unit)
    worked = lash_from_end(
        movement=Length(moved),
        radius=Length(radius),
        ratio=speed,
        end_radius=Length(end),
        unit=unit,
    )
    w.extend(worked.working)
    u = w.step("u_j", "u_Δ/R/i·r", u_moved / end / speed * radius, unit)
    return Measured(worked.value, w, u, unit, "j", whole.instrument)


def _movement(
    w: Working, book: Book, train: Train, whole: Reading, beyond: Reading | None
) -> tuple[float, float]:
    """The movement at the end that belongs behind one hold, and its uncertainty."""
    a, u_a = _tip(w, "a", whole)
    if beyond is None:
        w.step("Δ", "a", a, whole.unit, meaning="movement at the end")
        return a, w.step("u_Δ", "u_a", u_a, whole.unit)
    b, u_b = _tip(w, "b", beyond)
    moved = w.step("Δ", "a − b", a - b, whole.unit, meaning="what went away with the next hold")
    return moved, w.step("u_Δ", "√(u_a² + u_b²)", sqrt(u_a**2 + u_b**2), whole.unit)


def _tip(w: Working, symbol: str, reading: Reading) -> tuple[float, float]:
    """The mean at the end with one hold, and its uncertainty, put into a working."""
    values = [value for _, value in reading.taken]
    if len(values) == 1:
        at, value = reading.taken[0]
        middle = w.given(symbol, value, reading.unit, typed=reading.typed[at])
    else:
        names = [f"{symbol}_{n}" for n in range(1, len(values) + 1)]
        for name, (at, value) in zip(names, reading.taken, strict=True):
            w.given(name, value, reading.unit, typed=reading.typed[at])
        formula = f"({' + '.join(names)})/{len(values)}"
        middle = w.step(symbol, formula, sum(values) / len(values), reading.unit, meaning="mean")
    u = reading.u(middle, len(values))
    w.given(
        f"u_{symbol}", u, reading.unit, meaning=f"standard uncertainty, {reading.instrument.name}"
    )
    return middle, u


def _geometry(train: Train, at: int, unit: str) -> tuple[float, float, float]:
    """Pitch radius of the driven gear, turns of the end for one of it, radius read at."""
    link = train.links[at]
    if link.driven_teeth is None or link.pitch is None or train.radius is None:
        raise ValueError(f"{link.name}: teeth, pitch and the radius at the end are needed")
    radius = pitch_radius(teeth=Teeth(link.driven_teeth), diametral_pitch=PerInch(link.pitch))
    speed = prod(
        later.driver_teeth / later.driven_teeth
        for later in train.links[at + 1 :]
        if later.driver_teeth and later.driven_teeth
    )
    end = convert(train.radius.value, train.radius.unit, unit)
    return convert(radius.value, "in", unit), float(speed), end


def _alone(book: Book, link: Link, got: Measured, extra: float) -> LinkFound:
    figure = book.measures[link.figure]
    judged = judge(
        *(link.figure, figure, got.value, got.u),
        working=got.working,
        symbol=got.symbol,
        gauge=got.gauge,
    )
    verdict = judged.verdict or Verdict.NOT_MEASURED
    says = f"{link.name}: {judged.says}"
    shares: tuple[GasketShare, ...] = ()
    if link.spread_by and extra:
        shares = gasket_shares(link, figure, got, extra)
        verdict, more = explained(verdict, shares)
        says = f"{says}; {more}"
    if judged.verdict is Verdict.BORDERLINE:
        says = f"{says}. Measure on the tooth"
    look = link.look_first if verdict in (Verdict.WORN_OUT, Verdict.BORDERLINE) else ()
    return LinkFound(link.name, link.figure, verdict, says, judged, got.value, shares, look)


def _among(book: Book, train: Train, at: int, got: Measured, group: range) -> LinkFound:
    """A link that the readings do not part from its neighbours: it may have none or all of it."""
    link = train.links[at]
    limit = book.measures[link.figure].allowed
    others = ", ".join(train.links[n].name for n in group if n != at)
    most = show(got.value, got.unit)
    if limit is not None and limit.high is not None and got.value + 2 * got.u < limit.high:
        says = f"{link.name}: at most {most}, even if {others} had none: within the limit"
        return LinkFound(link.name, link.figure, Verdict.SERVICEABLE, says, most=got.value)
    says = f"{link.name}: from nothing to {most}, shared with {others} in a way not known yet"
    look = link.look_first
    return LinkFound(
        link.name, link.figure, Verdict.NOT_MEASURED, says, most=got.value, look_first=look
    )


def _next_hold(book: Book, train: Train, held: Sequence[int]) -> str:
    """The hold that is quickest to reach among those that would part links from each other."""
    open_ones = [at for at in range(len(train.links)) if at not in held]
    if not open_ones:
        return ""
    at = min(open_ones, key=lambda n: (_minutes(book, train.links[n]), -n))
    hold = train.links[at].hold
    if not hold.open or hold.open not in book.joints:
        return f"Next: hold the {hold.what}, and rock again"
    joint = book.joints[hold.open]
    return (
        f"Next: hold the {hold.what}, and rock again ({joint.name}: {joint.open:.0f} min to open, "
        f"{joint.close:.0f} min to close, beside what is in the way)"
    )


def _minutes(book: Book, link: Link) -> float:
    joint = book.joints.get(link.hold.open or "")
    return joint.open + joint.close if joint else 0.0


def after_repair(
    book: Book, train_key: str, found: TrainFound, repaired: Mapping[str, float]
) -> Worked[float]:
    """The play to expect at the end once some links are put right.

    repaired: by the link's figure, the lash after the work; the other links keep what was found.
    Raises ValueError where a link is neither repaired nor found alone.
    Source: geometry; the play of every link carried to the end and added.
    """
    train = book.trains[train_key]
    unit = book.measures[train.figure].measured_in
    w = Working(source="geometry: the play of every link carried to the end and added")
    terms, total = [], 0.0
    for n, (link, each) in enumerate(zip(train.links, found.links, strict=True), start=1):
        if link.figure not in repaired and (each.judged is None):
            raise ValueError(f"{link.name} is neither put right nor known by itself: rock it first")
        lash = repaired.get(link.figure, each.most or 0.0)
        state = "after the work" if link.figure in repaired else "as found"
        w.given(f"j_{n}", lash, unit, meaning=f"{link.name}, {state}")
        gain = _gain(w, train, n, unit)
        terms.append(f"k_{n}·j_{n}")
        total += gain * lash
    return Worked(w.step("S", " + ".join(terms), total, unit, meaning="play at the end"), w)


def _gain(w: Working, train: Train, n: int, unit: str) -> float:
    """Movement at the end for each unit of play in the nth link, put into a working."""
    link = train.links[n - 1]
    if link.ratio is not None:
        return w.given(f"k_{n}", link.ratio, "", meaning="movement at the end for each unit here")
    radius, speed, end = _geometry(train, n - 1, unit)
    w.given(f"r_{n}", radius, unit, meaning="pitch radius of the driven gear")
    w.given(f"i_{n}", speed, "", meaning="turns of the end for one of that gear")
    if n == 1 or not _stands(w, "R"):
        w.given("R", end, unit, meaning="radius at which the end is read")
    return w.step(f"k_{n}", f"i_{n}·R/r_{n}", speed * end / radius, "")


def _stands(w: Working, symbol: str) -> bool:
    try:
        w.value(symbol)
    except KeyError:
        return False
    return True
