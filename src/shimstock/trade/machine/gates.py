"""Cautions, and the gates that a whole machine passes before a risk is taken."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from shimstock.trade.machine.entry import Entry
from shimstock.trade.machine.texts import Minutes, Names


class Caution(Entry):
    """A hazard, what to do, what never to do, and whom to defer to."""

    name: str
    mark: str | None = None
    dangers: Names = Field((), description="Danger words of joints that call it up.")
    jobs: str | None = Field(None, description="Work that calls it up.")
    stays: bool = Field(False, description="In the machine itself, whoever has it.")
    do: str
    never: str
    defer: str | None = None
    source: str | None = None


class Point(Entry):
    """A question that a person answers and signs before a gate is passed."""

    ask: str
    answers: Names = Field(("yes",), description="Answers that settle it.")
    hard: bool = Field(False, description="No reason written down can replace the answer.")
    minutes: Minutes = 5.0
    only_if: dict[str, str] = Field(
        default_factory=dict, description="Asked only when other points answer so."
    )
    before_closing: Names = Field((), description="Danger words whose joints wait for it.")


class Gate(Entry):
    """A condition of the whole machine before a risk is taken."""

    name: str
    joints: Literal["none", "paint joints dry", "all closed"] = "none"
    parts: bool = Field(False, description="No part missing or rejected.")
    sets: bool = Field(False, description="Every set whole, of one make or proved.")
    readings: bool = Field(False, description="No reading beyond its limit left undecided.")
    running: bool = Field(False, description="The engine has run: figures read running count.")
    figures: Names = Field((), description="Figures that must be read, as finished, and in limit.")
    passed_before: Names = Field((), description="Gates that come first.")
    points: dict[str, Point] = Field(default_factory=dict)
    cautions: Names = ()
