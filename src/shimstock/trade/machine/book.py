"""What a maker printed about one kind of machine, as plain frozen values."""

from __future__ import annotations

from functools import cached_property
from typing import Literal

from pydantic import Field

from shimstock.trade.machine.data import Datum
from shimstock.trade.machine.entry import Entry
from shimstock.trade.machine.faults import Cause, Check, Sign
from shimstock.trade.machine.figures import At, Derive, Figure
from shimstock.trade.machine.gates import Caution, Gate, Point
from shimstock.trade.machine.joints import AnyOf, Fasteners, Joint, Settles, Use
from shimstock.trade.machine.parts import Part, Set
from shimstock.trade.machine.trains import Hold, Link, Train

__all__ = [
    "AnyOf",
    "At",
    "Book",
    "Cause",
    "Caution",
    "Check",
    "Datum",
    "Derive",
    "Entry",
    "Fasteners",
    "Figure",
    "Gate",
    "Hold",
    "Joint",
    "Link",
    "Part",
    "Point",
    "Set",
    "Settles",
    "Sign",
    "Train",
    "Use",
]


class Book(Entry):
    """A kind of machine: its parts, joints, figures and what the trade knows of it."""

    book: str
    title: str
    extends: str | None = None
    prints: Literal["inch", "metric"] = "inch"
    note: str | None = None
    data: dict[str, Datum] = Field(default_factory=dict)
    parts: dict[str, Part] = Field(default_factory=dict)
    joints: dict[str, Joint] = Field(default_factory=dict)
    sets: dict[str, Set] = Field(default_factory=dict)
    figures: dict[str, Figure] = Field(default_factory=dict)
    settings: dict[str, Figure] = Field(default_factory=dict)
    trains: dict[str, Train] = Field(default_factory=dict)
    causes: dict[str, Cause] = Field(default_factory=dict)
    signs: dict[str, Sign] = Field(default_factory=dict)
    cautions: dict[str, Caution] = Field(default_factory=dict)
    gates: dict[str, Gate] = Field(default_factory=dict)

    @cached_property
    def measures(self) -> dict[str, Figure]:
        """Figures and settings together, as anything that can be read."""
        return {**self.figures, **self.settings}

    @cached_property
    def on_paint(self) -> tuple[str, ...]:
        """Joints whose leak would run onto paint."""
        return tuple(key for key, joint in self.joints.items() if joint.on_paint)

    def cautions_for(self, joint: Joint) -> tuple[Caution, ...]:
        """Cautions that the danger words of a joint call up."""
        return tuple(c for c in self.cautions.values() if set(c.dangers) & set(joint.dangers))

    def members(self, set_name: str) -> tuple[str, ...]:
        """The parts that belong to a set."""
        return tuple(key for key, part in self.parts.items() if part.set == set_name)
