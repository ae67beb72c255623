"""A joint or a figure that is named for a sum, and what it holds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from shimstock.trade.machine.book import Fasteners, Joint, Use
from shimstock.trade.sums.declare import Input
from shimstock.trade.sums.typed import Origin
from shimstock.workshop.for_sums.held import Held, as_printed, of_data, with_unit
from shimstock.workshop.for_sums.which import meant_by, say_which
from shimstock.workshop.refused import Refused
from shimstock.workshop.wording import figure_named

OF_FASTENERS = ("thread", "grade", "torque", "count")
OF_JOINT = (*OF_FASTENERS, "gasket thickness")


@dataclass(frozen=True)
class JointThing:
    """A joint, and which of its kinds of fastener or gaskets is meant; "" for the only one."""

    held: Held
    key: str
    typed: str
    kind: str = ""
    words = OF_JOINT

    def narrowed(self, text: str) -> JointThing | None:
        """The same joint with one kind of fastener or gasket; None where the text names none."""
        kinds = [each.what for each in self._joint.fasteners]
        kinds += [use.name for use in self._joint.uses if use.kind == "gasket"]
        kind = meant_by(text, kinds)
        return replace(self, kind=kind) if kind else None

    def give(self, one: Input, asked: Sequence[str]) -> Origin | None:
        """What it holds for a parameter. Raises Refused where several could be meant.

        asked: all words that the sum looks for, so that thread and grade are of one bolt.
        """
        if one.found == "gasket thickness":
            return self._gasket()
        if one.found not in OF_FASTENERS:
            return None
        fastening = self._fastening(asked)
        if fastening is None:
            return None
        text = _of_fastening(fastening, one.found)
        where = self.held.where("joints", self.key, "fasteners", fastening.page)
        return Origin(text, where) if text else None

    @property
    def _joint(self) -> Joint:
        return self.held.book.joints[self.key]

    def _fastening(self, asked: Sequence[str]) -> Fasteners | None:
        """The only kind of fastener that has something of what is asked."""
        of_kind = [each for each in self._joint.fasteners if self.kind in ("", each.what)]
        telling = [word for word in asked if word in OF_FASTENERS and word != "count"]
        having = [each for each in of_kind if any(_of_fastening(each, word) for word in telling)]
        choice = having if telling else of_kind
        if len(choice) > 1:
            raise say_which(self.typed, "kinds of fastener", [each.what for each in choice])
        return choice[0] if choice else None

    def _gasket(self) -> Origin | None:
        uses = [use for use in self._joint.uses if use.kind == "gasket" and use.thickness]
        meant = [use for use in uses if use.name == self.kind] or uses
        if len({_thick(use) for use in meant}) > 1:
            raise say_which(self.typed, "gaskets", [use.name for use in meant])
        where = [self.held.where("joints", self.key, "uses", use.page) for use in meant[:1]]
        return Origin(_thick(meant[0]), where[0]) if meant else None


@dataclass(frozen=True)
class FigureThing:
    """A figure, and on which piece; None for whichever was read last."""

    held: Held
    key: str
    typed: str
    piece: str | None = None
    words = ()

    @property
    def gives(self) -> str:
        """The word that a reading of it stands for; "" where the book names none."""
        return (self.held.book.measures[self.key].gives or "").replace("-", " ")

    def narrowed(self, text: str) -> FigureThing | None:
        """The same figure on one piece; None where the text names none."""
        pieces = self.held.book.parts[self.held.book.measures[self.key].of].instances
        wanted = text.strip().lower()
        piece = next((each for each in pieces if each and each.lower() == wanted), None)
        return replace(self, piece=piece) if piece else None

    def value(self, one: Input) -> Origin:
        """What was read last, else what the book prints for it. Raises Refused without either."""
        taken = self.held.taken(self.key, self.piece)
        if taken is None:
            return self._from_book()
        if one.many and taken.reading.figure == self.key:
            row = taken.reading
            values = [with_unit(each, row.unit) for each in row.values if each is not None]
            return Origin("; ".join(values), taken.origin.replace("worst of", "all"))
        return Origin(with_unit(taken.verdict.value, taken.verdict.unit), taken.origin)

    @property
    def limit(self) -> Origin | None:
        """The limit of use that the book sets it; None where it sets none, or two."""
        entry = self.held.book.measures[self.key]
        if len(entry.limit) != 1:
            return None
        [only] = entry.limit
        section = "figures" if self.key in self.held.book.figures else "settings"
        where = self.held.where(section, self.key, "limit", entry.page)
        return Origin(with_unit(only.value, only.unit), where)

    def _from_book(self) -> Origin:
        entry = self.held.book.measures[self.key]
        printed = as_printed(self.held, self.key)
        if entry.gives and self.piece is None:
            printed = of_data(self.held, entry.gives) or printed
        if printed is None:
            name = figure_named(self.held.book, self.key, self.piece or "")
            raise Refused([f"{name} has not been read yet; read it first, or type the value"])
        return printed


def _of_fastening(fastening: Fasteners, word: str) -> str:
    """What is said of a kind of fastener, as it would be typed; "" where nothing is."""
    if word == "count":
        return str(fastening.count)
    if word == "torque":
        return fastening.torque.typed if fastening.torque else ""
    return (fastening.thread if word == "thread" else fastening.grade) or ""


def _thick(use: Use) -> str:
    return use.thickness.typed if use.thickness else ""
