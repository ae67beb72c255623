import pytest
from hypothesis import given
from hypothesis import strategies as st

from published.as_printed import as_printed
from shimstock.trade.measure.machining import next_size
from trade.measure.figures import BORE, JOURNAL, figure

DRUM = figure(
    new="10.000 .. 10.010 in",
    limit="max 10.060 in",
    sizes=["+0.020 in", "+0.040 in", "+0.060 in"],
    nominal="10.000 in",
)


@pytest.mark.parametrize(
    ("of", "worst", "size"),
    [
        (BORE, 5.7592, 0.020),
        (BORE, 5.7660, 0.020),  # exactly the allowance of 0.004 left
        (BORE, 5.7661, 0.040),
        (BORE, 5.7861, 0.060),
        (JOURNAL, 3.7458, -0.010),
        (JOURNAL, 3.7440, -0.010),  # the book gives no allowance: 0.004 in, common practice
        (JOURNAL, 3.7439, -0.020),
        (JOURNAL, 3.7430, -0.020),
        (DRUM, 10.022, 0.040),
        (DRUM, 10.012, 0.020),
    ],
)
def test_the_smallest_size_that_cleans_up(of, worst, size):
    worked = next_size(of, worst)

    assert worked.value.size == pytest.approx(size)
    assert worked.working.disagreements() == []


def test_clean_up_of_each_size_is_shown():
    shown = next_size(BORE, 5.7661).working

    assert (shown.value("C_1"), shown.value("C_2")) == (as_printed("0.0039"), as_printed("0.0239"))


@pytest.mark.parametrize(("of", "worst"), [(BORE, 5.8070), (JOURNAL, 3.7210), (DRUM, 10.037)])
def test_nothing_big_enough_means_a_sleeve_or_a_new_part(of, worst):
    worked = next_size(of, worst)

    assert worked.value is None
    assert "sleeve or a new part" in worked.working.shown()[-1]
    assert worked.working.disagreements() == []


def test_a_drum_is_never_turned_to_its_limit():
    assert next_size(DRUM, 10.037).value is None


def test_without_an_allowance_in_the_book_the_trades_is_taken_and_said():
    assert any(
        "common practice, no source" in line for line in next_size(DRUM, 10.0).working.shown()
    )


@given(st.floats(5.75, 5.80), st.floats(0, 0.05))
def test_a_more_worn_bore_never_gets_a_smaller_size(worst, more):
    first, second = next_size(BORE, worst).value, next_size(BORE, worst + more).value

    assert second is None or (first is not None and first.size <= second.size)
