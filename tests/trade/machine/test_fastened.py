"""A torque bears its page; without one it counts as a stand-in."""

import pytest

from shimstock.trade.machine.fastened import fastened_by, tightened
from shimstock.trade.machine.joints import Joint

COVER = {
    "name": "cover to case",
    "between": ["cover", "case"],
    "seals": "oil",
    "open": "10 min",
    "close": "15 min",
}


@pytest.mark.parametrize(
    ("page", "said"),
    [
        ({}, "12 bolts 3/8-16 UNC, 24 lbf.ft (stand-in)"),
        ({"page": 61}, "12 bolts 3/8-16 UNC, 24 lbf.ft (page 61)"),
    ],
)
def test_a_torque_says_whose_it_is(page, said):
    bolts = {"count": 12, "thread": "3/8-16 UNC", "torque": "24 lbf.ft", **page}
    joint = Joint.model_validate({**COVER, "fasteners": bolts})

    assert fastened_by(joint) == said
    assert said in tightened(joint)[0]


def test_where_the_book_gives_no_torque_nothing_is_to_be_tightened_by():
    joint = Joint.model_validate({**COVER, "fasteners": {"count": 2, "what": "clip"}})

    assert (fastened_by(joint), tightened(joint)) == ("2 clips", [])
