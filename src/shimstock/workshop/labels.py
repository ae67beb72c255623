"""The short codes that labels carry: printed as a square to scan, and short enough to type."""

from __future__ import annotations

from dataclasses import dataclass

JOINT, PART, BAG, SHELF = "joint", "part", "bag", "shelf"
LETTERS = {JOINT: "j", PART: "p", BAG: "b", SHELF: "s"}
"""The letter that stands in a code for each kind of thing that bears a label."""

KINDS = {letter: kind for kind, letter in LETTERS.items()}


@dataclass(frozen=True)
class Labelled:
    """What a label is stuck to.

    machine: its short name. kind: joint, part, bag or shelf. which: the key of the joint or part,
    what stands on the bag, or the shelf's name.
    """

    machine: str
    kind: str
    which: str


def code_of(labelled: Labelled) -> str:
    """The code of a thing; an address quotes what it cannot hold.

    >>> code_of(Labelled("grey", BAG, "12 a"))
    'grey.b.12 a'
    """
    return f"{labelled.machine}.{LETTERS[labelled.kind]}.{labelled.which}"


def labelled_of(code: str) -> Labelled | None:
    """The thing that a code stands on; None for a code that no label of ours bears.

    >>> labelled_of("grey.b.12 a")
    Labelled(machine='grey', kind='bag', which='12 a')
    >>> labelled_of("grey") is None
    True
    """
    machine, _, rest = code.partition(".")
    letter, _, which = rest.partition(".")
    kind = KINDS.get(letter)
    return Labelled(machine, kind, which) if machine and kind and which else None
