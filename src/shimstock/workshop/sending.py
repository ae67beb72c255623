"""What comes from afar: stored once however often it is sent, and never over another's work."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from shimstock.workshop.models import DiaryEntry

Content = Mapping[str, list[str]]
"""What a form held, field by field."""

NOT_TOLD = ("verdict:", "gate:")
"""Places that follow from others: that they changed says nothing new to a person."""


@dataclass(frozen=True)
class Sending:
    """One form as it was sent.

    key: the form's own, the same however often it is sent; "" for none.
    seen: the latest entry in the diary when its page was made; None where that does not matter.
    """

    key: str
    content: Content
    seen: int | None = None


class SentOtherwise(Exception):
    """A form was sent twice with different content; neither is thrown away."""

    def __init__(self, entry: DiaryEntry, first: Content, second: Content) -> None:
        self.entry, self.first, self.second = entry, first, second
        super().__init__(
            f"This form was sent before and holds something else now. In the book: {entry.says}"
        )


class ChangedMeanwhile(Exception):
    """Others changed the same thing after the page was made; nothing was written."""

    def __init__(self, entries: tuple[DiaryEntry, ...]) -> None:
        self.entries = entries
        super().__init__("; ".join(f"{entry.who}: {entry.says}" for entry in entries))


@dataclass(frozen=True)
class Sent:
    """What a sending wrote into the diary; repeated: an earlier sending had done it already."""

    entry: DiaryEntry
    repeated: bool = False


_now: ContextVar[Sending | None] = ContextVar("sending", default=None)


def sending_now() -> Sending | None:
    """The form that is being acted on, if one is."""
    return _now.get()


def send_once(sending: Sending, act: Callable[[], DiaryEntry]) -> Sent:
    """Do what a form asks for, once however often it comes.

    act: writes one entry into the diary.
    Raises SentOtherwise where the form came before with other content, ChangedMeanwhile where
    others changed the same thing since the page was made, and what the act raises.
    """
    if (entry := _stored(sending)) is not None:
        return Sent(entry, repeated=True)
    try:
        with _sending(sending):
            return Sent(act())
    except Exception:
        # The other sending may have been quicker: then the act is refused for what that one did.
        if (entry := _stored(sending)) is not None:
            return Sent(entry, repeated=True)
        raise


def changed_since(machine: int, seen: int, places: set[str]) -> tuple[DiaryEntry, ...]:
    """Entries later than `seen` that touch one of these places of a machine."""
    from shimstock.workshop.models import DiaryEntry

    told = {place for place in places if not place.startswith(NOT_TOLD)}
    later = DiaryEntry.objects.filter(machine=machine, pk__gt=seen)
    return tuple(entry for entry in later if told.intersection(entry.places))


@contextmanager
def _sending(sending: Sending) -> Iterator[None]:
    token = _now.set(sending)
    try:
        yield
    finally:
        _now.reset(token)


def _stored(sending: Sending) -> DiaryEntry | None:
    """The entry an earlier sending made. Raises SentOtherwise where that held something else."""
    from shimstock.workshop.models import DiaryEntry

    if not sending.key:
        return None
    entry = DiaryEntry.objects.filter(client_key=sending.key).first()
    if entry is not None and entry.sent != _plain(sending.content):
        raise SentOtherwise(entry, entry.sent or {}, sending.content)
    return entry


def _plain(content: Content) -> dict[str, list[str]]:
    return {name: list(values) for name, values in content.items()}
