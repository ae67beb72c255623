"""How a machine stands tonight, for a page: every line with the address where it is seen to."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from functools import cached_property
from typing import Any

from shimstock.faces.web.places import address_of
from shimstock.workshop.looking import Seen
from shimstock.workshop.places import joint_place, search_place
from shimstock.workshop.wording import count_of

LITTLE = 2
"""Things that a joint may lack for them to be told one by one."""

Line = tuple[str, str]
"""What is to be read, and the address that it leads to; "" for none."""


@dataclass(frozen=True)
class Lacking:
    """An open joint, and what is missing before it can be closed."""

    joint: dict[str, Any]
    reasons: list[str]

    @property
    def little(self) -> bool:
        """Whether little enough is missing to be told one by one."""
        return len(self.reasons) <= LITTLE


@dataclass(frozen=True)
class Tonight:
    """One machine as it stands."""

    seen: Seen

    @property
    def says(self) -> str:
        """What is open, bare and away, in a sentence."""
        opened, away = self.seen.standing["open"], self.seen.standing["away"]
        said = f"{count_of(len(opened), 'joint')} open" if opened else "Nothing stands open"
        waits = f"; {count_of(len(away), 'piece')} away or wanted" if away else ""
        return f"{said}{self._bare_told}{waits}."

    @property
    def first(self) -> str:
        """Why to look at it before others: what is bare, what is unsafe; "" for nothing."""
        bare, beside = len(self.bare), len(self.unsafe_beside)
        said = [f"{bare} not covered"] if bare else []
        return ", ".join([*said, f"{beside} unsafe"] if beside else said)

    @property
    def todo(self) -> list[Line]:
        """What to do next, likeliest first."""
        return [self._line(each.says, each.place) for each in self.seen.to_do]

    @property
    def unsafe(self) -> list[Line]:
        """What is not safe as it stands."""
        return [self._line(each.says, each.place) for each in self.seen.unsafe]

    @property
    def searches(self) -> list[Line]:
        """Searches for a fault that go on."""
        going_on = self.seen.standing["searches"]
        return [self._line(each["says"], search_place(each["search"])) for each in going_on]

    @property
    def unsafe_beside(self) -> list[Line]:
        """The same beside a list of what stands open and bare."""
        told = {joint_place(each["joint"]) for each in self.bare}
        beside = [each for each in self.seen.unsafe if each.place not in told]
        return [self._line(each.says, each.place) for each in beside]

    @property
    def bare(self) -> list[dict[str, Any]]:
        """Joints that stand open and are not covered."""
        return [each for each in self._open if not each["covered"]]

    @property
    def covered(self) -> list[dict[str, Any]]:
        """Joints that stand open and are covered."""
        return [each for each in self._open if each["covered"]]

    @property
    def lacking(self) -> list[Lacking]:
        """Open joints that cannot be closed yet, those that lack least first."""
        named = {each["joint"]: each for each in self._open}
        missing = self.seen.standing["missing"].items()
        found = [Lacking(named[key], reasons) for key, reasons in missing]
        return sorted(found, key=lambda each: len(each.reasons))

    @property
    def _bare_told(self) -> str:
        if not self.bare:
            return ""
        some = f" {len(self.bare)} of them" if self.covered else ""
        return f",{some} not covered"

    @cached_property
    def _open(self) -> list[dict[str, Any]]:
        """Joints that stand open, with the day since when as such."""
        opened = self.seen.standing["open"]
        return [{**each, "since": _day(each["since"])} for each in opened]

    def _line(self, says: str, place: str) -> Line:
        return says, address_of(place, self.seen.row.slug)


def _day(written: str | None) -> date | None:
    return date.fromisoformat(written) if written else None
