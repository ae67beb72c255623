"""The chart of a worn bore."""

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from shimstock.faces.paper.wear_chart import Bore, Mark, Trace, wear_chart

# The liner of an invented machine, read at three depths in two directions.
FOUND = (
    Trace("as found, thrust", 0, False, (5.7592, 5.7554, 5.7532)),
    Trace("as found, pin", 1, False, (5.7568, None, 5.7528)),
)
FINISHED = (Trace("as finished, thrust", 0, True, (5.7701, 5.7700, 5.7699)),)
BORE = Bore(
    title="liner bore, 1",
    along="down the bore",
    unit="in",
    decimals=4,
    depths=("top", "middle", "bottom"),
    traces=FOUND,
    new=(5.7500, 5.7510),
    limits=(Mark("wear limit 5.7600 in", 5.76),),
    next_size=Mark("next size +0.020 in: 5.7700 in", 5.77),
)


def words(svg: str) -> list[str]:
    return [(element.text or "").strip() for element in ElementTree.fromstring(svg).iter()]


def chart(bore: Bore) -> str:
    return wear_chart(bore, width=240, height=230)


def test_the_chart_says_what_its_lines_are():
    assert {
        "liner bore, 1",
        "top",
        "middle",
        "bottom",
        "new",
        "wear limit 5.7600 in",
        "next size +0.020 in: 5.7700 in",
        "as found, thrust",
        "as found, pin",
        "down the bore",
    } <= set(words(chart(BORE)))


def test_the_top_of_the_bore_is_at_the_top_of_the_page():
    at = {
        element.text: float(re.findall(r"[\d.]+", element.attrib["transform"])[-1])
        for element in ElementTree.fromstring(chart(BORE)).iter()
        if (element.text or "") in BORE.depths and "transform" in element.attrib
    }

    assert at["top"] < at["middle"] < at["bottom"]


def test_what_was_bored_to_another_size_has_a_pane_of_its_own():
    both = words(chart(replace(BORE, traces=(*FOUND, *FINISHED))))

    assert {"as found, in", "as finished, in"} <= set(both)
    assert both.count("next size +0.020 in: 5.7700 in") == 1


def test_what_was_finished_to_the_same_size_shares_the_pane():
    near = Trace("as finished, thrust", 0, True, (5.7595, 5.7594, 5.7593))
    seen = words(chart(replace(BORE, traces=(*FOUND, near), next_size=None)))

    assert "as finished, in" not in seen
    assert {"as found, thrust", "as finished, thrust"} <= set(seen)


def test_directions_differ_without_colour():
    dashed = re.findall(r"stroke-dasharray: [\d., ]+", chart(replace(BORE, next_size=None)))

    assert dashed


@pytest.mark.parametrize("bare", [{"new": None}, {"limits": ()}, {"next_size": None}])
def test_what_the_book_does_not_give_is_left_out(bare):
    assert "as found, thrust" in words(chart(replace(BORE, **bare)))


def test_the_same_readings_give_the_same_picture():
    assert chart(BORE) == chart(BORE)


def test_the_number_at_the_right_end_has_room_inside_the_chart():
    from matplotlib.figure import Figure

    from shimstock.faces.paper.lettering import width_of
    from shimstock.faces.paper.wear_chart import SIZE, _right_end

    wide = 240.0
    figure = Figure(figsize=(wide / 72, 3))
    beyond = wide * (1 - _right_end(figure, BORE))

    assert beyond > width_of("5.7700", SIZE) / 2
