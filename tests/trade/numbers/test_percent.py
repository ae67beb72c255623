"""Chances in whole per cents: never surer than they are, and worded in one room only."""

import re
from pathlib import Path

import pytest

import shimstock
from shimstock.trade.numbers.percent import percent, percent_between, percent_or_settled

SAID = [
    (1e-12, "under 1 %"),
    (0.004, "under 1 %"),
    (0.00999, "under 1 %"),
    (0.01, "1 %"),
    (0.347, "35 %"),
    (0.99, "99 %"),
    (0.9901, "over 99 %"),
    (1 - 1e-12, "over 99 %"),
]


@pytest.mark.parametrize(("chance", "says"), [*SAID, (0.0, "under 1 %"), (1.0, "over 99 %")])
def test_a_chance_is_never_said_to_be_surer_than_it_is(chance, says):
    """An uncertainty that rounds to none or all is none of them."""
    assert percent(chance) == says


@pytest.mark.parametrize(("chance", "says"), [*SAID, (0, "ruled out"), (1, "certain")])
def test_what_somebody_settled_is_said_to_be_so(chance, says):
    assert percent_or_settled(chance) == says


@pytest.mark.parametrize(
    ("low", "high", "says"),
    [(0.12, 0.4, "12 to 40 %"), (0.0, 0.02, "under 1 to 2 %"), (0.9, 1.0, "90 to over 99 %")],
)
def test_an_interval_ends_no_surer_than_it_is(low, high, says):
    assert percent_between(low, high) == says


def test_no_other_room_words_a_chance():
    """No {:.0%}, and no hundred times something with % behind it; a share that we chose may be."""
    worded = re.compile(r":\.\d%\}|\{100 \* [a-z][^{}]*\} ?%|\{[a-z][^{}]* \* 100[^{}]*\} ?%")
    rooms = sorted(Path(shimstock.__file__).parent.rglob("*.py"))

    assert [each for each in rooms if worded.search(each.read_text())] == []
    for old in ("{p:.0%}", "{100 * chance:.0f} %", "{chance * 100:.1f} %"):
        assert worded.search(old)
