"""From movement at the end of a train to play in one of its links, and back."""

from __future__ import annotations

from shimstock.trade.machine.book import Train
from shimstock.trade.measure.measured import Measured
from shimstock.trade.measure.reading import Reading
from shimstock.trade.numbers.quantity import convert
from shimstock.trade.numbers.uncertainty import of_difference
from shimstock.trade.numbers.units import Length, PerInch, Teeth
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.gears.lash_from_end import lash_from_end
from shimstock.trade.sums.gears.pitch_radius import pitch_radius
from shimstock.trade.sums.gears.train_ratio import train_ratio


def play(train: Train, at: int, whole: Reading, beyond: Reading | None) -> Measured:
    """The play of a link if it took up all the movement between two readings.

    at: which link. whole: read with a shaft held before it; beyond: with one held behind it, None
    where nothing is left behind it.
    Source: geometry; JCGM 100:2008, 5.1.2, independent readings.
    """
    link, unit = train.links[at], whole.unit
    w = Working(source="JCGM 100:2008, 5.1.2")
    moved, u_moved = _movement(w, whole, beyond)
    if link.ratio is not None:
        ratio = w.given("k", link.ratio, "", meaning="movement at the end for each unit here")
        lash = w.step("j", "Δ/k", moved / ratio, unit, meaning="play")
        u = w.step("u_j", "u_Δ/k", u_moved / ratio, unit)
        return Measured(lash, w, u, unit, "j", whole.instrument)
    radius, speed, end = geometry(train, at, unit)
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


def _movement(w: Working, whole: Reading, beyond: Reading | None) -> tuple[float, float]:
    """The movement at the end that belongs behind one hold, and its uncertainty."""
    unit = whole.unit
    a, u_a = _tip(w, "a", whole)
    if beyond is None:
        w.step("Δ", "a", a, unit, meaning="movement at the end")
        return a, w.step("u_Δ", "u_a", u_a, unit)
    b, u_b = _tip(w, "b", beyond)
    moved = w.step("Δ", "a − b", a - b, unit, meaning="what went away with the next hold")
    return moved, w.step("u_Δ", "√(u_a² + u_b²)", of_difference(u_a, u_b), unit)


def _tip(w: Working, symbol: str, reading: Reading) -> tuple[float, float]:
    """The mean at the end with one hold, and its uncertainty, put into a working."""
    unit, taken = reading.unit, reading.taken
    names = [symbol] if len(taken) == 1 else [f"{symbol}_{n}" for n, _ in enumerate(taken, 1)]
    for name, (at, value) in zip(names, taken, strict=True):
        w.given(name, value, unit, typed=reading.typed[at])
    middle = sum(value for _, value in taken) / len(taken)
    if len(taken) > 1:
        w.step(symbol, f"({' + '.join(names)})/{len(taken)}", middle, unit, meaning="mean")
    u = reading.u(middle, len(taken))
    w.given(f"u_{symbol}", u, unit, meaning=f"standard uncertainty, {reading.instrument.name}")
    return middle, u


def geometry(train: Train, at: int, unit: str) -> tuple[float, float, float]:
    """Pitch radius of a mesh's driven gear, turns of the end for one of it, radius read at.

    Lengths in `unit`. Raises ValueError where the book leaves out what is needed.
    """
    link = train.links[at]
    if link.driven_teeth is None or link.pitch is None or train.radius is None:
        raise ValueError(f"{link.name}: teeth, pitch and the radius at the end are needed")
    radius = pitch_radius(teeth=Teeth(link.driven_teeth), diametral_pitch=PerInch(link.pitch))
    later = [
        (Teeth(each.driver_teeth), Teeth(each.driven_teeth))
        for each in train.links[at + 1 :]
        if each.driver_teeth and each.driven_teeth
    ]
    speed = train_ratio(meshes=later).value if later else 1.0
    end = convert(train.radius.value, train.radius.unit, unit)
    return convert(radius.value, "in", unit), speed, end


def gain_of(train: Train, at: int, unit: str) -> float:
    """Movement at the end for each unit of play in a link; unit: of lengths, such as in.

    Raises ValueError where the book leaves out what is needed.
    """
    return keep_gain(Working(), train, at, unit)


def keep_gain(w: Working, train: Train, at: int, unit: str) -> float:
    """Movement at the end for each unit of play in a link, put into a working as k_1, k_2."""
    link, n = train.links[at], at + 1
    if link.ratio is not None:
        return w.given(f"k_{n}", link.ratio, "", meaning="movement at the end for each unit here")
    radius, speed, end = geometry(train, at, unit)
    w.given(f"r_{n}", radius, unit, meaning="pitch radius of the driven gear")
    w.given(f"i_{n}", speed, "", meaning="turns of the end for one of that gear")
    w.given(f"R_{n}", end, unit, meaning="radius at which the end is read")
    return w.step(f"k_{n}", f"i_{n}·R_{n}/r_{n}", speed * end / radius, "")
