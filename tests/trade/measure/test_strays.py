"""A value that stands far from those beside it is asked about. Common practice, no source."""

import pytest

from shimstock.trade.machine.book import Figure
from shimstock.trade.measure.take import SlippedDigit, understand

LINER = Figure.model_validate(
    {
        "name": "Liner bore",
        "of": "liner",
        "new": "5.7500 .. 5.7512 in",
        "limit": "max 5.7600 in",
        "sizes": ["+0.020 in", "+0.040 in", "+0.060 in"],
        "nominal": "5.7500 in",
        "at": {"depths": ["top", "middle", "bottom"], "across": ["thrust", "pin"]},
        "with": "bore gauge",
    }
)
READ = ["5.7591", "5.7556", "5.7534", "5.7567", "5.7547", "5.7529"]


def with_one(at, value):
    return [value if place == at else each for place, each in enumerate(READ)]


def test_a_worn_bore_is_taken_as_it_is():
    assert understand("bore", LINER, READ).values[0] == 5.7591


def test_one_place_worn_far_beyond_the_limit_is_taken_as_it_is():
    """Half again the span of the figures above the others, and two digits changed would fit."""
    assert understand("bore", LINER, with_one(0, "5.7695")).values[0] == 5.7695


@pytest.mark.parametrize(
    ("at", "typed", "meant"), [(0, "5.7951", "5.7591 in"), (3, "5.7967", "5.7567 in")]
)
def test_two_digits_changed_within_what_is_plausible_are_asked_about(at, typed, meant):
    with pytest.raises(SlippedDigit, match="far from the others") as wrong:
        understand("bore", LINER, with_one(at, typed))

    assert wrong.value.typed == typed
    assert meant in wrong.value.would_do


def test_what_is_meant_is_kept():
    assert understand("bore", LINER, with_one(0, "5.7951"), meant=True).values[0] == 5.7951


def test_few_places_tell_nothing_of_each_other():
    assert understand("bore", LINER, ["5.7951", "5.7556", "5.7534", "-", "-", "-"]).values


def test_a_whole_bore_of_another_size_is_no_slip():
    bored = [f"{float(value) + 0.02:.4f}" for value in READ]

    assert understand("bore", LINER, bored).values[0] == pytest.approx(5.7791)
