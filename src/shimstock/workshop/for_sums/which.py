"""Which of several is meant: by its words, or the answer that asks for it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from shimstock.workshop.refused import Refused
from shimstock.workshop.wording import listed


def meant_by(text: str, names: Iterable[str]) -> str:
    """The name that a text says, whole or by some of its words; "" where none or several are."""
    known, wanted = list(dict.fromkeys(names)), _bare(text)
    whole = [name for name in known if _bare(name) == wanted]
    found = whole or [name for name in known if set(wanted.split()) <= set(_bare(name).split())]
    return found[0] if len(found) == 1 and wanted else ""


def _bare(text: str) -> str:
    plain = (char if char.isalnum() or char in "./" else " " for char in text.lower())
    return " ".join("".join(plain).split())


def say_which(typed: str, what: str, choices: Sequence[str]) -> Refused:
    """The answer where several could be meant: what they are, and how one of them is typed."""
    first = choices[0].split(" (")[0]
    example = f"{typed} '{first}'" if " " in first else f"{typed} {first}"
    several = f"{typed} has {len(choices)} {what}: {listed(choices)}"
    return Refused([f"{several}; say which, such as {example}"])
