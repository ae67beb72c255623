"""Figures that wear and settings that are adjusted: new, limit, where and how they are read."""

from __future__ import annotations

from functools import cached_property
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, model_validator

from shimstock.trade.machine.entry import Entry
from shimstock.trade.machine.texts import Length, Limits, LimitText, Names, RangeText
from shimstock.trade.numbers.limits import Limit, Range


class At(Entry):
    """Where a figure is read on one piece."""

    depths: Names = ()
    across: Names = ()
    places: Names = ()

    @model_validator(mode="after")
    def _grid_or_places(self) -> At:
        if bool(self.depths) != bool(self.across) or bool(self.places) == bool(self.depths):
            raise ValueError("give either depths and across (a grid), or places (a list)")
        return self

    @property
    def labels(self) -> tuple[str, ...]:
        """The places in the order they are typed: direction by direction down the bore."""
        if self.places:
            return self.places
        return tuple(f"{across} {depth}" for across in self.across for depth in self.depths)


def _at(value: Any) -> Any:
    if isinstance(value, int):
        return {"places": [str(n) for n in range(1, value + 1)]}
    if isinstance(value, list | tuple):
        return {"places": list(value)}
    return value


class Derive(Entry):
    """How a figure follows from other figures instead of being read itself."""

    taper_of: str | None = None
    out_of_round_of: str | None = None
    hole: str | None = None
    shaft: str | None = None

    @model_validator(mode="after")
    def _one_way(self) -> Derive:
        ways = [self.taper_of, self.out_of_round_of, self.hole and self.shaft]
        if sum(way is not None and way != "" for way in ways) != 1 or bool(self.hole) != bool(
            self.shaft
        ):
            raise ValueError("give one of taper-of, out-of-round-of, or hole and shaft together")
        return self

    @property
    def sources(self) -> tuple[str, ...]:
        """The figures it is worked out from."""
        named = (self.taper_of, self.out_of_round_of, self.hole, self.shaft)
        return tuple(name for name in named if name)


class Figure(Entry):
    """One measurable thing of a part, with new limits and wear limit; or a setting to adjust."""

    name: str
    mark: str | None = None
    of: str = Field(description="The part it belongs to.")
    kind: Literal["wear", "setting"] = "wear"
    unit: str | None = Field(None, description="Only where neither new nor limit gives one.")
    new: RangeText | None = None
    limit: Limits = ()
    with_: str | None = Field(None, description="The instrument.")
    at: Annotated[
        At | None, BeforeValidator(_at, json_schema_input_type=At | int | tuple[str, ...] | None)
    ] = None
    judge: Literal["worst", "mean"] = "worst"
    derive: Derive | None = None
    pair: LimitText | None = Field(
        None,
        description="How far the several may differ: max 0.002 in; max 3 % of the largest; "
        "min 75 % lowest of highest.",
    )
    sizes: tuple[Length, ...] = Field((), description="Oversizes (+) or undersizes (-) offered.")
    nominal: Length | None = Field(None, description="Size that oversizes are counted from.")
    clean_up: Length | None = Field(None, description="Least to take off the worst place.")
    plausible: RangeText | None = Field(None, description="Outside this a reading is a slip.")
    conditions: str | None = Field(None, description="Warm, no load, and so on.")
    running: bool = Field(False, description="Read only once the engine has run.")
    if_outside: str | None = Field(None, description="What the book says to do.")
    gives: str | None = Field(
        None, description="What of the machine's data a reading of it stands for: bore."
    )
    page: int | str | None = Field(None, description="Page of the maker's book.")
    words: Names = Field((), description="Other words that it is looked for by: tappet gap.")

    @model_validator(mode="before")
    @classmethod
    def _knows_its_unit(cls, data: Any) -> Any:
        if isinstance(data, dict) and not {"new", "limit", "unit"} & set(data):
            raise ValueError("needs new, limit or at least unit, so that a bare number has a unit")
        return data

    @model_validator(mode="after")
    def _limit_beyond_new(self) -> Figure:
        low, high = (self.as_new.low, self.as_new.high) if self.as_new else (None, None)
        for limit in self.limits_in_unit:
            too_low = limit.sense == "max" and high is not None and limit.value < high
            too_high = limit.sense == "min" and low is not None and limit.value > low
            if too_low or too_high:
                raise ValueError(
                    f"limit {limit.typed!r} lies inside the new range; are max and min swapped?"
                )
        return self

    @property
    def stand_in(self) -> bool:
        """True until someone has typed the page of the maker's book."""
        return self.page is None

    @cached_property
    def measured_in(self) -> str:
        """The unit that a bare number is taken in."""
        if self.unit:
            return self.unit
        if self.new:
            return self.new.unit
        return self.limit[0].unit

    @cached_property
    def limits_in_unit(self) -> tuple[Limit, ...]:
        """The limits of use, converted to the unit the figure is measured in."""
        return tuple(each.convert(self.measured_in) for each in self.limit)

    @cached_property
    def as_new(self) -> Range | None:
        """The new range, converted to the unit the figure is measured in."""
        return self.new.convert(self.measured_in) if self.new else None

    @cached_property
    def allowed(self) -> Range | None:
        """The limit of use as a range; the new range itself where the book gives no other."""
        if not self.limit:
            return self.as_new
        limits = self.limits_in_unit
        low = next((each.value for each in limits if each.sense == "min"), None)
        high = next((each.value for each in limits if each.sense == "max"), None)
        typed = ", ".join(each.typed for each in self.limit)
        return Range(low, high, self.measured_in, typed)

    @cached_property
    def wears_up(self) -> bool:
        """True where wear makes the reading larger.

        Of two limits, it wears away from the one that is an end of the new range; where neither or
        both are, the first of them is the one it wears towards.
        """
        if len(self.limit) == 2 and self.as_new is not None and self.allowed is not None:
            from_low = self.allowed.low == self.as_new.low
            from_high = self.allowed.high == self.as_new.high
            if from_low != from_high:
                return from_low
        return not self.limit or self.limit[0].sense == "max"
