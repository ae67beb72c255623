"""What can be wrong with a machine, how it shows, and how it is checked."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from shimstock.trade.machine.entry import Entry
from shimstock.trade.machine.texts import Minutes, Names


class Check(Entry):
    """How a cause is checked."""

    do: str
    minutes: Minutes
    open: Names = ()


class Cause(Entry):
    """Something that can be wrong."""

    name: str
    mark: str | None = None
    part: str | None = None
    prior: Literal["common", "occasional", "rare"] | float
    check: Check
    points_to: str | None = None
    points_away: str | None = None


class Sign(Entry):
    """Something seen, heard or smelled, and how strongly each cause brings it on."""

    name: str
    mark: str | None = None
    said: str | None = Field(None, description="How a person says it.")
    leak: float = Field(0.02, ge=0, le=1)
    causes: dict[str, Literal["strong", "medium", "weak"] | float] = Field(default_factory=dict)
