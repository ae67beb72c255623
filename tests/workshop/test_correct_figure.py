"""A figure corrected in the book judges what was read by it, and undone it is as it was."""

import pytest

from shimstock.trade.machine.sheet import BookErrors
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop.books import book_of
from shimstock.workshop.models import VerdictRow
from shimstock.workshop.refused import NotFound, Refused
from workshop.shed_book import LINER_1, TEXT


def figure(machine, key="bore"):
    machine.refresh_from_db()
    return book_of(machine).measures[key]


def bore_words():
    rows = VerdictRow.objects.filter(figure="bore", current=True)
    return {row.piece: row.verdict for row in rows}


def test_readings_are_judged_by_the_corrected_figure(machine, do):
    do.take_reading(figure="bore", piece="1", typed=LINER_1)
    assert bore_words() == {"1": "serviceable"}

    entry = do.correct_figure(figure="F1", typed={"limit": "max 5.7580 in", "page": "41"})

    assert bore_words() == {"1": "worn out"}
    assert figure(machine).page == 41
    assert not figure(machine).stand_in
    assert entry.says == (
        "Corrected liner bore (F1) in the book: limit max 5.7580 in (was max 5.7600 in), page 41; "
        "1 verdict changed with it."
    )


def test_undone_the_old_book_is_back_with_its_verdicts(machine, do):
    do.take_reading(figure="bore", piece="1", typed=LINER_1)
    entry = do.correct_figure(figure="bore", typed={"limit": "max 5.7580 in", "page": "41"})

    do.undo(entry)

    machine.refresh_from_db()
    assert machine.book_text == TEXT
    assert bore_words() == {"1": "serviceable"}


def test_only_the_page_is_typed_where_the_numbers_are_right(machine, do):
    entry = do.correct_figure(figure="bore", typed={"page": "41"}, note="second printing")

    assert "page 41 (second printing)" in entry.says
    assert figure(machine).limit[0].typed == "max 5.7600 in"


@pytest.mark.parametrize(
    ("typed", "wanted"),
    [
        ({"new": "5.7400 .. 5.7410"}, "5.7400 .. 5.7410 in"),
        ({"new": "146.05 .. 146.07 mm"}, "146.05 .. 146.07 mm"),
        ({"limit": "5.7610"}, "max 5.7610 in"),
        ({"limit": "max 5.7610, min 5.7490"}, "max 5.7610 in, min 5.7490 in"),
        ({"limit": ""}, ""),
    ],
)
def test_numbers_are_taken_in_the_unit_and_on_the_side_of_the_book(machine, do, typed, wanted):
    do.correct_figure(figure="bore", typed=typed)

    entry = figure(machine)
    said = entry.new.typed if "new" in typed else ", ".join(each.typed for each in entry.limit)
    assert said == wanted


@pytest.mark.parametrize(
    ("typed", "error", "says"),
    [
        ({"limit": "max 5.7000 in"}, BookErrors, "lies inside the new range"),
        ({"new": "5.7510 .. 5.7500 in"}, NotUnderstood, "the ends are swapped"),
        ({"new": "7 .. 8 lb"}, NotUnderstood, "is a length"),
        ({"limit": "max 6 in, max 7 in"}, NotUnderstood, "twice on one side"),
        ({"limit": "about six"}, NotUnderstood, "max or min"),
        ({"limit": "max 5.760 in"}, Refused, "says that of liner bore already"),
    ],
)
def test_what_no_book_can_say_is_refused_and_nothing_is_written(machine, do, typed, error, says):
    with pytest.raises(error, match=says):
        do.correct_figure(figure="bore", typed=typed)

    machine.refresh_from_db()
    assert machine.book_text == TEXT
    assert machine.diary.count() == 1


def test_a_figure_of_nobodys_book_is_not_found(do):
    with pytest.raises(NotFound):
        do.correct_figure(figure="bone", typed={"page": "1"})


def test_the_starters_stay_as_the_machine_keeps_them(db):
    from shimstock.workshop import acts
    from shimstock.workshop.models import Machine

    text = "book: mine\ntitle: Mine\nextends: two-cylinder-diesel\n"
    acts.add_machine(slug="mine", name="Mine", book_text=text, who="Ann")
    Machine.objects.filter(slug="mine").update(
        starters={
            name: kept.replace("name: Liner bore", "name: Bore as it was called then")
            for name, kept in Machine.objects.get(slug="mine").starters.items()
        }
    )

    acts.correct_figure(machine="mine", figure="fan-rock", typed={"page": "88"}, who="Ann")

    row = Machine.objects.get(slug="mine")
    assert row.book_text == f"{text}\nfigures:\n  fan-rock:\n    page: 88\n"
    assert any("as it was called then" in kept for kept in row.starters.values())
