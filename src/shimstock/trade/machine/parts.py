"""Parts, and the sets they belong to."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from shimstock.trade.machine.entry import Entry
from shimstock.trade.machine.texts import Names


class Part(Entry):
    """A thing that can be fitted or off; parts sit on parts."""

    name: str
    mark: str | None = Field(None, description="Short mark for bags and labels.")
    group: str = "other"
    sits_on: str | None = Field(None, description="The part it is fitted to; none for the machine.")
    each: Names = Field((), description="Names of the several, such as [left, right] or [1, 2].")
    count: int = Field(1, ge=1)
    as_: Literal["one", "pair", "set"] = Field("one", description="Handled singly or as a bundle.")
    set: str | None = Field(None, description="The set whose members stay or go together.")
    wear: bool = Field(False, description="Worth measuring.")
    core: bool = Field(False, description="The old one is usually wanted back.")
    sent_out: bool = Field(False, description="Usually sent out for work.")
    words: Names = Field((), description="Other words that it is looked for by: big end, conrod.")
    heavy: bool = Field(False, description="Two people or a hoist.")

    @property
    def instances(self) -> tuple[str, ...]:
        """Names of the single pieces; one empty name where there is only one."""
        if self.each:
            return self.each
        if self.count == 1:
            return ("",)
        return tuple(str(n) for n in range(1, self.count + 1))


class Set(Entry):
    """Parts that belong together and stay or go together."""

    name: str | None = None
    same: Names = Field((), description="What must be the same: maker, size, history.")
    proof: str | None = Field(None, description="What proves a mixed pair: a bench sheet.")
