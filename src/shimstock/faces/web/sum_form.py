"""A sum as a form: a field for each input, made from what the sum declares of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from django.http import QueryDict
from django.utils.http import urlencode

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.declare import Input, Of, Read, Sum
from shimstock.trade.sums.said import about, example_typed, left_out
from shimstock.trade.sums.typed import LEFT_OUT, NOW, Done, Given

MACHINE, WHERE, UNITS = "machine", "where", "in"
"""Fields of the form beside those of the sum's inputs."""
FEW = 2
"""So many inputs that may be left out stand with the others; more are folded away."""


@dataclass(frozen=True)
class Asked:
    """What the address asks of a sum.

    typed: texts by input. machine: its short name. where: as typed. wanted: units, as typed.
    """

    typed: Mapping[str, str]
    machine: str = ""
    where: str = ""
    wanted: str = ""

    @property
    def anything(self) -> bool:
        """Whether there is anything to work out with."""
        return bool(self.typed or self.machine)

    @property
    def places(self) -> list[str]:
        """Each of the places on the machine that are named."""
        return _parted(self.where)

    @property
    def units(self) -> list[str]:
        """Each of the units that results are wanted in."""
        return [text for text in self.wanted.split(",") if text.strip()]


@dataclass(frozen=True)
class Field:
    """One input as a field of the form."""

    one: Input
    key: str
    text: str
    such_as: str
    wrong: str = ""
    found: Given | None = None
    hints: list[str] = field(default_factory=list)

    @property
    def kind(self) -> str:
        """How it is shown: tick, choice or box."""
        if isinstance(self.one.default, bool):
            return "tick"
        return "choice" if self.choices else "box"

    @property
    def ticked(self) -> bool:
        """Whether a tick is set."""
        return self.text.lower() in ("yes", "y", "true", "1")

    @property
    def choices(self) -> list[str]:
        """The words to choose from, and what was typed where it is none of them."""
        words = ["mm", "in"] if self.one.name == "unit" else self.one.takes
        if not isinstance(words, list | tuple):
            return []
        return [*words, *([self.text] if self.text and self.text not in words else [])]

    @property
    def else_taken(self) -> str:
        """What is taken where it is left empty."""
        return left_out(self.one)

    @property
    def in_figures(self) -> bool:
        """Whether nothing but a whole number fits, so that a phone may show its figures."""
        return isinstance(self.one.takes, Of) and self.one.whole and not self.one.many


def key_of(one: Input) -> str:
    """The name of an input's field in the address."""
    plain = one.name.strip("_")
    return f"{plain}-value" if plain in (MACHINE, WHERE, UNITS) else plain


def read(sum_: Sum, query: QueryDict) -> Asked:
    """What the address asks."""
    texts = {one.name: query.get(key_of(one), "") for one in sum_.inputs}
    return Asked(
        typed={name: text for name, text in texts.items() if text and text.strip()},
        machine=(query.get(MACHINE) or "").strip(),
        where="; ".join(filter(None, map(str.strip, query.getlist(WHERE)))),
        wanted=query.get(UNITS) or "",
    )


def fields(sum_: Sum, asked: Asked, done: Done | None, wrong: Mapping[str, str]) -> list[Field]:
    """A field for each input of the sum.

    done: what came of it, for what a machine's book or a reading gave. wrong: by input.
    """
    example, _ = example_typed(sum_)
    given = {each.name: each for each in (done.given if done else ())}
    return [
        Field(
            one=one,
            key=key_of(one),
            text=asked.typed.get(one.name, ""),
            such_as="" if isinstance(one.takes, Read) else example.get(one.name, ""),
            wrong=wrong.get(one.name, ""),
            found=_found(given.get(one.name)),
            hints=about(one),
        )
        for one in sum_.inputs
    ]


def example_address(sum_: Sum) -> str:
    """The part of the address that fills the form with the sum's own example."""
    typed, wanted = example_typed(sum_)
    texts = {key_of(one): typed[one.name] for one in sum_.inputs if one.name in typed}
    return urlencode(texts | ({UNITS: ",".join(wanted)} if wanted else {}))


def wrong_in(sum_: Sum, asked: Asked, error: Exception) -> dict[str, str]:
    """Which inputs an error is about, where that can be told, and what it says of each."""
    said = _reasons(error)
    missing = [one for one in sum_.inputs if one.name not in asked.typed]
    wrong = {one.name: "Needed." for one in missing if _speaks_of(said, one)}
    for one in sum_.inputs:
        if (text := asked.typed.get(one.name)) and _is_about(error, one, text):
            wrong[one.name] = in_words(sum_, _short(error))
    return wrong


def in_words(sum_: Sum, text: str) -> str:
    """A message with the names of fields in place of the terminal's options."""
    for one in sorted(sum_.inputs, key=lambda each: -len(each.option)):
        text = text.replace(one.option, f"“{one.words}”")
    return text


def _reasons(error: Exception) -> str:
    """What is wrong, without what would do: that may name any option."""
    if isinstance(error, NotUnderstood | NotPossible):
        return _short(error)
    return str(error)


def _speaks_of(said: str, one: Input) -> bool:
    return f"{one.option} " in f"{said} ".replace(",", " ").replace(";", " ").replace(".", " ")


def _is_about(error: Exception, one: Input, text: str) -> bool:
    if isinstance(error, NotUnderstood):
        named = any(f"for {one.words} " in each for each in error.would_do)
        return error.typed.strip() == text.strip() or named or error.typed.strip() in _parted(text)
    return isinstance(error, NotPossible) and error.what.startswith(f"{one.words} ")


def _short(error: Exception) -> str:
    if isinstance(error, NotUnderstood):
        return f"{error.typed.strip()} {error.wrong}."
    return f"{error}."


def _parted(text: str) -> list[str]:
    parts = text.split(";" if ";" in text else ",")
    return [part.strip() for part in parts if part.strip()]


def _found(given: Given | None) -> Given | None:
    return given if given and given.origin not in (NOW, LEFT_OUT) else None
