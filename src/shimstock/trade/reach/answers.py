"""Whether what a person answered settles a question."""

from __future__ import annotations

import re

from shimstock.trade.machine.book import Gate, Point
from shimstock.trade.machine.state import MachineNow

NOT_NEEDED = "not needed"
NOBODY = re.compile(
    r"(no|none|nobody|noone|nothing|na|n a|yes|ok|later|tbd|tba|unknown|not|nil)\b.*|.?"
)
"""Beginnings that name nobody and nothing, where a question asks who or what."""


def answered(now: MachineNow, key: str, point: Point) -> bool:
    """True where a person has signed an answer that settles the question.

    A question without listed answers asks for a name or a word of the person's own. One that is not
    hard may also be answered "not needed", with a reason.
    """
    return _said(now, key, point) or (not point.hard and set_aside(now, key))


def _said(now: MachineNow, key: str, point: Point) -> bool:
    said = answer_to(now, key)
    if not point.answers:
        return said is not None and not NOBODY.fullmatch(_letters(said))
    return said in {each.casefold() for each in point.answers}


def _letters(said: str) -> str:
    """The words of an answer, without the signs that people put between and around them."""
    return " ".join(re.findall(r"[^\W_]+", said.replace("no-one", "noone")))


def answer_to(now: MachineNow, key: str) -> str | None:
    """The signed answer in small letters; None where nobody has answered and signed."""
    answer = now.answers.get(key)
    if answer is None or not answer.by.strip():
        return None
    return answer.answer.strip().casefold()


def set_aside(now: MachineNow, key: str) -> bool:
    """True where a person has signed "not needed" and given a reason."""
    return answer_to(now, key) == NOT_NEEDED and bool(now.answers[key].reason.strip())


def asked(now: MachineNow, gate: Gate, key: str) -> bool:
    """Whether a question is put at all; one that hangs on others waits for their answers."""
    for other, wanted in gate.points[key].only_if.items():
        said = answer_to(now, other)
        if said != wanted.casefold() and said != NOT_NEEDED:
            return False
    return True


def would_settle(point: Point) -> str:
    """What to answer."""
    own = " / ".join(point.answers) or "with a name"
    return f"answer {own}, and sign" + ("" if point.hard else f'; or "{NOT_NEEDED}" and why')
