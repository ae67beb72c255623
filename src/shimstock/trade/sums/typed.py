"""From what a person types for a sum to its result: one way for the terminal and the page."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from shimstock.trade.numbers.conversion import convert, kind
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import parse
from shimstock.trade.numbers.typed_number import split_number, tidy
from shimstock.trade.numbers.unit_names import INCH_POUND, OTHER_SYSTEM, find
from shimstock.trade.numbers.working import Worked
from shimstock.trade.sums.declare import Input, Of, Read, Sum

NOW = "typed now"
LEFT_OUT = "taken where nothing is typed"
LAST_WORD = re.compile(r"[^\d\s.,/-]+$")
# What comes out in N.mm and mm3, as a spanner and a measuring glass show it.
SHOP_UNIT = {"N.mm": "N.m", "mm3": "cc"}
# What the trade also calls some of the choices.
ALSO_CALLED = {
    "dry": "plain dry", "clean": "plain dry", "oil": "lubricated", "oiled": "lubricated",
    "engine oil": "lubricated", "grease": "lubricated", "greased": "lubricated",
    "copper grease": "anti-seize", "copper paste": "anti-seize", "galvanised": "zinc",
    "grey iron": "cast iron", "gasoline": "petrol",
}  # fmt: skip
YES, NO = ("yes", "y", "true", "1"), ("no", "n", "false", "0")


@dataclass(frozen=True)
class Origin:
    """A text for a parameter, and where it comes from: a book page, a reading and its date."""

    text: str
    origin: str


@dataclass(frozen=True)
class Given:
    """One value as it went in."""

    name: str
    typed: str
    value: Any
    unit: str
    origin: str


@dataclass(frozen=True)
class Result:
    """One result: a number with its unit, or words with none."""

    value: float | str
    unit: str


@dataclass(frozen=True)
class Done:
    """A sum worked out: what went in, how it went, what came out."""

    sum: Sum
    given: tuple[Given, ...]
    worked: Worked[Any]
    results: dict[str, Result] = field(default_factory=dict)


def work_out(
    sum_: Sum,
    typed: Mapping[str, str],
    *,
    found: Mapping[str, Origin] | None = None,
    wanted: Sequence[str] = (),
) -> Done:
    """Understand what was typed, do the sum, and give the results in the units asked for.

    typed: the text for each parameter by its name; what is left out takes its default.
    found: what the machine's book and readings hold; what is typed goes before it.
    wanted: units that results are wanted in.
    Raises NotUnderstood for a text, NotPossible for a value.

    >>> from shimstock.trade.sums.find import find_sum
    >>> done = work_out(find_sum("ring-gap"), {"bore": "3 1/2 in"})
    >>> {name: round(result.value, 5) for name, result in done.results.items()}
    {'least': 0.01225, 'most': 0.014}
    """
    texts = _texts(sum_, typed, found or {})
    _refuse_bare(sum_, texts)
    unit = _unit(sum_, texts)
    given = tuple(_given(one, texts[one.name], unit) for one in sum_.inputs if one.name in texts)
    arguments = {each.name: each.value for each in given}
    given += tuple(_taken(one, unit) for one in sum_.inputs if _is_taken(one, texts))
    if unit is not None:
        arguments["unit"] = unit
    worked: Worked[Any] = sum_.function(**arguments)
    return Done(sum_, given, worked, results(worked, wanted))


def results(worked: Worked[Any], wanted: Sequence[str] = ()) -> dict[str, Result]:
    """The results of a sum by name, in the units asked for where they measure the same.

    Raises NotUnderstood for a unit that is none, or that no result can be shown in.
    """
    units = [_wanted(text) for text in wanted]
    _refuse_twice(units)
    out, used = {}, set()
    for name, answer in worked.working.answers.items():
        out[name] = Result(answer.value, answer.unit)
        if isinstance(answer.value, str) or find(answer.unit) is None:
            continue
        fitting = [u for u in units if kind(u) == kind(answer.unit)]
        used.update(fitting)
        to = fitting[0] if fitting else SHOP_UNIT.get(answer.unit, answer.unit)
        out[name] = Result(convert(answer.value, answer.unit, to), to)
    for unit in units:
        if unit not in used:
            shown = dict.fromkeys(r.unit for r in out.values() if r.unit)
            would = tuple(shown) or ("no unit at all",)
            raise NotUnderstood(unit, "is no unit for any of these results", would)
    return out


def _texts(sum_: Sum, typed: Mapping[str, str], found: Mapping[str, Origin]) -> dict[str, Origin]:
    """The text for each parameter; NotUnderstood names the first that is missing or unknown."""
    names = [one.name for one in sum_.inputs]
    for name in typed:
        if name not in names:
            raise NotUnderstood(name, f"is nothing that {sum_.name} takes", tuple(names))
    texts = {name: origin for name, origin in found.items() if name in names}
    texts |= {name: Origin(text, NOW) for name, text in typed.items()}
    missing = [one for one in sum_.inputs if one.needed and one.name not in texts]
    if missing:
        wanted = ", ".join(f"{one.option} ({one.said})" for one in missing)
        raise NotUnderstood(
            sum_.name, f"still needs {wanted}", (f"shimstock sum {sum_.name} {sum_.example}",)
        )
    return texts


def _unit(sum_: Sum, texts: Mapping[str, Origin]) -> str | None:
    """The unit of length that the sum works in: as said, else as the values are typed."""
    if sum_.unit is None:
        return None
    if "unit" in texts:
        return _wanted(texts["unit"].text)
    for one in sum_.inputs:
        if (
            one.name in texts
            and isinstance(one.takes, Of)
            and one.takes.in_unit("mm") != one.takes.in_unit("in")
        ):
            said = _said(texts[one.name].text)
            if said is not None:
                return "in" if said in INCH_POUND else "mm"
    return sum_.unit


def _said(text: str) -> str | None:
    """The unit that a text ends in, also of several as in 5' 6"; None where it says none."""
    rest = split_number(tidy(text))[1]
    last = LAST_WORD.search(rest)
    found = find(rest) or (find(last[0]) if last else None)
    return found.name if found else None


def _refuse_bare(sum_: Sum, texts: Mapping[str, Origin]) -> None:
    """Refuse numbers without a unit where a shed has two: NotUnderstood offers both."""
    bare: dict[str, tuple[str, str]] = {}
    followed = False
    for one in sum_.inputs:
        if one.name not in texts or not isinstance(one.takes, Of):
            continue
        metric, inch = one.takes.in_unit("mm"), one.takes.in_unit("in")
        if metric != inch and "unit" in texts:
            continue
        if metric == inch:
            inch = OTHER_SYSTEM.get(metric, "")
        text = texts[one.name].text
        if inch and any(map(_is_bare, _parted(text) if one.many else [text])):
            bare[one.words] = (
                text.strip(),
                f"{text.strip()} {metric} or {text.strip()} {inch}",
            )
            followed = followed or metric != one.takes.unit
    if bare:
        texts_said = ", ".join(text for text, _ in bare.values())
        named = "; ".join(f"for {what} {both}" for what, (_, both) in bare.items())
        would = ("--unit with mm or in for all",) if followed and sum_.unit else ()
        wrong = "says no unit" if len(bare) == 1 else "say no unit"
        raise NotUnderstood(texts_said, wrong, (named, *would))


def _is_bare(text: str) -> bool:
    """Whether a text is a number other than 0, and nothing else."""
    number, rest = split_number(tidy(text))
    return not rest and bool(re.search(r"[1-9]", number))


def _refuse_twice(units: Sequence[str]) -> None:
    """Refuse two units of one kind for the results; they come out in one."""
    kinds = [kind(unit) for unit in units]
    for unit, each in zip(units, kinds, strict=True):
        if kinds.count(each) > 1:
            raise NotUnderstood(unit, f"is one of two units for a {each}", (units[0],))


def _given(one: Input, text: Origin, unit: str | None) -> Given:
    said = one.takes.in_unit(unit) if isinstance(one.takes, Of) else ""
    return Given(one.name, text.text, value_of(one, text.text, unit), said, text.origin)


def _is_taken(one: Input, texts: Mapping[str, Origin]) -> bool:
    """Whether a parameter that was left out counts all the same, as one that is a number."""
    return one.name not in texts and isinstance(one.takes, Of | tuple) and bool(one.default)


def _taken(one: Input, unit: str | None) -> Given:
    said = one.takes.in_unit(unit) if isinstance(one.takes, Of) else ""
    number = isinstance(one.default, int | float)
    shown = f"{one.default:g} {said}".strip() if number else str(one.default)
    return Given(one.name, shown, one.default, said, LEFT_OUT)


def value_of(one: Input, text: str, unit: str | None = None) -> Any:
    """What a text means for one parameter of a sum that works in `unit`. Raises NotUnderstood."""
    if isinstance(one.takes, Read):
        return one.takes.parse(text)
    if isinstance(one.takes, tuple):
        return _word(one, text, one.takes)
    if isinstance(one.takes, Of):
        parts = _parted(text) if one.many else [text]
        values = [_number(one, part, one.takes.in_unit(unit)) for part in parts]
        return values if one.many else values[0]
    if isinstance(one.default, bool):
        return _yes_or_no(one, text)
    return text


def _number(one: Input, text: str, unit: str) -> float:
    if not unit and text.strip().endswith(":1"):
        text = text.strip().removesuffix(":1")  # a ratio, as 5.5:1
    if not unit and _said(text) is not None:
        raise NotUnderstood(text, f"has a unit; {one.words} is a plain number", (_number_of(text),))
    value = parse(text, unit=unit or "count", what=one.words).value
    if not one.whole:
        return value
    if value != int(value):
        raise NotUnderstood(text, f"is no whole number; {one.words} is one", (f"{round(value)}",))
    return int(value)


def _number_of(text: str) -> str:
    return split_number(tidy(text))[0] or "2"


def _parted(text: str) -> list[str]:
    """Several values, parted by semicolons or by commas; a unit after the last is that of all.

    >>> _parted("25, 24 mm, 24.5 lbf"), _parted("1,5; 2")
    (['25 lbf', '24 mm', '24.5 lbf'], ['1,5', '2'])
    """
    if ";" not in text and "." not in text and re.search(r"\d,\d", text):
        would = (text.replace(",", "; "), text.replace(",", "."))
        raise NotUnderstood(text, "may be several numbers, or one with a comma", would)
    parts = [part.strip() for part in text.split(";" if ";" in text else ",") if part.strip()]
    unit = _said(parts[-1]) if parts else None
    return [part if unit is None or _said(part) else f"{part} {unit}" for part in parts]


def _word(one: Input, text: str, words: tuple[str, ...]) -> str:
    """One of the words that may be said, also by its beginning."""
    plain = " ".join(text.lower().replace("-", " ").split())
    if plain not in words and ALSO_CALLED.get(plain) in words:
        return ALSO_CALLED[plain]
    for fits in (str.__eq__, str.startswith):
        found = [word for word in words if fits(word.lower().replace("-", " "), plain)]
        if len(found) == 1:
            return found[0]
    raise NotUnderstood(text, f"is no {one.words} that is known here", words)


def _yes_or_no(one: Input, text: str) -> bool:
    plain = text.strip().lower()
    if plain in YES or plain in NO:
        return plain in YES
    raise NotUnderstood(text, f"says neither yes nor no to {one.name}", ("yes", "no"))


def _wanted(text: str) -> str:
    found = find(text)
    if found is None:
        raise NotUnderstood(text, "is no unit known here", ("mm", "in", "N.m", "lbf.ft"))
    return found.name
