"""What single entries of a book refuse, beside what the reader of whole books is tested for."""

import pytest
from pydantic import ValidationError

from shimstock.trade.machine.book import Link, Use
from shimstock.trade.machine.sheet import shown_path

MESH = {"driver-teeth": 40, "driven-teeth": 80, "pitch": 8}
LINK = {"name": "timing mesh", "figure": "lash", "hold": {"what": "crankshaft"}}


@pytest.mark.parametrize("way", [MESH, {"ratio": 2.5}])
def test_a_link_is_a_mesh_or_a_ratio(way):
    Link.model_validate({**LINK, **way})


@pytest.mark.parametrize(
    "way", [{}, {**MESH, "ratio": 2.5}, {"driver-teeth": 40}, {"ratio": 2.5, "driven-teeth": 80}]
)
def test_half_a_mesh_or_both_ways_at_once_is_no_link(way):
    with pytest.raises(ValidationError, match="or else ratio"):
        Link.model_validate({**LINK, **way})


@pytest.mark.parametrize("uses", [{}, {"count": 2}, {"gasket": "side", "seal": "ring"}])
def test_a_line_of_what_is_used_up_names_one_thing(uses):
    with pytest.raises(ValidationError, match="exactly one of gasket, seal"):
        Use.model_validate(uses)


@pytest.mark.parametrize(
    ("at", "said"), [(0, "1st"), (1, "2nd"), (2, "3rd"), (3, "4th"), (10, "11th"), (11, "12th"),
                     (12, "13th"), (20, "21st"), (21, "22nd")]
)  # fmt: skip
def test_places_in_a_list_are_counted_as_people_count(at, said):
    assert shown_path(("uses", at)) == f"uses > {said}"
