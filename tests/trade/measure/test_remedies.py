import pytest

from shimstock.trade.machine.state import PieceNow
from shimstock.trade.machine.words import PartWord, Stage
from shimstock.trade.measure.remedies import remedies
from shimstock.trade.measure.remedy import What
from shimstock.trade.measure.verdicts import verdicts
from trade.measure.typed import diesel, read

BOOK = diesel()
THROWS = ["3.7480"] * 11


def what_to_do(pieces=None, **typed):
    return remedies(BOOK, verdicts(BOOK, read(BOOK, **typed)), pieces or {})


def about(figure, found):
    return [each for each in found if figure in each.figures]


def test_journals_are_ground_to_one_undersize_and_wait_for_the_shells():
    typed = " ".join([*THROWS, "3.7450"])
    (remedy,) = about("rod-journal", what_to_do(**{"rod-journal": typed}))

    assert remedy.says.startswith("grind")
    assert remedy.size == "−0.010 in"
    assert any("not in hand" in reason for reason in remedy.held)

    in_hand = {
        ("rod-shells", piece): PieceNow(PartWord.IN_HAND, size="-0.010 in")
        for piece in BOOK.parts["rod-shells"].instances
    }
    (remedy,) = about("rod-journal", what_to_do(in_hand, **{"rod-journal": typed}))
    assert remedy.held == ()


def test_a_worn_main_journal_is_not_cured_by_the_rods():
    mains = " ".join(["4.4980"] * 11 + ["4.4900"])
    typed = {"rod-journal": " ".join([*THROWS, "3.7480"]), "main-journal": mains}
    machined = [each for each in what_to_do(**typed) if each.what is What.MACHINE]

    assert [each.figures[0] for each in machined] == ["main-journal"]


def test_outside_the_limit_the_books_own_words_are_given():
    (remedy,) = about("lift-pressure", what_to_do(**{"lift-pressure": "3"}))

    assert remedy.what is What.PUT_RIGHT
    assert "overhaul the pump" in remedy.says


def test_borderline_means_measure_again_with_what_would_settle_it():
    (remedy,) = about("lift-pressure", what_to_do(**{"lift-pressure": "5"}))

    assert remedy.what is What.MEASURE_AGAIN


def test_a_setting_is_set():
    (remedy,) = about("slow-idle", what_to_do(**{"slow-idle": "705"}))

    assert remedy.what is What.SET
    assert not remedy.blocks


def test_pieces_of_two_sizes_in_a_set_that_must_be_alike_are_no_pair():
    mixed = {
        ("piston", "1"): PieceNow(PartWord.IN_HAND, size="+0.020 in"),
        ("piston", "2"): PieceNow(PartWord.IN_HAND, size="+0.040 in"),
    }

    (remedy,) = [each for each in what_to_do(mixed) if each.what is What.NOT_A_PAIR]
    assert remedy.blocks
    assert "of two sizes" in remedy.because[0]


def test_a_part_wholly_read_and_within_its_limits_is_used_again():
    figures = [key for key, each in BOOK.measures.items() if each.of == "lift-pump"]
    assert figures == ["lift-pressure"]

    (remedy,) = [
        each
        for each in what_to_do(**{"lift-pressure": "10"})
        if each.what is What.USE_AGAIN and each.part == "lift-pump"
    ]
    assert remedy.pieces == (("lift-pump", ""),)


def test_the_most_binding_comes_first():
    found = what_to_do(**{"pump-delivery": "24.2 21.6", "lift-pressure": "10", "slow-idle": "705"})
    kinds = [list(What).index(each.what) for each in found]

    assert kinds == sorted(kinds)
    assert found[0].what is What.NOT_A_PAIR


@pytest.mark.parametrize("typed", ["24.2 21.6", "21.6 24.2"])
def test_a_pump_under_its_limit_is_still_told_beside_the_pair(typed):
    found = about("pump-delivery", what_to_do(**{"pump-delivery": typed}))

    assert [each.what for each in found] == [What.NOT_A_PAIR, What.PUT_RIGHT]


def test_every_working_agrees():
    typed = {
        "liner-bore 1": "5.7592 5.7554 5.7532 5.7568 5.7546 5.7528",
        "liner-bore 2": "5.7560 5.7542 5.7524 5.7550 5.7538 5.7522",
        "pump-delivery": "24.2 21.6",
        "lift-pressure": "3",
        "slow-idle": "705",
    }
    assert [
        text
        for each in what_to_do(**typed)
        for working in each.workings
        for text in working.disagreements()
    ] == []


SIX_1 = "5.7592 5.7554 5.7532 5.7568 5.7546 5.7528"
SIX_2 = "5.7560 5.7542 5.7524 5.7550 5.7538 5.7522"
BORED = "5.7701 5.7700 5.7700 5.7700 5.7700 5.7699"


def test_the_size_stays_as_decided_until_the_last_of_the_set_is_finished():
    readings = read(BOOK, **{"liner-bore 1": SIX_1, "liner-bore 2": SIX_2})
    readings |= read(BOOK, Stage.FINISHED, **{"liner-bore 1": BORED})

    (remedy,) = about("liner-bore", remedies(BOOK, verdicts(BOOK, readings), {}))
    assert remedy.says.startswith("bore cylinder liner 2 to +0.020 in")
    assert remedy.pieces == (("liner", "2"),)

    readings |= read(BOOK, Stage.FINISHED, **{"liner-bore 2": BORED})
    assert about("liner-bore", remedies(BOOK, verdicts(BOOK, readings), {})) == []


def test_a_gap_too_tight_is_not_called_worn():
    found = verdicts(BOOK, read(BOOK, **{"top-ring-gap 1": "0.010"}))

    says = found.latest("top-ring-gap", "1").says
    assert "too small" in says and "worn" not in says


def test_a_figure_that_compares_both_pumps_stands_for_both():
    found = about("pump-delivery", what_to_do(**{"pump-delivery": "24.2 21.6"}))

    assert found[1].pieces == (("injection-pump-1", ""), ("injection-pump-2", ""))


def test_a_set_without_a_proof_is_put_right_and_not_called_no_pair():
    found = what_to_do(**{"liner-protrusion 1": "0.0045 " * 4, "liner-protrusion 2": "0.0010 " * 4})

    assert What.NOT_A_PAIR not in {each.what for each in found}
    assert any("shim under the liner" in each.says for each in found)


@pytest.mark.parametrize(
    ("left", "said"),
    [
        ({}, "left brake drum is not measured"),
        ({"drum-diameter left": "10.0590 10.0580 10.0585"}, "left brake drum is borderline"),
        ({"drum-diameter left": "10.0180 10.0160 10.0170"}, "left brake drum is within its limits"),
    ],
)
def test_what_is_not_known_to_be_good_is_not_called_within_its_limits(left, said):
    typed = {"drum-diameter right": "10.0120 10.0010 10.0100", **left}
    (remedy,) = about("drum-diameter", what_to_do(**typed))

    assert [why for why in remedy.because if "set" in why] == [
        f"{said}, but the set stays together: one size for all"
    ]


def bored(skirt, size="+0.020 in"):
    """What to do about two tapered liners with pistons in hand, the first of this skirt."""
    typed = {
        "liner-bore 1": "5.7592 5.7554 5.7532 5.7568 5.7546 5.7528",
        "liner-bore 2": "5.7560 5.7542 5.7524 5.7550 5.7538 5.7522",
    }
    readings = read(BOOK, **typed)
    skirts = {"piston-skirt 1": skirt, "piston-skirt 2": "5.7628"}
    readings |= read(BOOK, Stage.FINISHED, **skirts)
    pieces = {
        ("piston", "1"): PieceNow(PartWord.IN_HAND, size=size),
        ("piston", "2"): PieceNow(PartWord.IN_HAND, size="+0.020 in"),
    }
    return remedies(BOOK, verdicts(BOOK, readings), pieces)


@pytest.mark.parametrize(("skirt", "holds"), [("5.7628", 0), ("5.8028", 1), ("5.7428", 1)])
def test_a_piston_of_another_size_in_the_right_box_holds_the_sheet(skirt, holds):
    (remedy,) = [each for each in bored(skirt) if each.what is What.MACHINE]

    assert [("right size?" in reason) for reason in remedy.held] == [True] * holds


@pytest.mark.parametrize("size", ["20 thou", "0.508 mm", "+.020 in", " +0.020 IN "])
def test_one_size_spelled_in_two_ways_is_one_size(size):
    assert [each for each in bored("5.7628", size) if each.what is What.NOT_A_PAIR] == []


def test_one_make_spelled_in_two_ways_is_one_make():
    pieces = {
        ("injection-pump-1", ""): PieceNow(maker="Mark K"),
        ("injection-pump-2", ""): PieceNow(maker="mark k "),
    }

    assert [each for each in what_to_do(pieces) if each.what is What.NOT_A_PAIR] == []


def test_one_pump_proved_by_itself_makes_no_pair():
    pieces = {
        ("injection-pump-1", ""): PieceNow(PartWord.PASSED, maker="Alder", proved_pair=True),
        ("injection-pump-2", ""): PieceNow(PartWord.PASSED, maker="Rowan"),
    }

    assert any(each.what is What.NOT_A_PAIR for each in what_to_do(pieces))


@pytest.mark.parametrize(
    "word",
    [PartWord.REJECTED, PartWord.SCRAPPED, PartWord.LENT, PartWord.ON_ORDER, PartWord.AT_MACHINIST],
)
def test_what_is_away_or_given_up_is_not_used_again(word):
    def again(pieces):
        found = what_to_do(pieces, **{"timing-mesh-lash": "0.004 0.004 0.004 0.004"})
        return {key for each in found if each.what is What.USE_AGAIN for key in each.pieces}

    assert ("camshaft-gear", "") in again({})
    assert ("camshaft-gear", "") not in again({("camshaft-gear", ""): PieceNow(word)})
