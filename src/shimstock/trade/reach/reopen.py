"""Whether to open a leaking joint again now, or after the paint is on."""

from __future__ import annotations

from dataclasses import dataclass

from shimstock.trade.machine.state import MachineNow
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.reach.due import CautionDue
from shimstock.trade.reach.target import Target, joint_of
from shimstock.trade.reach.way import Way, way_in

FITTING_AGAIN = (
    "two guide studs, so that the cover goes straight on",
    "hold the gasket with grease, or with cotton through the bolt holes",
    "tighten in three rounds from the middle outwards",
    "look again at the first heat",
)
"""How to fit a long gasket so that it is not shoved over; common practice."""
SOURCE = "the joint's own times and the paint work that comes on top later"


@dataclass(frozen=True)
class Reopen:
    """Opening a joint again, now and after paint.

    now: minutes now. after_paint: minutes after paint. money: what the paint costs on top.
    """

    joint: str
    now: float
    after_paint: float
    money: float
    way: Way
    advice: tuple[str, ...]

    @property
    def reopen_now(self) -> bool:
        """True where it costs less now, which is nearly always."""
        return (self.now, 0.0) < (self.after_paint, self.money)

    @property
    def cautions(self) -> tuple[CautionDue, ...]:
        """Cautions that belong to the work."""
        return self.way.cautions

    @property
    def says(self) -> str:
        """The verdict in one line."""
        if not self.reopen_now:
            return f"it costs the same later: {self.now:g} min"
        more = f" and {self.money:g} for paint" if self.money else ""
        return f"reopen now: {self.now:g} min against {self.after_paint:g} min{more} after paint"


def reopen(
    now: MachineNow, joint: str, *, paint_minutes: float, paint_money: float
) -> Worked[Reopen]:
    """What it costs to open a joint again now, against after paint.

    now: the machine as it stands. joint: the one that leaks. paint_minutes: to strip and paint
    again. paint_money: for paint. A joint off the paint needs neither.
    Source: the book's times; the two are compared, nothing is left to chance because it leaks.
    Raises UnknownName for a joint the book does not know, ValueError for less than nothing.
    """
    entry = joint_of(now.book, joint)
    if min(paint_minutes, paint_money) < 0:
        raise ValueError("paint work of less than 0 minutes or money; give 0 or more")
    on_top = (paint_minutes, paint_money) if entry.on_paint else (0.0, 0.0)
    way = way_in(now, [Target("joint", joint)])
    w = Working(source=SOURCE, cautions=way.working.cautions)
    w.given("t_o", way.minutes_open, "min", meaning=f"open {entry.name} and what is before it")
    w.given("t_c", way.minutes_close, "min", meaning="close them again")
    w.given("t_p", on_top[0], "min", meaning="strip and paint again")
    w.given("m_p", on_top[1], "", meaning="money for paint")
    before = w.step("T_n", "t_o + t_c", way.minutes, "min", meaning="now")
    later = way_in(MachineNow(now.book, now.today), [Target("joint", joint)]).minutes
    w.given("t_l", later, "min", meaning="there and back once all is closed for paint")
    after = w.step("T_l", "t_l + t_p", later + on_top[0], "min", meaning="after paint")
    advice = FITTING_AGAIN if any(use.kind == "gasket" for use in entry.uses) else ()
    result = Reopen(joint, before, after, on_top[1], way, advice)
    w.note(result.says)
    for text in advice:
        w.note(text)
    return Worked(result, w)
