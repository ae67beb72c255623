"""What a maker prints about the whole machine: bore, stroke, rated speed, tyre, weight, oil."""

from __future__ import annotations

import re
from functools import cached_property
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

from shimstock.trade.machine.entry import Entry
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import Quantity, parse
from shimstock.trade.numbers.typed_number import split_number, tidy
from shimstock.trade.numbers.unit_names import find

PLAIN, WORDS = "count", "words"
KNOWN = {
    "bore": ("length", "4 1/4 in"),
    "stroke": ("length", "5 1/4 in"),
    "cylinders": (PLAIN, "2"),
    "compression-ratio": (PLAIN, "16:1"),
    "displacement": ("volume", "450 cu.in"),
    "rod-length": ("length", "9 1/2 in"),
    "firing-order": (WORDS, "1-3-4-2"),
    "rated-speed": ("speed of turning", "1400 rpm"),
    "low-idle": ("speed of turning", "600 rpm"),
    "high-idle": ("speed of turning", "1550 rpm"),
    "tyre": (WORDS, "12.4-38"),
    "wheelbase": ("length", "88 in"),
    "weight": ("weight", "4200 lb"),
    "volts": ("voltage", "12 V"),
    "pulley-diameter": ("length", "12 3/4 in"),
    "oil-capacity": ("volume", "10 qt"),
    "coolant-capacity": ("volume", "6 gal"),
}
"""By key: what it measures and an example. Other keys are free; the trade's sums look for these."""

_RATIO = re.compile(r"([\d.,]+)\s*(?::|to)\s*1(?:\.0*)?")
_ONE_WORD = re.compile(r"[^\W\d_]+\.?")


def _value(value: Any) -> Any:
    """The text of a value; one that ends in a word must end in a unit."""
    if isinstance(value, bool) or not isinstance(value, int | float | str):
        return value
    text = str(value).strip()
    head, rest = split_number(tidy(text))
    if not text:
        raise ValueError("is empty; a number with its unit, or a word, would do")
    if head and _ONE_WORD.fullmatch(rest) and find(rest) is None:
        raise ValueError(f"ends in {rest!r}, which is no unit known here; 4 1/4 in would do")
    return text


_TEXT = {
    "type": ["string", "number"],
    "description": "A number with its unit, a plain number, or words.",
    "examples": ["4 1/4 in", 2, "16:1", "1-3-4-2"],
}


class Datum(Entry):
    """One thing that the maker prints about the whole machine."""

    value: Annotated[str, BeforeValidator(_value), WithJsonSchema(_TEXT)]
    page: int | str | None = Field(None, description="Page of the maker's book.")
    note: str | None = None

    @model_validator(mode="before")
    @classmethod
    def _has_fields(cls, data: Any) -> Any:
        if isinstance(data, str | int | float):
            raise ValueError(f"needs its fields; {{value: {data}, page: 12}} would do")
        return data

    @property
    def stand_in(self) -> bool:
        """True until someone has typed the page of the maker's book."""
        return self.page is None

    @property
    def text(self) -> str:
        """The value as a sum reads it: 16 for a ratio of 16:1.

        >>> Datum(value="16:1").text, Datum(value="4 1/4 in").text
        ('16', '4 1/4 in')
        """
        ratio = _RATIO.fullmatch(tidy(self.value))
        return ratio[1] if ratio else self.value

    @cached_property
    def quantity(self) -> Quantity | None:
        """The value as a number in its own unit, or a plain count; None where it is words."""
        unit = find(split_number(tidy(self.text))[1])
        try:
            return parse(self.text, unit=unit.name if unit else PLAIN)
        except NotUnderstood:
            return None
