"""A fan that rocks too far: which mesh is worn, found by holding one shaft after another.

The numbers are an invented machine's; the rules are common practice, no source.
"""

import pytest

from published.as_printed import as_printed
from shimstock.trade.machine.words import Verdict
from shimstock.trade.measure.predicted import after_repair
from shimstock.trade.measure.remedies import remedies
from shimstock.trade.measure.remedy import What
from shimstock.trade.measure.tip import tip_readings
from shimstock.trade.measure.train import rock
from shimstock.trade.measure.verdicts import verdicts
from shimstock.trade.measure.words import word_of
from trade.measure.typed import diesel, disagreements, read

BOOK = diesel()
CRANK_HELD = ["0.36", "0.34", "0.36", "0.34"]
CAMSHAFT_HELD = ["0.290"]
BEVEL_HELD = ["0.090"]
ALL = (CRANK_HELD, CAMSHAFT_HELD, BEVEL_HELD)
TIMING, GOVERNOR, BEVEL = range(3)


def rocked(holds=ALL, **options):
    return rock(BOOK, "fan-drive", holds, **options)


@pytest.mark.parametrize(
    ("link", "printed", "verdict"),
    [
        (TIMING, "0.0090", Verdict.SERVICEABLE),
        (GOVERNOR, "0.0300", Verdict.WORN_OUT),
        (BEVEL, "0.0101", Verdict.SERVICEABLE),
    ],
)
def test_three_rocks_part_the_play_among_the_meshes(link, printed, verdict):
    found = rocked(within=0.005).links[link]

    assert found.judged.value == as_printed(printed)
    assert found.verdict is verdict
    assert found.judged.working.disagreements() == []


def test_the_total_is_over_but_calls_nothing_worn():
    total = rocked(within=0.02).total

    assert total.value == as_printed("0.350")
    assert total.beyond
    assert total.verdict is not Verdict.WORN_OUT
    assert "worn" not in total.says


def test_a_reading_error_at_the_tip_leaves_the_governor_mesh_certain():
    judged = rocked(within=0.02).links[GOVERNOR].judged

    assert judged.expanded == as_printed("0.004")
    assert judged.verdict is Verdict.WORN_OUT


def test_at_0_014_the_same_error_makes_it_borderline():
    # 0.014 in of lash moves the tip by 0.0933 in: 0.014/2·1.333·10.
    found = rocked((["0.3"], ["0.18333"], ["0.09"]), within=0.02).links[GOVERNOR]

    assert found.judged.value == as_printed("0.0140")
    assert found.verdict is Verdict.BORDERLINE
    assert "Measure on the tooth" in found.says


def test_the_thick_gasket_does_not_explain_it():
    found = rocked(within=0.02, gasket_found="0.030 in").links[GOVERNOR]

    added = [share.added for share in found.gasket]
    left = [share.left for share in found.gasket]
    assert added == [as_printed("0.0078"), as_printed("0.0109")]
    assert left == [as_printed("0.0222"), as_printed("0.0191")]
    assert found.verdict is Verdict.WORN_OUT
    assert "still over, so the gear pair is worn" in found.says
    assert [t for share in found.gasket for t in share.judged.working.disagreements()] == []


def test_a_gasket_that_explains_it_is_put_right_before_the_gears():
    found = rocked((["0.24"], ["0.18"], ["0.09"]), within=0.002, gasket_found="0.030 in")

    assert found.links[GOVERNOR].judged.verdict is Verdict.WORN_OUT
    assert found.links[GOVERNOR].verdict is Verdict.BORDERLINE
    assert "right gasket" in found.links[GOVERNOR].says


def test_hub_and_key_are_looked_at_first():
    look = rocked(within=0.02).links[GOVERNOR].look_first

    assert "hub and key" in look[0]


def test_after_the_repair_the_tip_moves_as_predicted():
    found = rocked(within=0.02)
    worked = after_repair(BOOK, "fan-drive", found, {"governor-mesh-lash": 0.005})

    assert worked.value == as_printed("0.183")
    assert worked.working.disagreements() == []


def test_from_one_end_only_nothing_is_called_worn():
    found = rocked((CRANK_HELD,), within=0.02)

    assert found.total.beyond
    assert found.worn == ()
    assert {link.verdict for link in found.links} == {Verdict.NOT_MEASURED}
    assert found.links[GOVERNOR].most == as_printed("0.0525")  # 0.350/10/1.333·2: all of it here
    assert "driving bevel" in found.next_hold
    assert "15 min to open" in found.next_hold


def test_one_more_hold_parts_one_link_from_the_other_two():
    found = rocked((CRANK_HELD, None, BEVEL_HELD), within=0.005)

    assert found.links[BEVEL].verdict is Verdict.SERVICEABLE
    assert found.links[GOVERNOR].verdict is Verdict.NOT_MEASURED
    assert "camshaft" in found.next_hold


def test_the_holds_can_be_read_as_figures_of_the_book():
    typed = {
        "fan-rock": " ".join(CRANK_HELD),
        "fan-rock-camshaft-held": "0.290",
        "fan-rock-bevel-held": "0.090",
    }
    readings = read(BOOK, **typed)
    found = rock(BOOK, "fan-drive", tip_readings(BOOK, "fan-drive", readings))

    assert found.links[GOVERNOR].judged.value == as_printed("0.0300")
    assert found.links[GOVERNOR].verdict is Verdict.WORN_OUT
    judged = verdicts(BOOK, readings)
    assert judged.latest("fan-rock").verdict is Verdict.BORDERLINE
    assert judged.latest("fan-rock").beyond
    assert disagreements(judged) == []


def test_the_whole_over_its_limit_is_neither_worn_nor_borderline_in_words():
    """A total calls no gear worn, and no gauge is in doubt; the chance agrees with the word."""
    whole = verdicts(BOOK, read(BOOK, **{"fan-rock": " ".join(CRANK_HELD)})).latest("fan-rock")

    assert word_of(BOOK.measures["fan-rock"], whole.verdict, whole.says) == "too much in all"
    assert whole.p_within < 0.01
    assert "borderline" not in whole.says
    assert "worn" not in whole.says
    assert "Hold one shaft after another" in whole.settles


def test_once_the_holds_are_read_nothing_is_to_be_held_again():
    typed = {"fan-rock": " ".join(CRANK_HELD), "fan-rock-camshaft-held": "0.290"}
    some = verdicts(BOOK, read(BOOK, **typed)).latest("fan-rock")
    typed["fan-rock-bevel-held"] = "0.090"
    judged = verdicts(BOOK, read(BOOK, **typed))
    whole = judged.latest("fan-rock")

    assert "Hold one shaft after another" in some.settles
    assert "parted from the others: Crankshaft gear to camshaft gear" in some.says
    assert (whole.settles, whole.remedy) == ("", "")
    assert "each of its places is told from the others" in whole.says
    assert not [r for r in remedies(BOOK, judged, {}) if "fan-rock" in r.figures]


def test_what_a_gasket_leaves_is_told_from_small_to_large():
    says = rocked(within=0.02, gasket_found="0.030 in").links[GOVERNOR].says

    assert "adds 0.0078 in to 0.0109 in of it, which leaves 0.0191 in to 0.0222 in" in says


def test_with_a_worn_mesh_the_tip_after_the_repair_is_told_beside_it():
    found = rocked(within=0.02)

    # 0.0045 in, the middle of new, moves the tip 0.0045/2·1.333·10 = 0.030; 0.350 − 0.200 + 0.030
    assert found.expected.value == as_printed("0.180")
    assert found.expected.working.disagreements() == []
    again = after_repair(BOOK, "fan-drive", found, {"governor-mesh-lash": 0.0045})
    assert found.expected.value == pytest.approx(again.value)


def test_where_nothing_is_worn_no_repair_is_told():
    assert rocked((["0.24"], ["0.18"], ["0.09"]), within=0.02).expected is None


def test_a_worn_mesh_asks_for_both_its_gears():
    readings = read(BOOK, **{"timing-mesh-lash": "0.004 0.004 0.004 0.004"})
    judged = verdicts(BOOK, readings)
    found = remedies(BOOK, judged, {}, trains={"fan-drive": rocked(within=0.02)})

    pair = next(each for each in found if "governor-mesh-lash" in each.figures)
    assert pair.what is What.PUT_RIGHT and pair.blocks
    assert pair.pieces == (("camshaft-gear", ""), ("governor-gear", ""))
    assert "camshaft gear" in pair.says and "governor gear" in pair.says
    assert "pair" in pair.says
    assert not again(found) & set(pair.pieces)

    alone = remedies(BOOK, judged, {})
    assert ("camshaft-gear", "") in again(alone)  # what the train adds


def test_a_doubtful_mesh_keeps_its_gears_from_use():
    readings = read(BOOK, **{"timing-mesh-lash": "0.004 0.004 0.004 0.004"})
    borderline = rocked((["0.3"], ["0.18333"], ["0.09"]), within=0.02)
    found = remedies(BOOK, verdicts(BOOK, readings), {}, trains={"fan-drive": borderline})

    doubtful = next(each for each in found if "governor-mesh-lash" in each.figures)
    assert doubtful.what is What.MEASURE_AGAIN
    assert ("camshaft-gear", "") not in again(found)


def again(found):
    return {key for each in found if each.what is What.USE_AGAIN for key in each.pieces}


def test_three_rocks_make_the_governor_mesh_certain_with_its_interval():
    timing, governor, bevel = rocked(within=0.02).plays.links

    assert governor.stands.low < 0.0300 < governor.stands.high
    assert governor.stands.high - governor.stands.low < 2 * 0.004
    assert governor.state == "over" and governor.chance.startswith("over its limit of 0.0120 in")
    assert timing.stands.over < 0.25 and bevel.state == "within"


def test_from_the_total_alone_no_link_is_more_than_possibly_over():
    found = rocked((CRANK_HELD,), within=0.02)

    for play in found.plays.links:
        assert 0.1 < play.stands.over < 0.9
        assert play.chance.startswith("may be over its limit")
    said = " ".join(f"{play.says} {play.chance}" for play in found.plays.links) + found.next_hold
    assert "worn" not in said


def test_at_0_014_it_is_only_probably_over_and_the_tooth_is_next():
    found = rocked((["0.3"], ["0.18333"], ["0.09"]), within=0.02)

    assert found.plays.links[GOVERNOR].state == "unsure"
    assert found.plays.links[GOVERNOR].chance.startswith("probably over its limit")
    assert "dial on tooth flank" in found.next_hold


def test_with_the_right_gasket_it_is_likely_what_either_pressure_angle_leaves():
    play = rocked(within=0.005, gasket_found="0.030 in").plays.links[GOVERNOR]

    # 0.0191 at 20°, 0.0222 at 14.5°, each ± 0.001 by the readings: 1.645/2·√2·0.005/6.667/2 …
    assert 0.0191 - 0.0012 < play.right.low < play.right.high < 0.0222 + 0.0012
    assert play.right.over > 0.99
