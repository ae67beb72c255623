import re
from collections.abc import Iterable
from difflib import get_close_matches


class Refused(Exception):
    """An act that must not be done as things stand; `reasons` says why, a sentence each."""

    def __init__(self, reasons: Iterable[object]) -> None:
        self.reasons = tuple(str(reason) for reason in reasons)
        super().__init__("; ".join(self.reasons))


class NotFound(Exception):
    """A name that nothing here bears; the message says what was typed and what is near."""

    def __init__(self, what: str, typed: str, known: Iterable[str], where: str = "") -> None:
        self.what, self.typed = what, typed
        self.near = _near(typed, tuple(known))
        super().__init__(f"There is no {what} {typed!r}{where}. {self._next_move()}")

    def _next_move(self) -> str:
        if not self.near:
            return f"The list of what there is shows how each {self.what} is called."
        return f"Did you mean {' or '.join(self.near)}?"


MARK = re.compile(r"[a-z]{1,2}\d+")
NOUGHTS = re.compile(r"(?<=[a-z])0+(?=\d)")
"""A mark, such as F021, in small letters; and what may be left away in it."""


def _near(typed: str, known: tuple[str, ...]) -> tuple[str, ...]:
    """Names close to what was typed; all of them where there are few."""
    by_lower = {name.lower(): name for name in known if name}
    likely = [name for name in by_lower if _may_be(typed.lower(), name)]
    close = get_close_matches(typed.lower(), likely, n=3, cutoff=0.5)
    if not close and len(by_lower) <= 4:
        close = list(by_lower)
    return tuple(by_lower[name] for name in close)


def _may_be(typed: str, name: str) -> bool:
    """Whether a name may be meant: marks are all alike, so only one that is a slip away."""
    if not MARK.fullmatch(name):
        return True
    return _one_slip_apart(typed, name) or NOUGHTS.sub("", typed) == NOUGHTS.sub("", name)


def _one_slip_apart(one: str, other: str) -> bool:
    """Whether two texts differ by one letter: another, one too many or one missing."""
    while one and other and one[0] == other[0]:
        one, other = one[1:], other[1:]
    return one[1:] == other[1:] or one[1:] == other or one == other[1:]


def refuse(reasons: Iterable[object]) -> None:
    """Raise Refused if there is any reason."""
    if listed := tuple(reasons):
        raise Refused(listed)
