"""What came off a joint against what the book has; how far off is common practice, no source."""

import pytest

from shimstock.trade.numbers.not_understood import HardlyMeant
from shimstock.trade.numbers.quantity import parse
from shimstock.trade.reach.came_off import refuse_more_than_came_off, refuse_unlikely
from trade.reach.small import machine

COVER = machine().book.joints["cover-face"]  # 12 bolts, a gasket of 0.015 in
HOOD = machine().book.joints["hood-bolts"]


def inches(typed):
    return parse(typed, unit="in", what="a gasket")


@pytest.mark.parametrize("bolts", [None, 0, 11, 12])
@pytest.mark.parametrize("typed", ["0.015 in", "0.060 in", "1.5 mm", "0.00375 in"])
def test_what_may_be_is_not_asked_about(bolts, typed):
    refuse_unlikely(COVER, bolts=bolts, thickness=inches(typed))


def test_more_bolts_than_the_book_has_are_asked_about():
    with pytest.raises(HardlyMeant, match="13 came off where the book has 12: ") as asked:
        refuse_unlikely(COVER, bolts=13)

    assert (asked.value.typed, asked.value.would_do) == ("13", ("12",))
    assert asked.value.wrong.endswith("If it is meant, say so")


# 3 mm is 0.118 in, nearly eight times 0.015 in; 1.6 mm is 0.063 in, 4.2 times.
@pytest.mark.parametrize("typed", ["3 mm", "1.6 mm", "15", "0.061 in", "0.0037 in", "0.09 mm"])
def test_a_gasket_far_off_the_book_is_asked_about(typed):
    with pytest.raises(HardlyMeant, match=r"of old gasket where the book has 0\.015 in") as asked:
        refuse_unlikely(COVER, thickness=inches(typed))

    assert (asked.value.typed, asked.value.would_do) == (typed, ("0.015 in",))


def test_both_are_asked_about_at_once_so_that_meant_covers_nothing_unsaid():
    with pytest.raises(HardlyMeant) as asked:
        refuse_unlikely(COVER, bolts=13, thickness=inches("3 mm"))

    assert "12, and 3 mm of old gasket where the book has 0.015 in" in asked.value.wrong
    assert asked.value.would_do == ("12 and 0.015 in",)


def test_what_the_book_does_not_say_is_not_asked_about():
    bare = HOOD.model_copy(update={"fasteners": (), "uses": ()})

    refuse_unlikely(bare, bolts=40, thickness=inches("1 in"))


@pytest.mark.parametrize(("came_off", "counted"), [(1, 1), (12, 11), (0, 2), (None, 3), (3, None)])
def test_as_many_as_came_off_or_fewer_are_not_asked_about(came_off, counted):
    refuse_more_than_came_off(came_off, counted)


def test_more_than_came_off_are_asked_about():
    with pytest.raises(HardlyMeant, match="counted where 1 came off: ") as asked:
        refuse_more_than_came_off(1, 3)

    assert (asked.value.typed, asked.value.would_do) == ("3", ("1",))
