"""A machine keeps its whole book: an updated program changes no machine unasked."""

import pytest
import yaml

from shimstock.trade.machine.sheet import BookErrors
from shimstock.trade.machine.words import Stage
from shimstock.workshop import acts, books
from shimstock.workshop.acts.machines import give_book
from shimstock.workshop.books import book_of, newer_starters, own_text
from shimstock.workshop.ledger import writing
from shimstock.workshop.models import (
    DiaryEntry,
    JointState,
    Machine,
    PieceState,
    ReadingRow,
    VerdictRow,
)
from shimstock.workshop.now import machine_now
from shimstock.workshop.refused import Refused
from workshop.shed_book import LINER_1, TEXT

OURS = "book: our-engine\ntitle: Our engine (invented)\nextends: shed-engine\n"
NEWER = TEXT.replace("limit: max 0.012 in", "limit: max 0.009 in")
RENAMED = TEXT.replace("hood-joint", "bonnet-joint")


@pytest.fixture
def installed(monkeypatch) -> dict[str, str]:
    """The starters of the program that is installed, for a test to replace."""
    starters = {"shed-engine": TEXT}
    monkeypatch.setattr(books, "starter_text", starters.__getitem__)
    monkeypatch.setattr(books, "starter_names", lambda: tuple(starters))
    return starters


@pytest.fixture
def red(db, installed) -> Machine:
    acts.add_machine(slug="red", name="Red", book_text=OURS, book_name="ours.yaml", who="Ann")
    return Machine.objects.get(slug="red")


def test_the_starters_are_kept_with_the_machine(red):
    assert red.starters == {"shed-engine": TEXT}


def test_a_book_that_extends_nothing_keeps_no_starter(machine):
    assert machine.starters == {}


def test_a_renamed_joint_of_a_newer_starter_changes_no_machine(red, installed):
    acts.open_joint(machine="red", joint="J1", who="Ann")
    installed["shed-engine"] = RENAMED

    assert set(machine_now(red).joints) == {"hood-joint"}
    assert "hood-joint" in book_of(red).joints


def test_a_starter_that_is_installed_no_more_is_not_needed(red, installed):
    del installed["shed-engine"]

    assert "hood-joint" in book_of(red).joints
    assert newer_starters(red) == ()


def test_a_newer_starter_is_told(red, installed):
    assert newer_starters(red) == ()
    installed["shed-engine"] = NEWER

    assert newer_starters(red) == ("shed-engine",)


def test_a_machine_made_to_a_starter_itself_is_told_of_the_newer_one(db, installed):
    acts.add_machine(slug="red", name="Red", book_text=TEXT, book_name="shed-engine", who="Ann")
    installed["shed-engine"] = NEWER

    assert newer_starters(Machine.objects.get()) == ("shed-engine",)


def test_a_recheck_judges_by_the_book_that_the_machine_keeps(red, installed):
    acts.take_reading(machine="red", figure="end-float", typed="0.0105", who="Ann")
    installed["shed-engine"] = NEWER

    assert acts.recheck().changes == ()


def test_changing_the_book_takes_todays_starters_and_says_so(red, installed):
    acts.take_reading(machine="red", figure="end-float", typed="0.0105", who="Ann")
    installed["shed-engine"] = NEWER

    entry = acts.change_book(machine="red", book_text=OURS, who="Ann")

    assert entry.says == (
        "Changed the book, with today's starter shed-engine; 1 verdict changed with it."
    )
    red.refresh_from_db()
    assert red.starters == {"shed-engine": NEWER}
    assert red.verdicts.get(current=True).verdict == "worn out"
    acts.undo(entry_id=entry.pk, who="Ann")
    red.refresh_from_db()
    assert red.starters == {"shed-engine": TEXT}
    assert red.verdicts.get(current=True).verdict == "serviceable"


def test_a_book_that_leaves_its_starter_says_so(red):
    entry = acts.change_book(machine="red", book_text=TEXT, who="Ann")

    assert "without the starter shed-engine" in entry.says


def test_changing_to_a_starter_that_forgets_an_opened_joint_is_refused(red, installed):
    acts.open_joint(machine="red", joint="J1", who="Ann")
    installed["shed-engine"] = RENAMED

    with pytest.raises(Refused, match="joint 'hood-joint' has something written down"):
        acts.change_book(machine="red", book_text=OURS, who="Ann")


def test_a_starter_that_is_installed_no_more_is_named_when_the_book_is_changed(red, installed):
    installed["other"] = installed.pop("shed-engine")

    with pytest.raises(BookErrors, match="is not a starter; one of other would do"):
        acts.change_book(machine="red", book_text=OURS, who="Ann")


@pytest.mark.parametrize(
    ("act", "given"),
    [
        ("move_piece", {"part": "pump", "piece": "left", "to": "off"}),
        ("take_reading", {"figure": "delivery", "piece": "left", "typed": "24.2"}),
    ],
)
def test_a_book_that_forgets_a_single_piece_is_refused(machine, do, act, given):
    getattr(do, act)(**given)

    with pytest.raises(Refused, match="'left' of Pump has something written down"):
        do.change_book(book_text=TEXT.replace("each: [left, right]", "each: [near, far]"))


def test_a_book_is_not_undone_from_under_what_only_it_knows(machine, do):
    crank = "  crank: {name: Crank, sits-on: case}\n  liner:"
    changed = do.change_book(book_text=TEXT.replace("  liner:", crank, 1))
    do.move_piece(part="crank", to="off")

    with pytest.raises(Refused, match="part 'crank' has something written down"):
        do.undo(changed)
    assert "crank" in book_of(Machine.objects.get()).parts


def test_what_the_book_does_not_know_stops_nothing(machine, do):
    do.open_joint(joint="J1")
    do.move_piece(part="pump", piece="left", to="off")
    do.take_reading(figure="bore", piece="1", typed=LINER_1)
    JointState.objects.update(joint="gone-joint")
    PieceState.objects.update(piece="gone")
    ReadingRow.objects.update(figure="gone")
    VerdictRow.objects.filter(figure="bore").update(figure="gone")
    VerdictRow.objects.filter(figure="taper").update(piece="7")

    now = machine_now(machine)

    assert (now.joints, now.pieces, now.verdicts) == ({}, {}, {})
    do.take_reading(figure="bore", piece="2", typed=LINER_1)
    do.open_joint(joint="J2", path=True)
    do.move_piece(part="liner", piece="1", to="off")
    assert {key[2] for key in machine_now(machine).verdicts} == {Stage.FOUND}
    assert acts.recheck(apply=True, who="Ann").looked_at == 4
    assert acts.recheck().changes == ()


@pytest.fixture
def unreadable(machine, do) -> None:
    """A copy that a newer program does not understand any more."""
    do.take_reading(figure="bore", piece="1", typed=LINER_1)
    Machine.objects.update(book_text="book: shed-engine\nwhat-was-once-a-field: 1\n")


def test_a_copy_that_is_understood_no_more_can_still_be_changed(machine, do, unreadable):
    with pytest.raises(BookErrors):
        do.open_joint(joint="J1")

    do.change_book(book_text=TEXT)

    assert "hood-joint" in book_of(Machine.objects.get()).joints
    assert len(machine.verdicts.filter(current=True)) == 2


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("at: {depths: [top, middle, bottom], across: [thrust, pin]}", "at: 2", "read at 6 places"),
        ("new: 5.7500 .. 5.7510 in\n    limit: max 5.7600 in", "new: 5 .. 6 psi", "as a length"),
    ],
)
def test_what_was_read_by_such_a_copy_is_not_laid_on_other_places(do, unreadable, old, new, said):
    other = TEXT.replace(old, new)
    for line in ("    sizes: [+0.020 in, +0.040 in, +0.060 in]\n", "    nominal: 5.7500 in\n"):
        other = other.replace(line, "")
    other = other.replace("    derive: {taper-of: bore}\n", "    with: bore gauge\n")

    with pytest.raises(Refused, match=said):
        do.change_book(book_text=other)


def test_a_corrected_figure_makes_no_starter_newer(db, installed):
    acts.add_machine(slug="red", name="Red", book_text=TEXT, book_name="shed-engine", who="Ann")

    acts.correct_figure(machine="red", figure="bore", typed={"page": "41"}, who="Ann")

    assert newer_starters(Machine.objects.get()) == ()


@pytest.mark.parametrize("whole", [False, True])
def test_the_newer_starter_is_taken_by_its_name_and_own_corrections_stay(db, installed, whole):
    acts.add_machine(
        slug="red", name="Red", book_text=TEXT, who="Ann",
        book_name="red.yaml" if whole else "shed-engine",
    )  # fmt: skip
    if whole:  # as machines were booked in with a starter before
        Machine.objects.update(book_name="shed-engine")
    acts.correct_figure(machine="red", figure="bore", typed={"page": "41"}, who="Ann")
    assert newer_starters(Machine.objects.get()) == ()
    installed["shed-engine"] = NEWER
    assert newer_starters(Machine.objects.get()) == ("shed-engine",)

    acts.change_book(machine="red", book_text=NEWER, book_name="shed-engine", who="Ann")

    row = Machine.objects.get()
    book = book_of(row)
    assert newer_starters(row) == ()
    assert book.figures["bore"].page == 41
    assert book.figures["end-float"].limit[0].value == 0.009
    assert "end-float" not in row.book_text


@pytest.fixture
def whole(db, installed) -> Machine:
    """A machine that has a starter's whole text, as they were given before."""
    acts.add_machine(slug="red", name="Red", book_text=TEXT, book_name="red.yaml", who="Ann")
    Machine.objects.update(book_name="shed-engine")
    return Machine.objects.get()


def given_whole(text: str) -> DiaryEntry:
    """The starter given whole, by its name, as the program wrote it before."""
    with writing("change book", who="Ann", machine="red") as pen:
        pen.says = "Changed the book"
        give_book(pen, text, "shed-engine", {})
    return pen.entry


def own(row: Machine) -> set[str]:
    """What of its book is a machine's own."""
    return set(yaml.safe_load(own_text(row)[0])) - {"book", "extends"}


def test_what_came_with_a_starter_that_was_given_by_name_is_not_the_machines_own(whole, installed):
    given_whole(NEWER)
    installed["shed-engine"] = NEWER
    row = Machine.objects.get()
    assert (newer_starters(row), own(row)) == ((), set())

    acts.correct_figure(machine="red", figure="bore", typed={"page": "41"}, who="Ann")
    installed["shed-engine"] = NEWER.replace("max 0.009 in", "max 0.008 in")
    row = Machine.objects.get()

    assert newer_starters(row) == ("shed-engine",)
    assert "end-float" not in own_text(row)[0]
    assert "bore" in own_text(row)[0]


def test_a_starter_whose_giving_was_undone_is_not_what_the_machine_has(whole):
    entry = given_whole(NEWER)
    undone = acts.undo(entry_id=entry.pk, who="Ann")
    assert own(Machine.objects.get()) == set()

    acts.undo(entry_id=undone.pk, who="Ann")
    assert own(Machine.objects.get()) == set()


def test_what_a_person_typed_into_the_whole_text_is_the_machines_own(whole):
    entry = given_whole(NEWER)
    DiaryEntry.objects.filter(pk=entry.pk).update(sent={"text": [NEWER]})

    assert "end-float" in own_text(Machine.objects.get())[0]


def test_another_starter_takes_the_place_of_the_own_book(red, installed):
    installed["other"] = NEWER.replace("book: shed-engine", "book: other")

    acts.change_book(machine="red", book_text=installed["other"], book_name="other", who="Ann")

    red.refresh_from_db()
    assert list(red.starters) == ["other"]
