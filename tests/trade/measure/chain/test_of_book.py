"""A train of the book as a chain: what counts, how it is said, and what to read next."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from shimstock.trade.machine.words import Stage, Verdict
from shimstock.trade.measure.chain.ways import WayTo
from shimstock.trade.measure.tip import own_readings, tip_readings
from shimstock.trade.measure.train import rock
from trade.measure.typed import diesel, read

BOOK = diesel()
WHOLE = ["0.36", "0.34", "0.36", "0.34"]
KEYED = diesel(
    """
figures:
  hub-key-play:
    name: Play of the governor hub on its key
    of: governor-gear
    new: 0.0000 .. 0.0005 in
    limit: max 0.0020 in
    with: dial gauge
trains:
  keyed:
    name: Camshaft to governor shaft, with the key
    figure: fan-rock
    links:
      - {name: Mesh, figure: governor-mesh-lash, ratio: 6.667, hold: {what: camshaft}}
      - {name: Hub on its key, figure: hub-key-play, ratio: 6.667, hold: {what: governor gear}}
"""
)
BARE = diesel(
    """
figures:
  bare-rock: {name: Rock, of: fan, unit: in}
  bare-play: {name: Play, of: fan, unit: in}
trains:
  bare:
    name: Bare
    figure: bare-rock
    links:
      - {name: Only, figure: bare-play, ratio: 1, hold: {what: shaft}}
"""
)


def rocked(holds, train="fan-drive", book=BOOK, **options):
    return rock(book, train, holds, **{"within": 0.02, **options})


@given(st.tuples(*[st.floats(0.005, 0.3)] * 3))
@settings(max_examples=40, deadline=None)
def test_what_is_likely_agrees_with_the_verdicts_by_holding(shares):
    held = [[f"{sum(shares[at:]):.4f}"] for at in range(3)]
    found = rocked(held, within=0.01)

    for link, play in zip(found.links, found.plays.links, strict=True):
        assert play.parted
        if link.verdict is Verdict.WORN_OUT:
            assert max(play.stands.over, play.stands.under) > 0.75
            assert play.state != "within"
        if link.verdict in (Verdict.GOOD, Verdict.SERVICEABLE):
            assert max(play.stands.over, play.stands.under) < 0.25
        assert play.working.disagreements() == []


def test_a_total_alone_calls_no_link_over():
    for total in ("0.35", "0.9", "3.0"):
        found = rocked([[total]])
        assert found.worn == () and found.plays.over == ()
        for play in found.plays.links:
            assert not play.parted
            assert play.chance.startswith("may be over its limit")
            assert "not parted from the others yet" in play.chance
        assert "worn" not in " ".join(f"{p.says} {p.chance}" for p in found.plays.links)


def test_however_likely_a_link_that_is_not_parted_is_only_possibly_over():
    found = rocked([["0.30"]], "keyed", KEYED)
    key = max(found.plays.links, key=lambda play: play.stands.over)

    assert key.stands.over > 0.75
    assert key.chance.startswith("may be over its limit")
    assert key.state == "unsure"


def test_readings_on_the_links_count_without_being_typed_again():
    readings = read(
        BOOK,
        **{"fan-rock": " ".join(WHOLE), "governor-mesh-lash": "0.030 0.030 0.029 0.030",
           "fan-bevel-lash": "0.010 0.010 0.011 0.010"},
    )  # fmt: skip
    own = own_readings(BOOK, "fan-drive", readings)
    tips = tip_readings(BOOK, "fan-drive", readings)
    found = rock(BOOK, "fan-drive", tips, own=own)

    assert set(own) == {"governor-mesh-lash", "fan-bevel-lash"}
    timing, governor, bevel = found.plays.links
    assert governor.state == "over" and bevel.state == "within"
    # each by its worst place, as it is judged; the first mesh has what is left:
    # (0.35 − 0.030·6.667 − 0.011·8.889)/6.667 = 0.0078
    assert timing.parted and timing.stands.likely == pytest.approx(0.0078, abs=0.0004)
    assert found.links[1].verdict is Verdict.NOT_MEASURED  # by holding, nothing is known yet


def test_readings_after_the_work_are_apart():
    readings = read(BOOK, **{"governor-mesh-lash": "0.030 0.030 0.029 0.030"})

    assert own_readings(BOOK, "fan-drive", readings, Stage.FINISHED) == {}


def test_a_figure_that_is_read_at_the_end_is_not_counted_twice():
    own = own_readings(
        BOOK, "fan-drive", read(BOOK, **{"governor-mesh-lash": "0.01 0.01 0.01 0.01"})
    )
    spindle = diesel(
        """
trains:
  one:
    name: One
    figure: governor-mesh-lash
    links: [{name: Mesh, figure: governor-mesh-lash, ratio: 1, hold: {what: camshaft}}]
"""
    )

    once = rock(spindle, "one", [["0.030"]])
    again = rock(spindle, "one", [["0.030"]], own=own)
    assert once.plays.links[0].stands == again.plays.links[0].stands


def test_the_next_reading_counts_what_is_open_already():
    far, near = WayTo(60, 80), WayTo(0, 0)
    shut = rocked([WHOLE], ways={"governor-side-cover": near, "crankcase-cover": far})
    other = rocked([WHOLE], ways={"governor-side-cover": far, "crankcase-cover": near})

    assert shut.plays.next.link == 2 and shut.plays.next.minutes == 5
    assert "hold the driving bevel" in shut.next_hold and "nothing to open" in shut.next_hold
    assert other.plays.next.link == 1 and "camshaft" in other.next_hold


def test_a_borderline_mesh_with_every_hold_read_is_measured_on_the_tooth():
    found = rocked([["0.3"], ["0.18333"], ["0.09"]], ways={"governor-gear": WayTo(5, 5)})

    assert not found.plays.next.at_end
    assert found.plays.next.link == 1
    assert "Lash of camshaft gear to governor gear, dial on tooth flank" in found.next_hold


@pytest.mark.parametrize("train", BOOK.trains)
def test_the_whole_is_read_before_anything_is_held(train):
    following = rock(BOOK, train, []).plays.next

    assert following.link == 0 and following.at_end
    assert following.says.startswith("Next: the whole, ")


def test_a_whole_within_its_limit_asks_for_nothing_to_be_opened():
    assert rocked([["0.20"]]).plays.next is None
    assert rocked([["0.28"]]).plays.next is not None  # ± 0.02: not proven


def test_a_key_and_its_hub_are_a_link_like_any_other():
    found = rocked([["0.20"], ["0.15"]], "keyed", KEYED, within=0.005)

    # 0.15/6.667 = 0.0225 in of slack on the key, (0.20 − 0.15)/6.667 = 0.0075 in in the mesh
    mesh, key = found.plays.links
    assert mesh.stands.likely == pytest.approx(0.0075, abs=0.0005)
    assert key.stands.likely == pytest.approx(0.0225, abs=0.0005)
    assert (mesh.state, key.state) == ("within", "over")


def test_a_link_without_a_limit_has_an_even_share_of_the_whole():
    found = rock(BOOK, "left-brake-linkage", [["2.9"], ["1.9"]])
    shoes, rod = found.plays.links

    assert shoes.shared and shoes.limit == pytest.approx(1.25)  # 2.5 in among two
    assert (shoes.state, rod.state) == ("within", "over")
    assert "over its even share of 1.25 in" in rod.chance


def test_a_gasket_in_the_play_itself_adds_its_whole_thickness():
    found = rock(BOOK, "governor-end-float", [["0.022"]], gasket_found="0.015 in")  # book: 0.010
    fitted, inner, outer = found.plays.links

    assert fitted.stands.likely - fitted.right.likely == pytest.approx(0.005, abs=0.0003)
    assert inner.right == inner.stands and outer.right == outer.stands


def test_an_end_float_is_its_fit_and_the_wear_of_both_faces():
    readings = read(BOOK, **{"left-thrust-wear": "0.0060", "right-thrust-wear": "0.0010"})
    own = own_readings(BOOK, "crankshaft-end-float", readings)
    found = rock(BOOK, "crankshaft-end-float", [["0.0150"]], own=own)
    fitted, left, right = found.plays.links

    # by hand: 0.0150 − 0.0060 − 0.0010 = 0.0080 in as fitted, within 0.005 to 0.010
    assert fitted.parted and fitted.stands.likely == pytest.approx(0.0080, abs=0.0004)
    assert (left.state, right.state) == ("over", "within")


def test_where_the_book_has_no_limit_it_says_what_to_type():
    found = rocked([["0.1"]], "bare", BARE)

    assert found.plays.links == ()
    assert "type a limit for each link, or for Rock" in found.plays.trouble


def test_readings_that_contradict_each_other_are_named():
    found = rocked([["0.20"], ["0.29"], ["0.09"]])

    assert found.plays.links == ()
    assert "does not fit the other readings" in found.plays.trouble


def test_a_linkage_of_several_pieces_is_read_piece_by_piece():
    readings = read(BOOK, **{"pedal-free-travel left": "1.6", "pedal-free-travel right": "2.9"})
    (left, _), (right, _) = (
        tip_readings(BOOK, f"{side}-brake-linkage", readings) for side in ("left", "right")
    )

    assert (left.values, right.values) == ((1.6,), (2.9,))


@pytest.mark.parametrize("train", BOOK.trains)
def test_every_chain_of_the_starter_can_be_weighed(train):
    found = rock(BOOK, train, [])

    assert len(found.plays.links) == len(BOOK.trains[train].links)
    assert all(0 < play.stands.over < 0.5 for play in found.plays.links)
