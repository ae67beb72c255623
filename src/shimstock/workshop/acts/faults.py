"""A search for a fault: begun, carried on, ended, taken up again; and what was found put right."""

from collections.abc import Iterable, Mapping
from datetime import datetime

from shimstock.trade.machine.book import Book
from shimstock.workshop.fault_search.alike import like_it
from shimstock.workshop.fault_search.said import check_said
from shimstock.workshop.fault_search.words import (
    CLEARED,
    NOT_LOOKED,
    THERE,
    about_called,
    check_people,
    find_about,
    find_cause,
    find_search,
    find_tools,
    open_search,
    searches_of,
)
from shimstock.workshop.ledger import Pen, writing
from shimstock.workshop.looking import called
from shimstock.workshop.models import DiaryEntry, FaultFound, FaultSaid, FaultSearch, Machine
from shimstock.workshop.refused import Refused
from shimstock.workshop.wording import listed

LONGEST = 1000
"""Letters in what a person writes of a search."""


def begin_search(
    *,
    machine: str | Machine,
    who: str,
    about: str = "",
    people: int = 1,
    young: bool = False,
    missing: Iterable[str] = (),
    at: datetime | None = None,
) -> DiaryEntry:
    """Begin a search for a fault.

    about: in words, such as "white smoke, will not catch". people, young, missing: as for
    `set_at_hand`. Raises NotFound for an unknown tool, Refused for fewer people than
    one or more than there can be.
    """
    _check_length("What the search is about", about)
    with writing("begin search", who=who, machine=machine, at=at) as pen:
        numbers = FaultSearch.objects.filter(machine=pen.machine).values_list("number", flat=True)
        row = FaultSearch(
            machine=pen.machine,
            number=max(numbers, default=0) + 1,
            about=" ".join(about.split()),
            by=pen.who,
            at=pen.at,
        )
        _lay_at_hand(pen.book, row, people, young, missing)
        pen.save(row)
        pen.says = f"Began search {row.number}" + (f": {row.about}." if row.about else ".")
        pen.says += _told_of(_another(pen, row))
    return pen.entry


def say_in_search(
    *,
    machine: str | Machine,
    said: Mapping[str, str],
    who: str,
    search: int | None = None,
    at: datetime | None = None,
) -> DiaryEntry:
    """Say what was seen, and what checks showed; what was said of the same thing gives way.

    said: for each sign "seen", "not seen" or, where a figure belongs to it, a number; for each
    cause "there" or "cleared"; "not looked" takes back what was said. The keys are sign:KEY,
    cause:KEY, or what the thing is called. search: its number; that which goes on if not given.
    Raises NotFound for an unknown sign, cause or search; Refused where the search is ended, where
    several go on and none is named, where nothing new is said, or for a word that cannot be said;
    NotUnderstood for a number.
    """
    with writing("say in search", who=who, machine=machine, at=at) as pen:
        row = _going_on(pen, search)
        known = _another(pen, row)
        told = {find_about(pen.book, each): word for each, word in said.items()}
        news = [
            f"{about_called(pen.book, about)}: {word}"
            for about, typed in told.items()
            if (word := _say(pen, row, about, check_said(pen.book, about, typed)))
        ]
        if not news:
            raise Refused(["That says nothing new; say what was seen, or what a check showed"])
        pen.says = f"Search {row.number}: {'; '.join(news)}."
        pen.says += "" if known else _told_of(_another(pen, row))
    return pen.entry


def set_at_hand(
    *,
    machine: str | Machine,
    who: str,
    people: int | None = None,
    young: bool | None = None,
    missing: Iterable[str] | None = None,
    search: int | None = None,
    at: datetime | None = None,
) -> DiaryEntry:
    """Say who does the checks, and what is not there; what is not given stays.

    people: how many. young: a helper under age does them. missing: tools, as the book names them.
    Raises NotFound for an unknown tool or search; Refused where the search is ended, for fewer than
    one person or more than there can be, or where nothing changes.
    """
    with writing("set at hand", who=who, machine=machine, at=at) as pen:
        row = _going_on(pen, search)
        _lay_at_hand(
            pen.book,
            row,
            row.people if people is None else people,
            row.young if young is None else young,
            row.missing if missing is None else missing,
        )
        pen.save(row)
        if not pen.touched:
            raise Refused([f"Nothing changes; {_at_hand_told(row)} it is already"])
        pen.says = f"Search {row.number}: {_at_hand_told(row)}."
    return pen.entry


def fault_found(
    *,
    machine: str | Machine,
    cause: str,
    who: str,
    how: str = "",
    ends: bool = False,
    search: int | None = None,
    at: datetime | None = None,
) -> DiaryEntry:
    """Write down that a cause was found and put right; it counts for how common the cause is.

    cause: by key, mark or name. how: it was put right, in words. ends: the search is over with it.
    search: its number; that which goes on, if any, if not given. In a search that goes on the cause
    is cleared from now on, since it was put right.
    Raises NotFound for an unknown cause or search, Refused where the search is ended, or where
    several go on and none is named.
    """
    _check_length("How it was put right", how)
    with writing("fault found", who=who, machine=machine, at=at) as pen:
        key = find_cause(pen.book, cause)
        row = _going_on(pen, search) if search or open_search(pen.machine) else None
        if row is None and ends:
            raise Refused(["No search goes on that could end; leave that away"])
        found = FaultFound(machine=pen.machine, cause=key, by=pen.who, at=pen.at)
        found.how, found.search = " ".join(how.split()), row.number if row else None
        pen.save(found)
        pen.says = f"Found and put right: {called(pen.book.causes, key)}"
        pen.says += f", {found.how}." if found.how else "."
        if row is not None:
            _say(pen, row, f"cause:{key}", THERE if ends else CLEARED)
        if row is not None and ends:
            row.ended = FaultSearch.FOUND
            pen.save(row)
            pen.says += f" Search {row.number} is over."
    return pen.entry


def end_search(
    *,
    machine: str | Machine,
    who: str,
    given_up: bool = False,
    search: int | None = None,
    at: datetime | None = None,
) -> DiaryEntry:
    """End a search, as found or given up.

    Raises NotFound; Refused where none goes on, or for found where nothing was put right in it.
    """
    with writing("end search", who=who, machine=machine, at=at) as pen:
        row = _going_on(pen, search)
        if not given_up:
            _check_put_right(pen, row)
        row.ended = FaultSearch.GIVEN_UP if given_up else FaultSearch.FOUND
        pen.save(row)
        pen.says = f"Search {row.number} was {row.ended if given_up else 'ended: found'}."
    return pen.entry


def take_up_search(
    *, machine: str | Machine, search: int, who: str, at: datetime | None = None
) -> DiaryEntry:
    """Take an ended search up again; what was put right in it is cleared from now on.

    Raises NotFound; Refused where it goes on still.
    """
    with writing("take up search", who=who, machine=machine, at=at) as pen:
        row = find_search(pen.machine, search)
        if not row.ended:
            raise Refused([f"Search {row.number} goes on still; say what you saw"])
        row.ended = ""
        pen.save(row)
        right = pen.machine.faults_found.filter(search=row.number, withdrawn=False)
        for cause in dict.fromkeys(right.values_list("cause", flat=True)):
            _say(pen, row, f"cause:{cause}", CLEARED)
        pen.says = f"Took up search {row.number} again" + (f": {row.about}." if row.about else ".")
    return pen.entry


def _another(pen: Pen, row: FaultSearch) -> FaultSearch | None:
    """An earlier search like this one that goes on."""
    return like_it(row, searches_of(pen.machine))


def _told_of(other: FaultSearch | None) -> str:
    return f" One like it goes on: number {other.number}." if other else ""


def _going_on(pen: Pen, number: int | None) -> FaultSearch:
    """The search that is meant; where several go on, it must be named."""
    going_on = [each for each in searches_of(pen.machine) if not each.ended]
    if number is None and len(going_on) > 1:
        named = [f"{each.number} ({each.about or 'without words'})" for each in going_on]
        raise Refused(
            [f"{len(going_on)} searches go on with {pen.machine.name}: {listed(named, 'and')}; "
             f"say which, as in --search {going_on[0].number}"]
        )  # fmt: skip
    row = find_search(pen.machine, number)
    if row.ended:
        raise Refused([f"Search {row.number} is over ({row.ended}); take it up again first"])
    return row


def _check_put_right(pen: Pen, row: FaultSearch) -> None:
    """Raise Refused where nothing was put right in a search that is to end as found."""
    if not pen.machine.faults_found.filter(search=row.number, withdrawn=False).exists():
        slug, number = pen.machine.slug, row.number
        raise Refused(
            [f"Nothing was put right in search {number} yet, so it cannot end as found; say what "
             f"it was, as in shimstock found {slug} CAUSE --ends --search {number}, or give it up, "
             f"as in shimstock searches {slug} {number} --give-up"]
        )  # fmt: skip


def _say(pen: Pen, row: FaultSearch, about: str, word: str) -> str:
    """Write down what is said, instead of what was; gives the word, "" where nothing is new."""
    pen.rests_on.add(row.place)  # so that the search is not undone from under it
    here = pen.machine.said_in_searches.filter(search=row.number, about=about, withdrawn=False)
    older = here.first()
    if (older.said if older else NOT_LOOKED) == word:
        return ""
    if older is not None:
        older.withdrawn = True
        pen.save(older)
    if word != NOT_LOOKED:
        said = FaultSaid(machine=pen.machine, search=row.number, about=about, said=word)
        said.by, said.at = pen.who, pen.at
        pen.save(said)
    return word


def _lay_at_hand(
    book: Book, row: FaultSearch, people: int, young: bool, missing: Iterable[str]
) -> None:
    check_people(people)
    row.people, row.young, row.missing = people, young, find_tools(book, missing)


def _at_hand_told(row: FaultSearch) -> str:
    here = "1 person" if row.people == 1 else f"{row.people} people"
    helper = ", a helper under age among them" if row.young else ""
    lacking = f", without {listed(row.missing, 'and')}" if row.missing else ""
    return f"{here} at hand{helper}{lacking}"


def _check_length(what: str, text: str) -> None:
    if "\0" in text:
        raise Refused([f"{what} has a sign in it that no keyboard types; type it anew"])
    if len(text) > LONGEST:
        raise Refused(
            [f"{what} has {len(text)} letters; at most {LONGEST}, and a note for the rest"]
        )
