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


def _near(typed: str, known: tuple[str, ...]) -> tuple[str, ...]:
    """Names close to what was typed; all of them where there are few."""
    by_lower = {name.lower(): name for name in known if name}
    close = get_close_matches(typed.lower(), list(by_lower), n=3, cutoff=0.5)
    if not close and len(by_lower) <= 4:
        close = list(by_lower)
    return tuple(by_lower[name] for name in close)


def refuse(reasons: Iterable[object]) -> None:
    """Raise Refused if there is any reason."""
    if listed := tuple(reasons):
        raise Refused(listed)
