"""A figure corrected in the book judges what was read by it, and undone it is as it was."""

import pytest

from shimstock.trade.machine.sheet import BookErrors
from shimstock.trade.numbers.not_understood import HardlyMeant, NotUnderstood
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


def test_a_figure_far_from_the_books_is_asked_about_and_kept_where_it_is_meant(machine, do):
    slip = {"new": "57.500 .. 57.510", "limit": "max 57.600", "page": "41"}
    with pytest.raises(HardlyMeant, match=r"5\.7500 \.\. 5\.7510 in, max 5\.7600 in would do"):
        do.correct_figure(figure="bore", typed=slip)
    assert figure(machine).page is None

    do.correct_figure(figure="bore", typed=slip, meant=True)

    assert figure(machine).new.typed == "57.500 .. 57.510 in"
    do.take_reading(figure="bore", piece="1", typed=["57.55"] * 6)  # the range follows the figures


def test_the_range_that_the_book_prints_is_taken_away_with_what_was_meant(machine, do):
    text = TEXT.replace("    nominal: 5.7500 in", "    plausible: 5.70 .. 5.83 in")
    do.change_book(book_text=text)

    do.correct_figure(figure="bore", typed={"new": "6 .. 6.001", "limit": "6.01"}, meant=True)

    assert figure(machine).plausible is None


def test_a_book_far_from_its_starter_is_taken_and_the_diary_says_so(db):
    from shimstock.workshop import acts

    text = "book: mine\ntitle: Mine\nextends: two-cylinder-diesel\nfigures:\n  liner-bore:\n"
    said = acts.add_machine(
        slug="mine", name="Mine", book_text=f"{text}    new: 57.5 .. 57.51 in\n"
        "    limit: max 57.6 in\n", who="Ann",
    ).says  # fmt: skip
    assert said.endswith("look whether a digit slipped: Liner bore (F001).")

    near = f"{text}    new: 5.75 .. 5.751 in\n"
    assert "slipped" not in acts.change_book(machine="mine", book_text=near, who="Ann").says
