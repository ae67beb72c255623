import pytest

from shimstock.trade.machine.sheet import BookErrors
from shimstock.workshop import acts
from shimstock.workshop.books import book_of
from shimstock.workshop.models import DiaryEntry, Machine
from shimstock.workshop.refused import Refused
from workshop.shed_book import LINER_1, TEXT


def test_a_machine_is_booked_in_with_its_whole_book(machine):
    entry = DiaryEntry.objects.get()

    assert machine.book_text == TEXT
    assert book_of(machine).joints["cover-joint"].name == "side cover to case"
    assert (entry.act, entry.who, entry.machine) == ("add machine", "Ann", machine)
    assert entry.says == "Booked in The grey one, made to Shed engine (invented)."
    assert entry.after[f"machine:{machine.pk}"]["name"] == "The grey one"


@pytest.mark.parametrize(
    ("slug", "name", "reason"),
    [
        ("grey", "Another", "is here already"),
        ("Big One", "Big one", "cannot be a short name"),
        ("big", " ", "has no name"),
    ],
)
def test_a_machine_needs_names_of_its_own(machine, slug, name, reason):
    with pytest.raises(Refused, match=reason):
        acts.add_machine(slug=slug, name=name, book_text=TEXT, who="Ann")
    assert Machine.objects.count() == 1


def test_a_faulty_book_is_refused_and_nothing_is_kept_of_it(db):
    with pytest.raises(BookErrors):
        acts.add_machine(slug="grey", name="Grey", book_text="book: x\n", who="Ann")
    assert not Machine.objects.exists()
    assert not DiaryEntry.objects.exists()


def test_nobody_is_no_answer_to_who(machine):
    with pytest.raises(Refused, match="say who"):
        acts.open_joint(machine=machine, joint="J1", who=" ")


def test_a_better_book_judges_all_readings_anew(machine, do):
    do.take_reading(figure="bore", piece="1", typed=LINER_1)
    before = machine.verdicts.get(figure="bore", current=True)

    entry = do.change_book(book_text=TEXT.replace("max 5.7600 in", "max 5.7580 in"))

    machine.refresh_from_db()
    after = machine.verdicts.get(figure="bore", current=True)
    assert (before.verdict, after.verdict) == ("serviceable", "worn out")
    assert entry.says == "Changed the book; 1 verdict changed with it."
    do.undo(entry)
    machine.refresh_from_db()
    assert machine.book_text == TEXT
    assert machine.verdicts.get(figure="bore", current=True) == before


def test_a_book_that_forgets_what_is_written_down_is_refused(machine, do):
    do.take_reading(figure="end-float", typed="0.006")
    lines = TEXT.replace("figures: [end-float]", "figures: []").splitlines()
    at = lines.index("  end-float:")
    without = "\n".join(lines[:at] + lines[at + 7 :])

    with pytest.raises(Refused, match="figure 'end-float' has something written down"):
        do.change_book(book_text=without)


@pytest.mark.parametrize(
    ("line", "act", "given"),
    [
        ("  crank: {name: Crank, sits-on: case}\n  liner:", "move_piece", {"to": "off"}),
        (
            "  crank: {name: crank to case, between: [hood, case], seals: nothing, open: 5 min, "
            "close: 5 min}\n  sump-joint:",
            *("open_joint", {}),
        ),
    ],
)
def test_a_book_that_forgets_a_part_or_joint_that_was_touched_is_refused(do, line, act, given):
    what = "part" if act == "move_piece" else "joint"
    with_crank = TEXT.replace(f"  {line.rpartition('  ')[2]}", line, 1)
    do.change_book(book_text=with_crank)
    getattr(do, act)(**{what: "crank"}, **given)

    with pytest.raises(Refused, match=f"{what} 'crank' has something written down"):
        do.change_book(book_text=TEXT)


def test_a_booking_in_can_be_undone_and_that_too(machine, do):
    booked = DiaryEntry.objects.get()

    undone = do.undo(booked)

    assert Machine.objects.get().withdrawn
    do.undo(undone)
    assert not Machine.objects.get().withdrawn


def test_a_booking_in_stands_while_something_is_done_to_the_machine(machine, do):
    booked = DiaryEntry.objects.get()
    opened = do.open_joint(joint="J1")

    with pytest.raises(Refused, match=f"undo {opened.pk}"):
        do.undo(booked)


GRID = "at: {depths: [top, middle, bottom], across: [thrust, pin]}"


@pytest.mark.parametrize(
    "grid",
    [
        "at: {depths: [top, bottom], across: [thrust, pin]}",
        "at: {depths: [top, bottom], across: [thrust, slanting, pin]}",
        "at: {depths: [bottom, middle, top], across: [thrust, pin]}",
    ],
)
def test_a_book_that_would_lay_readings_on_other_places_is_refused(machine, do, grid):
    do.take_reading(figure="bore", piece="1", typed=LINER_1)

    with pytest.raises(Refused, match="liner bore was read at thrust top, thrust middle"):
        do.change_book(book_text=TEXT.replace(GRID, grid))


def test_places_under_better_names_are_the_same_places(machine, do):
    do.take_reading(figure="bore", piece="1", typed=LINER_1)

    do.change_book(book_text=TEXT.replace("[thrust, pin]", "[across, along]"))


def test_a_book_that_measures_something_else_is_refused(machine, do):
    do.take_reading(figure="end-float", typed="0.006")
    other = TEXT.replace(
        "new: 0.004 .. 0.008 in\n    limit: max 0.012 in\n    with: dial",
        "new: 20 .. 30 psi\n    limit: max 40 psi\n    with: test",
    )

    with pytest.raises(Refused, match="end float was read as a length"):
        do.change_book(book_text=other)


def test_the_makers_page_is_seen_in_what_was_judged_before(machine, do):
    took = do.take_reading(figure="end-float", typed="0.015")
    assert took.verdicts[0].data["stand_in"]

    do.change_book(
        book_text=TEXT.replace(
            "    limit: max 0.012 in\n",
            "    limit: max 0.012 in\n    page: 41\n    if-outside: new thrusts\n",
        )
    )

    data = machine.verdicts.get(figure="end-float", current=True).data
    assert (data["stand_in"], data["remedy"]) == (False, "new thrusts")
    assert "stand-in" not in str(data["working"])
