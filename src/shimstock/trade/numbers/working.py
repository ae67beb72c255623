"""How a number was reached: what was given, each step, the source and the cautions.

Lines are kept as plain tuples and put into words only when somebody looks, so that a hundred
thousand verdicts can carry their working.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Generic, NamedTuple, Self, TypeVar

from shimstock.trade.numbers import audit, digits, formula

T = TypeVar("T")
# kind, symbol, value, unit, text (as typed, formula or note), meaning
Line = tuple[str, str, float, str, str | None, str | None]
GIVEN, STEP, NOTE = "given", "step", "note"
TEXT_KEY = {GIVEN: "typed", STEP: "formula"}


class Told(str):
    """A result in words."""

    __slots__ = ()


class Answer(NamedTuple):
    """One result: its number and unit, or words without a unit; and what it means."""

    value: float | str
    unit: str
    meaning: str | None


class Working:
    r"""The lines that lead from what was given to a result.

    >>> w = Working(source="ISO 898-1, nominal stress area")
    >>> d = w.given("d", 10, "mm", typed="10.0")
    >>> p = w.given("P", 1.5, "mm")
    >>> d_s = w.step("d_s", "d − 0.9382·P", d - 0.9382 * p, "mm")
    >>> print(*w.shown(), sep="\n")
    d = 10 mm (as typed "10.0")
    P = 1.5 mm
    d_s = d − 0.9382·P = 10 − 0.9382·1.5 = 8.5927 mm
    >>> w.disagreements()
    []
    """

    __slots__ = ("_answers", "_lines", "_where", "cautions", "source")

    def __init__(self, source: str = "", cautions: Iterable[str] = ()) -> None:
        self.source = source
        self.cautions: list[str] = list(cautions)
        self._lines: list[Line] = []
        self._where: dict[str, Line] = {}
        self._answers: dict[str, str | Told] = {}

    def given(
        self,
        symbol: str,
        value: float,
        unit: str,
        *,
        typed: str | None = None,
        meaning: str | None = None,
    ) -> float:
        """Keeps a value that was typed, measured or read in the book, and hands it back."""
        self._keep((GIVEN, symbol, value, unit, typed, meaning))
        return value

    def step(
        self,
        symbol: str,
        formula: str,
        value: float,
        unit: str,
        *,
        meaning: str | None = None,
        answer: str = "",
    ) -> float:
        """Keeps a computed value beside the formula that is shown for it, and hands it back.

        answer: what the value is called where it is one of the results.
        """
        self._keep((STEP, symbol, value, unit, formula, meaning))
        if answer:
            self._answers[answer] = symbol
        return value

    def tell(self, answer: str, words: str) -> None:
        """Keeps a result that is said in words, such as yes, no or an order of bolts."""
        self._answers[answer] = Told(words)

    @property
    def answers(self) -> dict[str, Answer]:
        """The results by name, each a number with its unit or a few words."""
        return {name: self._answer(kept) for name, kept in self._answers.items()}

    def _answer(self, kept: str | Told) -> Answer:
        if isinstance(kept, Told):
            return Answer(kept, "", None)
        line = self._where[kept]
        return Answer(line[2], line[3], line[5])

    def note(self, text: str) -> None:
        """Keeps a plain sentence between the lines."""
        self._lines.append((NOTE, "", 0.0, "", text, None))

    def caution(self, text: str) -> None:
        """Keeps a caution that belongs to the work, once."""
        if text not in self.cautions:
            self.cautions.append(text)

    def extend(self, other: "Working") -> None:
        """Takes over the lines, source and cautions of another working.

        A line that stands here already in the same words is not repeated.
        Raises ValueError where one symbol would mean two things.
        """
        for line in other._lines:
            if line[0] == NOTE:
                self._lines.append(line)
            elif self._where.get(line[1]) != line:
                self._keep(line)
        if other.source and other.source not in self.source.split("; "):
            self.source = f"{self.source}; {other.source}" if self.source else other.source
        for text in other.cautions:
            self.caution(text)

    def _keep(self, line: Line) -> None:
        if line[1] in self._where:
            raise ValueError(f"{line[1]} already stands in this working; give it another symbol")
        self._where[line[1]] = line
        self._lines.append(line)

    def value(self, symbol: str) -> float:
        """The value behind a symbol; KeyError where the symbol does not stand here."""
        return self._where[symbol][2]

    def shown(self) -> list[str]:
        """The lines as a person reads them: symbol = formula = numbers = result unit."""
        known: dict[str, audit.Printed] = {}
        out = []
        for line in self._lines:
            out.append(_line_shown(line, known))
            known[line[1]] = _printed(line)
        return out

    def disagreements(self) -> list[str]:
        """What does not agree: each shown formula and its printed numbers, worked out again."""
        known: dict[str, audit.Printed] = {}
        out: list[str] = []
        for line in self._lines:
            kind, symbol, value, _, text, _ = line
            if kind == NOTE:
                continue
            if not formula.is_symbol(symbol):
                out.append(f"{symbol}: cannot be written as a symbol")
            if kind == STEP and text is not None:
                out += audit.complaints(symbol, text, value, known)
            known[symbol] = _printed(line)
        return out

    def as_data(self) -> dict[str, Any]:
        """Plain values for JSON; `from_data` reads them back."""
        lines = [_line_as_data(line) for line in self._lines]
        return {"source": self.source, "cautions": list(self.cautions), "lines": lines}

    @property
    def steps(self) -> list[str]:
        """The formulas alone, each as symbol = formula."""
        return [f"{line[1]} = {line[4]}" for line in self._lines if line[0] == STEP and line[4]]

    @classmethod
    def from_data(cls, data: Mapping[str, Any]) -> Self:
        """The working that `as_data` wrote."""
        working = cls(data["source"], data["cautions"])
        for line in data["lines"]:
            kind = line["kind"]
            if kind == NOTE:
                working.note(line["text"])
                continue
            text, meaning = line.get(TEXT_KEY[kind]), line.get("meaning")
            working._keep((kind, line["symbol"], float(line["value"]), line["unit"], text, meaning))
        return working

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Working):
            return NotImplemented
        return (self.source, self.cautions, self._lines) == (
            other.source,
            other.cautions,
            other._lines,
        )

    __hash__ = None  # type: ignore[assignment]  # it grows

    def __repr__(self) -> str:
        return f"Working({self.source!r}, {len(self._lines)} lines)"


@dataclass(frozen=True)
class Worked(Generic[T]):
    """A value together with how it was reached."""

    value: T
    working: Working


def _printed(line: Line) -> audit.Printed:
    return audit.Printed(line[2], line[3], digits.GIVEN if line[0] == GIVEN else digits.STEP)


def _line_shown(line: Line, known: Mapping[str, audit.Printed]) -> str:
    kind, symbol, value, unit, text, meaning = line
    if kind == NOTE:
        return text or ""
    if kind == STEP:
        result = digits.written(value, digits.STEP)
        shown = " = ".join(_chain(symbol, text or "", result, known))
    else:
        result = digits.written(value, digits.GIVEN)
        shown = f"{symbol} = {result}"
    ending = f" {unit}" if unit else ""
    shown += ending
    if kind == GIVEN and text is not None and text.strip() not in (result, result + ending):
        shown += f' (as typed "{text}")'
    return f"{shown}; {meaning}" if meaning else shown


def _chain(symbol: str, shown: str, result: str, known: Mapping[str, audit.Printed]) -> list[str]:
    """Symbol, formula, numbers and result, each only where it says something new."""
    chain = [symbol]
    for text in (shown, audit.numbers(shown, known), result):
        if text != chain[-1]:
            chain.append(text)
    return chain


def _line_as_data(line: Line) -> dict[str, Any]:
    kind, symbol, value, unit, text, meaning = line
    if kind == NOTE:
        return {"kind": kind, "text": text}
    finite = abs(value) < float("inf")
    data: dict[str, Any] = {
        "kind": kind,
        "symbol": symbol,
        "value": value if finite else str(value),  # JSON knows no infinity
        "unit": unit,
    }
    if text is not None:
        data[TEXT_KEY[kind]] = text
    if meaning is not None:
        data["meaning"] = meaning
    return data
