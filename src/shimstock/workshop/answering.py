"""How well a thing of a book answers to the words that somebody looks for it by."""

from __future__ import annotations

import re
from collections.abc import Sequence
from enum import IntEnum

AMERICAN = {
    "aluminum": "aluminium", "ax": "axe", "carburetor": "carburettor", "carburetter": "carburettor",
    "center": "centre", "color": "colour", "fiber": "fibre", "gage": "gauge", "gasoline": "petrol",
    "gray": "grey", "labor": "labour", "liter": "litre", "meter": "metre", "mold": "mould",
    "plow": "plough", "sulfur": "sulphur", "tire": "tyre",
}  # fmt: skip
"""American spellings and the British ones that the books are written in. From memory."""

_BRACKETS = re.compile(r"\s*\(.*?\)")


class Answers(IntEnum):
    """How a thing answers, the best first."""

    BY_MARK = 0
    BY_NAME = 1
    """The words are its whole name, or a whole name of something that it uses."""
    FIRST = 2
    """Its name begins with them: it is the thing itself."""
    IN_NAME = 3
    BESIDE = 4
    """They stand in what it meets, uses or is looked for by."""
    SOMEWHERE = 5
    """They are scattered, or parts of words."""


def answers(
    words: Sequence[str], *, marks: Sequence[str], name: str, others: Sequence[str] = ()
) -> tuple[Answers, str] | None:
    """How a thing answers to all of some words, and by which of its other words; None: not at all.

    marks: its key and mark. name: of a joint, what comes off "to" what it is on. others: what else
    it is looked for by, and what it uses.

    >>> answers(["head"], marks=["J31"], name="Head to block", others=["head gasket"])
    (<Answers.FIRST: 2>, '')
    """
    wanted = plain(" ".join(words))
    if wanted in {plain(each) for each in marks}:
        return Answers.BY_MARK, ""
    itself, _, _ = plain(name).partition(" to ")
    if wanted in (plain(name), itself) and " to " not in plain(name):
        return Answers.BY_NAME, ""
    if wanted in (whole := {plain(other): other for other in others}):
        return Answers.BY_NAME, whole[wanted]
    if itself == wanted or itself.startswith(f"{wanted} "):
        return Answers.FIRST, ""
    if _has(itself, wanted):
        return Answers.IN_NAME, ""
    if other := next((each for each in others if _has(plain(each), wanted)), ""):
        return Answers.BESIDE, other
    if _has(plain(name), wanted):
        return Answers.BESIDE, ""
    if all(word in plain(" ".join([*marks, name, *others])) for word in wanted.split()):
        by = [each for each in others if any(word in plain(each) for word in wanted.split())]
        in_name = all(word in plain(" ".join([*marks, name])) for word in wanted.split())
        return Answers.SOMEWHERE, "" if in_name else "; ".join(by)
    return None


def plain(text: str) -> str:
    """A text in small letters, British spelling, one of each thing, without what is in brackets.

    >>> plain("Carburetor bowls (cork)")
    'carburettor bowl'
    """
    words = _BRACKETS.sub("", text.casefold()).replace("-", " ").replace(",", " ").split()
    return " ".join(AMERICAN.get(one, one) for one in map(_one, words))


def _one(word: str) -> str:
    """A word for one thing, where it ends as the word for several: bolts, not gas or glass."""
    several = len(word) > 3 and word.endswith("s") and not word.endswith(("ss", "us", "is"))
    return word[:-1] if several else word


def _has(text: str, wanted: str) -> bool:
    return set(wanted.split()) <= set(text.split())
