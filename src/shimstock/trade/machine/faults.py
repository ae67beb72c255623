"""What can be wrong with a machine, how it shows, and how it is checked."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from shimstock.trade.machine.entry import Entry
from shimstock.trade.machine.texts import Minutes, Names

PRIORS = {"common": 0.10, "occasional": 0.03, "rare": 0.01}
"""How often a cause is there in a machine that has been standing. Experience, no source."""

STRENGTHS = {"strong": 0.8, "medium": 0.4, "weak": 0.1}
"""How often a cause that is there brings on the sign. Experience, no source."""


class Standing(Entry):
    """How the same is looked at where the engine must not turn, or cannot."""

    do: str
    points_to: str | None = None
    points_away: str | None = None
    needs: Names = ()
    dangers: Names = Field((), description="Danger words that call up cautions.")


class Forbids(Entry):
    """That the engine must not run, or not turn at all, while something is so."""

    engine: Literal["running", "turning"] = Field(
        description="What must not be: running, or turning, which cranking is too."
    )
    why: str = Field(description="What it would do.")
    until: Names = Field((), description="Causes after which it may, once they are cleared.")


class Check(Entry):
    """How a cause is checked."""

    do: str
    minutes: Minutes
    open: Names = ()
    closed: Names = Field((), description="Joints that must be closed for it: to fill, to rock.")
    hands: int = Field(1, ge=1, description="People needed.")
    needs: Names = Field((), description="What must be at hand: gauge, dial, timing light.")
    dangers: Names = Field((), description="Danger words that call up cautions.")
    when: Literal["cranking", "running"] | None = Field(
        None, description="The engine must turn, or run, for it."
    )
    standing: Standing | None = Field(
        None, description="What can be looked at instead with the engine standing."
    )


class Cause(Entry):
    """Something that can be wrong."""

    name: str
    mark: str | None = None
    part: str | None = None
    prior: Literal["common", "occasional", "rare"] | float
    check: Check
    points_to: str | None = None
    points_away: str | None = None
    figures: Names = Field(
        (), description="Figures that are this cause: beyond the limit it is there, within it not."
    )
    shown_by: Names = Field(
        (), description="Figures that prove it beyond their limit, and clear nothing within it."
    )
    never_with: Names = Field((), description="Causes that cannot be there beside this one.")
    forbids: Forbids | None = Field(None, description="What must not be done while it is there.")
    page: int | str | None = Field(None, description="Where the prior is from; else a stand-in.")

    @property
    def chance(self) -> float:
        """Its prior as a number."""
        return PRIORS[self.prior] if isinstance(self.prior, str) else self.prior

    @property
    def stand_in(self) -> bool:
        """Whether nobody has said where its prior is from."""
        return self.page is None


class Sign(Entry):
    """Something seen, heard or smelled, and how strongly each cause brings it on."""

    name: str
    mark: str | None = None
    said: str | None = Field(None, description="How a person says it.")
    also_said: Names = Field((), description="Other everyday words that it is found by.")
    where: str | None = Field(None, description="The part at which it shows.")
    when: Literal["cranking", "running", "turning"] | None = Field(
        None,
        description="Shows only on an engine that will not fire, only on one that runs, or on both "
        "as long as it turns.",
    )
    leak: float = Field(0.02, ge=0, lt=1, description="Chance of a reason that is not listed.")
    causes: dict[str, Literal["strong", "medium", "weak"] | float] = Field(default_factory=dict)
    figure: str | None = Field(
        None, description="A figure whose reading says, by its limits, how much of a sign it is."
    )
    minutes: Minutes = Field(0.0, description="What it takes to look; nothing, as a rule.")
    open: Names = Field((), description="Joints that must be open to look.")
    closed: Names = Field((), description="Joints that must be closed for it to show.")
    needs: Names = Field((), description="What must be at hand to look: a gauge, a meter.")
    dangers: Names = Field((), description="Danger words that call up cautions.")
    forbids: Forbids | None = Field(None, description="What must not be done while it is seen.")
    page: int | str | None = Field(None, description="Where its weights are from; else stand-ins.")

    @property
    def weights(self) -> dict[str, float]:
        """How often each cause, were it there alone, would bring the sign on."""
        return {
            key: STRENGTHS[strength] if isinstance(strength, str) else strength
            for key, strength in self.causes.items()
        }

    @property
    def stand_in(self) -> bool:
        """Whether nobody has said where its weights are from."""
        return self.page is None
