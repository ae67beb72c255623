"""Joints: where parts meet, what must be open before them, what opening them uses up."""

from __future__ import annotations

from functools import cached_property
from typing import Annotated, Literal

from pydantic import BeforeValidator, Field, model_validator

from shimstock.trade.machine.entry import Entry
from shimstock.trade.machine.texts import Length, Minutes, Names, Torque, listed
from shimstock.trade.machine.words import Seals


class Use(Entry):
    """Something that opening a joint uses up."""

    gasket: str | None = None
    seal: str | None = None
    washer: str | None = None
    shims: str | None = None
    fluid: str | None = None
    small: str | None = Field(None, description="Cotters, tab washers, nuts, clips used once.")
    thickness: Length | None = None
    count: int = Field(1, ge=1)
    amount: str | None = Field(None, description="How much of a fluid.")
    page: int | str | None = Field(None, description="Page of the maker's book.")
    one_use: bool = Field(True, description="New each time the joint is opened.")

    @model_validator(mode="after")
    def _one_kind(self) -> Use:
        if len(self._said()) != 1:
            raise ValueError(
                "must name exactly one of gasket, seal, washer, shims, fluid or small; "
                "for two things write two lines"
            )
        return self

    def _said(self) -> list[tuple[str, str]]:
        kinds = ("gasket", "seal", "washer", "shims", "fluid", "small")
        return [(kind, getattr(self, kind)) for kind in kinds if getattr(self, kind) is not None]

    @property
    def kind(self) -> str:
        """Which sort of thing is used up: gasket, seal, washer, shims, fluid or small."""
        return self._said()[0][0]

    @property
    def name(self) -> str:
        """What the thing is called."""
        return self._said()[0][1]


class Fasteners(Entry):
    """The bolts, studs, nuts or clips of a joint."""

    count: int = Field(1, ge=1)
    what: str = "bolt"
    thread: str | None = None
    grade: str | None = None
    torque: Torque | None = None
    page: int | str | None = Field(None, description="Page of the maker's book.")
    note: str | None = None


class AnyOf(Entry):
    """Alternatives: one of the lists must be open."""

    any_of: tuple[Names, ...] = Field(min_length=1)


class Settles(Entry):
    """A measure that closing a joint sets."""

    figure: str
    piece: str | None = Field(None, description="Which piece, where the part has several.")
    by: Literal["gasket", "shims", "adjuster"] = "gasket"


class Joint(Entry):
    """Where parts meet and can be opened."""

    name: str
    mark: str | None = None
    between: Names = Field(min_length=2, description="The parts that meet, the moved one first.")
    seals: Annotated[
        tuple[Seals, ...],
        BeforeValidator(listed, json_schema_input_type=Seals | tuple[Seals, ...]),
    ]
    on_paint: bool = Field(False, description="A weep here runs over painted surfaces.")
    after: Annotated[
        tuple[str | AnyOf, ...],
        BeforeValidator(listed, json_schema_input_type=str | AnyOf | tuple[str | AnyOf, ...]),
    ] = ()
    open: Minutes
    close: Minutes
    reaches: Names = Field((), description="Parts that can be seen or touched once it is open.")
    shows: str | None = Field(None, description="What else comes to light: marks, faces, passages.")
    uses: tuple[Use, ...] = ()
    fasteners: Annotated[
        tuple[Fasteners, ...],
        BeforeValidator(listed, json_schema_input_type=Fasteners | tuple[Fasteners, ...]),
    ] = ()
    dangers: Names = Field((), description="Danger words that call up cautions.")
    hands: int = Field(1, ge=1, description="People needed.")
    cover_same_night: bool = Field(False, description="Left open it is damaged: cover it.")
    seal_inside_first: bool = Field(False, description="Cannot be reached again without halves.")
    settles: tuple[Settles, ...] = ()
    to_run: bool = Field(False, description="While it is open the engine can neither turn nor run.")
    words: Names = Field((), description="Other words that it is looked for by: valve cover.")
    note: str | None = None

    @cached_property
    def needs(self) -> tuple[tuple[tuple[str, ...], ...], ...]:
        """Every entry must hold; it holds when all joints of one of its alternatives are open."""
        return tuple(((item,),) if isinstance(item, str) else item.any_of for item in self.after)

    @property
    def bolts(self) -> int:
        """How many fastenings must be in the bag."""
        return sum(fastening.count for fastening in self.fasteners)

    @property
    def has_torque(self) -> bool:
        """Whether the book says how tight any of its fastenings goes."""
        return any(fastening.torque for fastening in self.fasteners)
