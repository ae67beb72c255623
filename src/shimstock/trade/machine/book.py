"""What a maker printed about one kind of machine, as plain frozen values."""

from __future__ import annotations

from functools import cached_property
from typing import Annotated, Any, Literal

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, model_validator

from shimstock.trade.machine.texts import (
    Length,
    Limits,
    LimitText,
    Minutes,
    Names,
    RangeText,
    Torque,
)
from shimstock.trade.machine.words import Seals
from shimstock.trade.numbers.limits import Limit, Range


def _hyphens(field: str) -> str:
    return field.rstrip("_").replace("_", "-")


class Entry(BaseModel):
    """What every entry of a book shares: frozen, hyphenated field names, no unknown fields."""

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        alias_generator=_hyphens,
        populate_by_name=True,
        arbitrary_types_allowed=True,
        coerce_numbers_to_str=True,
    )


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
    heavy: bool = Field(False, description="Two people or a hoist.")

    @property
    def instances(self) -> tuple[str, ...]:
        """Names of the single pieces; one empty name where there is only one."""
        if self.each:
            return self.each
        if self.count == 1:
            return ("",)
        return tuple(str(n) for n in range(1, self.count + 1))


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
    note: str | None = None


class AnyOf(Entry):
    """Alternatives: one of the lists must be open."""

    any_of: tuple[Names, ...] = Field(min_length=1)


def _after(value: Any) -> Any:
    return [value] if isinstance(value, str | dict | AnyOf) else value


class Settles(Entry):
    """A measure that closing a joint sets."""

    figure: str
    by: Literal["gasket", "shims", "adjuster"] = "gasket"


class Joint(Entry):
    """Where parts meet and can be opened."""

    name: str
    mark: str | None = None
    between: Names = Field(min_length=2, description="The parts that meet, the moved one first.")
    seals: Annotated[tuple[Seals, ...], BeforeValidator(lambda v: [v] if isinstance(v, str) else v)]
    on_paint: bool = Field(False, description="A weep here runs over painted surfaces.")
    after: Annotated[tuple[str | AnyOf, ...], BeforeValidator(_after)] = ()
    open: Minutes
    close: Minutes
    reaches: Names = Field((), description="Parts that can be seen or touched once it is open.")
    shows: str | None = Field(None, description="What else comes to light: marks, faces, passages.")
    uses: tuple[Use, ...] = ()
    fasteners: Annotated[
        tuple[Fasteners, ...], BeforeValidator(lambda v: [v] if isinstance(v, dict) else v)
    ] = ()
    dangers: Names = Field((), description="Danger words that call up cautions.")
    hands: int = Field(1, ge=1, description="People needed.")
    cover_same_night: bool = Field(False, description="Left open it is damaged: cover it.")
    seal_inside_first: bool = Field(False, description="Cannot be reached again without halves.")
    settles: tuple[Settles, ...] = ()
    note: str | None = None

    @cached_property
    def needs(self) -> tuple[tuple[tuple[str, ...], ...], ...]:
        """Every entry must hold; it holds when all joints of one of its alternatives are open."""
        return tuple(((item,),) if isinstance(item, str) else item.any_of for item in self.after)

    @property
    def bolts(self) -> int:
        """How many fastenings must be in the bag."""
        return sum(fastening.count for fastening in self.fasteners)


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
    at: Annotated[At | None, BeforeValidator(_at)] = None
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
    if_outside: str | None = Field(None, description="What the book says to do.")
    page: int | str | None = Field(None, description="Page of the maker's book.")

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

    @property
    def wears_up(self) -> bool:
        """True where wear makes the reading larger."""
        return not self.limit or self.limit[0].sense == "max"


class Set(Entry):
    """Parts that belong together and stay or go together."""

    name: str | None = None
    same: Names = Field((), description="What must be the same: maker, size, history.")
    proof: str | None = Field(None, description="What proves a mixed pair: a bench sheet.")


class Hold(Entry):
    """What is held so that everything before a link keeps still."""

    what: str
    open: str | None = Field(None, description="The joint to open to get a hand on it.")
    figure: str | None = Field(None, description="The figure read at the end with this held.")


class Link(Entry):
    """One place of play in a train: a gear mesh, or a plain clearance with its ratio."""

    name: str
    figure: str
    driver: str | None = None
    driver_teeth: int | None = Field(None, ge=1)
    driven: str | None = None
    driven_teeth: int | None = Field(None, ge=1)
    pitch: float | None = Field(None, gt=0, description="Teeth per inch of diameter.")
    ratio: float | None = Field(None, gt=0, description="Movement at the end for each unit here.")
    hold: Hold
    spread_by: str | None = Field(None, description="Joint whose gasket sets the centre distance.")
    pressure_angles: tuple[float, ...] = Field((), description="Degrees; all that are possible.")
    look_first: tuple[str, ...] = Field((), description="What to look at before the gear.")

    @model_validator(mode="after")
    def _mesh_or_ratio(self) -> Link:
        mesh = (self.driver_teeth, self.driven_teeth, self.pitch)
        if all(mesh) == (self.ratio is not None) or any(mesh) != all(mesh):
            raise ValueError("give driver-teeth, driven-teeth and pitch, or else ratio")
        return self


class Train(Entry):
    """A chain of meshes or clearances whose play adds up at one end."""

    name: str
    figure: str = Field(description="The figure read at the end with everything in.")
    radius: Length | None = Field(None, description="Where it is read, from the last shaft.")
    links: tuple[Link, ...] = Field(min_length=1, description="From the driven-off end outwards.")


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
    causes: dict[str, Literal["strong", "medium", "weak"] | float] = {}


class Caution(Entry):
    """A hazard, what to do, what never to do, and whom to defer to."""

    name: str
    mark: str | None = None
    dangers: Names = Field((), description="Danger words of joints that call it up.")
    jobs: str | None = Field(None, description="Work that calls it up.")
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
    only_if: dict[str, str] = Field({}, description="Asked only when other points answer so.")
    before_closing: Names = Field((), description="Danger words whose joints wait for it.")


class Gate(Entry):
    """A condition of the whole machine before a risk is taken."""

    name: str
    joints: Literal["none", "paint joints dry", "all closed"] = "none"
    parts: bool = Field(False, description="No part missing or rejected.")
    sets: bool = Field(False, description="Every set whole, of one make or proved.")
    readings: bool = Field(False, description="No reading beyond its limit left undecided.")
    figures: Names = Field((), description="Figures that must be read, as finished, and in limit.")
    passed_before: Names = Field((), description="Gates that come first.")
    points: dict[str, Point] = {}
    cautions: Names = ()


class Book(Entry):
    """A kind of machine: its parts, joints, figures and what the trade knows of it."""

    book: str
    title: str
    extends: str | None = None
    prints: Literal["inch", "metric"] = "inch"
    note: str | None = None
    parts: dict[str, Part] = {}
    joints: dict[str, Joint] = {}
    sets: dict[str, Set] = {}
    figures: dict[str, Figure] = {}
    settings: dict[str, Figure] = {}
    trains: dict[str, Train] = {}
    causes: dict[str, Cause] = {}
    signs: dict[str, Sign] = {}
    cautions: dict[str, Caution] = {}
    gates: dict[str, Gate] = {}

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
