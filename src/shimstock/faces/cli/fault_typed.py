"""What is typed of a fault: understood by the machine's book, looked at, or kept."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from shimstock.workshop.looking import see

if TYPE_CHECKING:
    from shimstock.faces.cli.command import Asked
    from shimstock.trade.faults.at_hand import AtHand
    from shimstock.trade.faults.network import Told
    from shimstock.trade.machine.book import Book
    from shimstock.workshop.fault_search.view import SearchSeen
    from shimstock.workshop.models import DiaryEntry, FaultSearch


@dataclass(frozen=True)
class Typed:
    """The options of a command as they were typed; None for what was not.

    seen: signs, each perhaps as SIGN=NUMBER. without: tools that are not at hand.
    """

    seen: Sequence[str] = ()
    not_seen: Sequence[str] = ()
    there: Sequence[str] = ()
    cleared: Sequence[str] = ()
    people: int | None = None
    young: bool | None = None
    without: Sequence[str] | None = None

    @property
    def says_something(self) -> bool:
        """Whether anything is said of a sign or a cause."""
        return bool(self.seen or self.not_seen or self.there or self.cleared)

    @property
    def says_who(self) -> bool:
        """Whether anything is said of who and what is at hand."""
        return any(each is not None for each in (self.people, self.young, self.without))

    def said(self, book: Book) -> dict[str, str]:
        """What is said of each sign and cause: sign:KEY or cause:KEY, and the word or number.

        Raises NotFound or Refused for names, Refused or NotUnderstood for what is said.
        """
        from shimstock.workshop.fault_search.said import check_said
        from shimstock.workshop.fault_search.words import about_called, find_cause, find_sign
        from shimstock.workshop.refused import Refused

        told: list[tuple[str, str]] = []
        for each in self.seen:
            sign, equals, number = each.partition("=")
            about = f"sign:{find_sign(book, sign)}"
            told.append((about, check_said(book, about, number) if equals else "seen"))
        told += [(f"sign:{find_sign(book, each)}", "not seen") for each in self.not_seen]
        told += [(f"cause:{find_cause(book, each)}", "there") for each in self.there]
        told += [(f"cause:{find_cause(book, each)}", "cleared") for each in self.cleared]
        said = dict(told)
        for about, word in told:
            if said[about] != word:
                name = about_called(book, about)
                raise Refused([f"{name} is called {word} and {said[about]}; say one of them"])
        return said


def looked_at(machine: str, typed: Typed, number: int | None) -> SearchSeen:
    """A search with what was typed beside it.

    Without a number: what was typed alone, or where nothing was, the search that goes on.
    """
    from shimstock.workshop.fault_search.view import see_search
    from shimstock.workshop.fault_search.words import find_search, open_search

    seen = see(machine)
    row = None
    if number is not None:
        row = find_search(seen.row, number)
    elif not typed.says_something:
        row = open_search(seen.row)
    more = _told(seen.book, typed.said(seen.book)) if typed.says_something else None
    return see_search(seen, row, more, _at_hand(seen.book, row, typed))


def keep_typed(
    asked: Asked, machine: str, typed: Typed, number: int | None, about: str
) -> list[DiaryEntry]:
    """Write what was typed into the search that goes on; with `about` into a new one."""
    from shimstock.faces.cli.looking import kept_so_far
    from shimstock.workshop import acts
    from shimstock.workshop.fault_search.words import find_tools, open_search

    seen = see(machine)
    said = typed.said(seen.book)  # before anything is kept
    find_tools(seen.book, typed.without or ())
    entries: list[DiaryEntry] = []
    if number is None and (about or open_search(seen.row) is None):
        entries.append(
            acts.begin_search(
                machine=machine,
                about=about,
                who=asked.who,
                people=1 if typed.people is None else typed.people,
                young=bool(typed.young),
                missing=typed.without or (),
            )
        )
        number = max(seen.row.searches.values_list("number", flat=True))
    elif typed.says_who:
        entries.append(
            acts.set_at_hand(
                machine=machine,
                who=asked.who,
                people=typed.people,
                young=typed.young,
                missing=typed.without,
                search=number,
            )
        )
    with kept_so_far(entries):
        if said:
            entries.append(
                acts.say_in_search(machine=machine, said=said, who=asked.who, search=number)
            )
    return entries


def say(
    asked: Asked, machine: str, said: Mapping[str, str], number: int | None
) -> list[DiaryEntry]:
    """Write down what a check showed; a search is begun where none goes on."""
    from shimstock.workshop import acts
    from shimstock.workshop.fault_search.said import check_said
    from shimstock.workshop.fault_search.words import find_about, open_search

    seen = see(machine)
    known = {find_about(seen.book, each): word for each, word in said.items()}
    for about, word in known.items():
        check_said(seen.book, about, word)
    entries = []
    if number is None and open_search(seen.row) is None:
        entries.append(acts.begin_search(machine=machine, who=asked.who))
    told = acts.say_in_search(machine=machine, said=known, who=asked.who, search=number)
    return [*entries, told]


def _told(book: Book, said: Mapping[str, str]) -> Told:
    from shimstock.trade.faults.network import Told
    from shimstock.workshop.fault_search.said import meant

    values = {about: meant(book, about, word) for about, word in said.items()}
    signs = {about: value for about, value in values.items() if about.startswith("sign:")}
    causes = {about: bool(value) for about, value in values.items() if about not in signs}
    return Told(
        {about.removeprefix("sign:"): value for about, value in signs.items()},
        {about.removeprefix("cause:"): value for about, value in causes.items()},
    )


def _at_hand(book: Book, row: FaultSearch | None, typed: Typed) -> AtHand:
    """Who is there by the search, and by what was typed instead."""
    from shimstock.trade.faults.at_hand import AtHand
    from shimstock.workshop.fault_search.view import at_hand_of
    from shimstock.workshop.fault_search.words import check_people, find_tools

    here = at_hand_of(row)
    if typed.people is not None:
        check_people(typed.people)
    return AtHand(
        here.people if typed.people is None else typed.people,
        here.young if typed.young is None else typed.young,
        here.missing if typed.without is None else frozenset(find_tools(book, typed.without)),
    )
