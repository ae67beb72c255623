"""How a sum says what it takes: units, ranges and choices stand beside each parameter.

    @a_sum(example="--bore '4 1/4 in' --stroke '5 1/4 in' --cylinders 2", cautions=())
    def displacement(
        *,
        bore: Annotated[float, Of("length", above=0, found="bore")],
        ...
        unit: str = "in",
    ) -> Worked[float]:

The page, the terminal and the documentation are all made from this and from the docstring.
"""

import inspect
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property, wraps
from math import isfinite
from typing import Any, Literal, ParamSpec, TypeVar, get_args, get_origin, get_type_hints

from shimstock.trade.numbers.coherent import WORDS, coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.unit_names import find
from shimstock.trade.numbers.working import Worked

P = ParamSpec("P")
T = TypeVar("T")


@dataclass(frozen=True)
class Of:
    """A number: its unit, what it must be, where the source holds, and what a book calls it.

    unit: as `mm`; "" for a number without one; or one of length, area, volume, force, pressure,
    torque, rate, which follow the sum's own `unit` (mm or in).
    above, least, below, most: what it must be; anything else is refused.
    known: from and to where the source gives the formula; outside, the answer says so.
    found: what a machine's book or reading may hold it as, such as `bore`.
    """

    unit: str
    above: float | None = None
    least: float | None = None
    below: float | None = None
    most: float | None = None
    known: tuple[float, float] | None = None
    found: str = ""

    def in_unit(self, unit: str | None) -> str:
        """The unit itself, where the sum works in `unit` (mm or in)."""
        if unit is None or self.unit not in WORDS:
            return self.unit
        return unit if self.unit == "length" else str(getattr(coherent(unit), self.unit))

    @property
    def rule(self) -> str:
        """What the number must be, in words; "" where it may be anything."""
        said = [
            f"{word} {limit:g}"
            for word, limit in (
                ("above", self.above), ("at least", self.least),
                ("below", self.below), ("at most", self.most),
            )
            if limit is not None
        ]  # fmt: skip
        return " and ".join(said)

    def holds(self, value: float) -> bool:
        """Whether the number is what it must be."""
        return (
            (self.above is None or value > self.above)
            and (self.least is None or value >= self.least)
            and (self.below is None or value < self.below)
            and (self.most is None or value <= self.most)
        )


@dataclass(frozen=True)
class Read:
    """A text with a meaning of its own, such as a thread: how it is read, and an example.

    parse: makes the value from the text; raises NotUnderstood. example: text that can be read.
    found: what a machine's book may hold it as, such as `thread`. beside: only shown beside the
    result, so that nothing is missed without it.
    """

    parse: Callable[[str], Any]
    example: str
    found: str = ""
    beside: bool = False


@dataclass(frozen=True)
class Input:
    """One parameter of a sum: its name, what it takes, what it means and its default."""

    name: str
    takes: Of | Read | tuple[str, ...] | None
    many: bool
    whole: bool
    meaning: str
    default: Any

    @property
    def needed(self) -> bool:
        """Whether the sum cannot do without it."""
        return self.default is inspect.Parameter.empty

    @property
    def words(self) -> str:
        """Its name as it is spoken of."""
        return self.name.strip("_").replace("_", " ")

    @property
    def said(self) -> str:
        """What it means, without the unit that its docstring names."""
        own = r",? in (the \w+ of )?`unit`|, (a count|no unit)(?=[;.]|$)"
        return re.sub(own, "", self.meaning).rstrip(".")

    @property
    def option(self) -> str:
        """As it is typed after `shimstock sum`."""
        return f"--{self.name.strip('_').replace('_', '-')}"

    @property
    def beside(self) -> bool:
        """Whether it is only shown beside the result."""
        return isinstance(self.takes, Read) and self.takes.beside

    @property
    def found(self) -> str:
        """What a machine's book may hold it as; "" where it is always typed."""
        return self.takes.found if isinstance(self.takes, Of | Read) else ""


@dataclass(frozen=True)
class Sum:
    """A sum as it is declared: its guarded function, its example as typed, and its cautions."""

    function: Callable[..., Worked[Any]]
    example: str
    cautions: tuple[str, ...]

    @cached_property
    def name(self) -> str:
        """As it is typed: torque, exact-backlash."""
        return self.function.__name__.replace("_", "-")

    @cached_property
    def family(self) -> str:
        """The family it belongs to: fasteners, gears."""
        return self.function.__module__.split(".")[-2].replace("_", "-")

    @cached_property
    def text(self) -> str:
        """Its docstring without the indentation."""
        return inspect.getdoc(self.function) or ""

    @cached_property
    def sentence(self) -> str:
        """What it works out, in a sentence."""
        return self.text.split("\n\n")[0].replace("\n", " ")

    @cached_property
    def remarks(self) -> str:
        """What its docstring says below the sentence, before the parameters; "" mostly."""
        paragraphs = self.text.split("\n\n")[1:]
        names = "|".join(each.name for each in self.inputs)
        kept: list[str] = []
        for paragraph in paragraphs:
            lines = re.split(rf"\n(?=(?:(?:{names}|Source): |Raises ))", f"\n{paragraph}")
            if lines[0].strip():
                kept.append(lines[0].strip().replace("\n", " "))
            if len(lines) > 1 or ">>>" in paragraph:
                break
        return " ".join(each for each in kept if ">>>" not in each)

    @cached_property
    def source(self) -> str:
        """Where the formula stands in print."""
        return _paragraph("Source", self.text, [each.name for each in self.inputs])

    @cached_property
    def inputs(self) -> tuple[Input, ...]:
        """Its parameters in order, `unit` among them."""
        hints = get_type_hints(self.function, include_extras=True)
        parameters = inspect.signature(self.function).parameters.values()
        names = [each.name for each in parameters]
        return tuple(_input(each, hints[each.name], self.text, names) for each in parameters)

    def input(self, name: str) -> Input:
        """The parameter called so. KeyError where there is none."""
        return next(each for each in self.inputs if each.name == name)

    @cached_property
    def unit(self) -> str | None:
        """The unit of length it works in unless told otherwise; None where it takes none."""
        return next((str(i.default) for i in self.inputs if i.name == "unit"), None)


def a_sum(
    *, example: str, cautions: Sequence[str] = ()
) -> Callable[[Callable[P, Worked[T]]], Callable[P, Worked[T]]]:
    """Make a function into one of the trade's sums.

    Its values are held against what the parameters say before it runs; a result that is no number
    is refused; the working gets the docstring's source and the cautions.
    example: what follows `shimstock sum NAME`, as a person would type it.
    cautions: what belongs to the work; see cautions.py.
    """

    def make(function: Callable[P, Worked[T]]) -> Callable[P, Worked[T]]:
        @wraps(function)
        def run(*args: P.args, **given: P.kwargs) -> Worked[T]:
            beyond = _held_against(own, given)
            try:
                worked = function(*args, **given)
            except (NotPossible, NotUnderstood):
                raise
            except (ArithmeticError, ValueError) as error:  # a root of less than nothing
                rule, would = "has no result for these values", "look at each of them again"
                raise NotPossible(own.name, rule, would) from error
            _finish(own, worked.working, beyond)
            return worked

        own = Sum(run, example, tuple(cautions))
        run.declared = own  # type: ignore[attr-defined]
        return run

    return make


def declared(function: Callable[..., Any]) -> Sum | None:
    """What a function declares; None where it is no sum."""
    return getattr(function, "declared", None)


def _held_against(own: Sum, given: dict[str, Any]) -> list[str]:
    """What lies outside the range of the source. Raises NotPossible for what cannot be."""
    unit = given.get("unit", own.unit)
    if own.unit is not None and _kind(unit) != "length":
        raise NotPossible(f"unit {unit}", "is no unit of length", "mm and in are")
    beyond: list[str] = []
    for one in own.inputs:
        if isinstance(one.takes, Of) and given.get(one.name) is not None:
            values = given[one.name] if one.many else [given[one.name]]
            for value in values:
                beyond += _one_held(one, one.takes, value, one.takes.in_unit(unit))
        elif isinstance(one.takes, tuple) and one.name in given:
            _one_of(one, one.takes, given[one.name])
    return beyond


def _kind(unit: Any) -> str:
    """What a unit measures; "" where it is none."""
    known = find(str(unit))
    return known.kind if known else ""


def _one_held(one: Input, takes: Of, value: float, unit: str) -> list[str]:
    said = f"{one.words} {_plain(value)}{f' {unit}' if unit else ''}"
    if not isfinite(value):
        raise NotPossible(said, "is no number", "type one in figures")
    if one.whole and value != int(value):
        raise NotPossible(said, "must be a whole number", f"it means: {one.said}")
    if not takes.holds(value):
        raise NotPossible(said, f"must be {takes.rule}", f"it means: {one.said}")
    if takes.known and not takes.known[0] <= value <= takes.known[1]:
        low, high = takes.known
        where = f"{low:g} to {high:g}, where the source holds"
        return [f"{said} lies outside {where}: this extrapolates."]
    return []


def _one_of(one: Input, words: tuple[str, ...], value: Any) -> None:
    if value is not None and value not in words:
        rule = f"must be one of {', '.join(words)}"
        raise NotPossible(f"{one.words} {value!r}", rule, "choose one")


def _plain(value: float) -> str:
    return f"{value:.10g}".replace("-", "−")


def _finish(own: Sum, working: Any, beyond: list[str]) -> None:
    """Give the working its source and cautions, and refuse results that are no numbers."""
    for name, answer in working.answers.items():
        if not isinstance(answer.value, str) and not isfinite(answer.value):
            raise NotPossible(name, "comes out beyond all numbers", "look at the values again")
    if not working.source:
        working.source = own.source
    for text in (*beyond, *own.cautions):
        working.caution(text)


def _input(parameter: inspect.Parameter, hint: Any, text: str, names: Sequence[str]) -> Input:
    bare, declared = _bare(hint)
    takes: Of | Read | tuple[str, ...] | None = declared
    if get_origin(bare) is Literal:
        takes = get_args(bare)
    many = get_origin(bare) in (list, tuple, Sequence) and isinstance(takes, Of)
    whole = int in (bare, *get_args(bare)) and isinstance(takes, Of)
    meaning = _paragraph(parameter.name, text, names)
    return Input(parameter.name, takes, many, whole, meaning, parameter.default)


def _bare(hint: Any) -> tuple[Any, Of | Read | None]:
    """A type without its declaration and without None, and the declaration."""
    takes = None
    for _ in range(2):
        for each in getattr(hint, "__metadata__", ()):
            if isinstance(each, Of | Read):
                takes = each
        if hasattr(hint, "__metadata__"):
            hint = hint.__origin__
        kinds = [each for each in get_args(hint) if each is not type(None)]
        if type(None) in get_args(hint) and len(kinds) == 1:
            hint = kinds[0]
    return getattr(hint, "__supertype__", hint), takes


def _paragraph(name: str, text: str, names: Sequence[str] = ()) -> str:
    """The line of a docstring that begins with a name, and the lines it runs on to."""
    other = "|".join(map(re.escape, (*names, "Source")))
    found = re.search(
        rf"^{re.escape(name)}: (.*?)(?=\n\n|\n(?:{other}): |\nRaises |\Z)",
        text,
        re.MULTILINE | re.DOTALL,
    )
    return " ".join(found[1].split()) if found else ""
