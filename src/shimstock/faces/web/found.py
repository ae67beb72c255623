"""What bears the words that somebody looks for: a machine, and what its book names."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from django.urls import reverse

from shimstock.faces.web.places import address_of
from shimstock.trade.machine.words import Verdict
from shimstock.workshop.looking import Seen
from shimstock.workshop.names import Called, names
from shimstock.workshop.passing import gate_word
from shimstock.workshop.places import joint_place, piece_place, reading_place

MOST_FOUND = 40
NOT_SOUGHT = "question"
"""A gate's questions are found on the gate's page."""


@dataclass(frozen=True)
class Found:
    """One thing that bears the words: of a machine's book, or the machine itself.

    Where it is and how it stands is looked up for those only that are shown.
    """

    seen: Seen
    thing: Called

    @property
    def machine(self) -> str:
        """What the machine is called."""
        return self.seen.row.name

    @property
    def address(self) -> str:
        """Its page."""
        key, slug = self.thing.key, self.seen.row.slug
        match self.thing.kind:
            case "machine":
                return reverse("machine", args=[slug])
            case "joint":
                return address_of(joint_place(key), slug)
            case "part":
                return address_of(piece_place(key, ""), slug)
            case "train":
                return reverse("chain", args=[slug, key])
            case "gate":
                return reverse("gate", args=[slug, key])
        return address_of(reading_place(key, "", ""), slug)

    @property
    def states(self) -> tuple[object, ...]:
        """The states that it stands in, each once; of a figure, its verdicts."""
        now, key = self.seen.now, self.thing.key
        match self.thing.kind:
            case "joint":
                return (now.joint(key).word,)
            case "part":
                return _each_once(piece.word for piece in now.pieces_of(key).values())
            case "gate":
                may = self.seen.gates[key].may_be_passed
                return (gate_word(passed=key in now.passed, may_be_passed=may),)
            case "figure" | "setting":
                read = [now.latest(key, piece) for piece in self.thing.pieces or ("",)]
                return _each_once(v.verdict if v else Verdict.NOT_MEASURED for v in read)
        return ()


def found_on(seen: Seen, words: str) -> list[Found]:
    """What of a machine answers to all the words, the best answer first."""
    wanted = words.split()
    if not wanted:
        return []
    things = [each for each in names(seen.book, wanted) if each.kind != NOT_SOUGHT]
    return [Found(seen, each) for each in (*_itself(seen, wanted), *things)]


def _itself(seen: Seen, wanted: list[str]) -> list[Called]:
    """The machine, by its name or what is stamped on it."""
    row = seen.row
    stamped = ", ".join(f"{where} {number}" for where, number in row.serials.items())
    text = f"{row.slug} {row.name} {stamped}".lower()
    if not all(word.lower() in text for word in wanted):
        return []
    return [Called("machine", row.slug, "", f"{row.name}, {stamped}" if stamped else row.name)]


def _each_once(states: Iterable[object]) -> tuple[object, ...]:
    return tuple(dict.fromkeys(states))
