import pytest

from shimstock.trade.machine.state import PieceNow
from shimstock.trade.machine.words import PartWord
from shimstock.workshop.models import PieceState
from shimstock.workshop.now import machine_now
from shimstock.workshop.refused import NotFound, Refused
from workshop.shed_book import LINER_1, MONDAY, TEXT


def test_a_piece_comes_off_with_what_was_seen_on_it(machine, do):
    entry = do.move_piece(part="pump", piece="Left", to="off", maker="round mark", note="leaks")

    assert machine_now(machine).piece("pump", "left") == PieceNow(
        PartWord.OFF, maker="round mark", note="leaks"
    )
    assert entry.says == "Pump (P5), left: off, round mark, leaks."
    assert entry.before[f"piecestate:{PieceState.objects.get().pk}"]["word"] == "fitted"


def test_a_move_is_dated(do):
    do.move_piece(part="hood", to="off", at=MONDAY)

    assert PieceState.objects.get().since == MONDAY.date()


def test_what_is_not_given_stays(machine, do):
    do.move_piece(part="pump", piece="left", to="off", maker="round mark")
    do.move_piece(part="pump", piece="left", to="washed", size="std")

    assert machine_now(machine).piece("pump", "left") == PieceNow(
        PartWord.WASHED, maker="round mark", size="std"
    )


def test_undoing_puts_the_piece_back(machine, do):
    do.move_piece(part="hood", to="off")
    entry = do.move_piece(part="hood", to="washed", note="dented")

    undone = do.undo(entry)

    assert machine_now(machine).piece("hood") == PieceNow(PartWord.OFF)
    do.undo(undone)
    assert machine_now(machine).piece("hood") == PieceNow(PartWord.WASHED, note="dented")


def test_of_several_pieces_one_must_be_named(do):
    with pytest.raises(Refused, match="There are 2 of Pump: say which, left or right"):
        do.move_piece(part="pump", to="off")


@pytest.mark.parametrize(
    ("given", "near"),
    [
        ({"part": "pomp", "to": "off"}, "Did you mean pump"),
        ({"part": "pump", "piece": "lift", "to": "off"}, "Did you mean left"),
        ({"part": "hood", "to": "wached"}, "Did you mean washed"),
    ],
)
def test_an_unknown_name_is_answered_with_the_nearest(do, given, near):
    with pytest.raises(NotFound, match=near):
        do.move_piece(**given)


def test_two_makes_are_not_built_in_until_proved_a_pair(machine, do):
    for piece, maker in (("left", "round mark"), ("right", "square mark")):
        do.move_piece(part="pump", piece=piece, to="off", maker=maker)
        do.move_piece(part="pump", piece=piece, to="passed")

    with pytest.raises(Refused, match="mark"):
        do.move_piece(part="pump", piece="left", to="built in")

    do.move_piece(part="pump", piece="right", to="passed", proved_pair=True, note="bench sheet 7")
    do.move_piece(part="pump", piece="left", to="built in", proved_pair=True)
    assert machine_now(machine).piece("pump", "left").word == PartWord.BUILT_IN


def test_a_fitted_piece_is_not_suddenly_in_the_post(do):
    with pytest.raises(Refused):
        do.move_piece(part="hood", to="in the post")


NEW_BORE = ["5.7504", "5.7504", "5.7503", "5.7504", "5.7503", "5.7503"]


@pytest.fixture
def in_hand(do) -> None:
    """A new liner in the place of one that was found worn."""
    do.take_reading(figure="bore", piece="1", typed=["5.7650", *LINER_1[1:]])
    for word in ("off", "rejected", "wanted", "on order", "in hand"):
        do.move_piece(part="liner", piece="1", to=word)


def test_a_new_part_that_is_read_and_good_is_passed_at_once(machine, do, in_hand):
    do.take_reading(figure="bore", piece="1", typed=NEW_BORE, stage="as finished")

    do.move_piece(part="liner", piece="1", to="passed")

    assert machine_now(machine).piece("liner", "1").word == PartWord.PASSED


def test_a_new_part_is_not_passed_on_a_reading_beyond_the_limit(machine, do, in_hand):
    worn = ["5.7650", *NEW_BORE[1:]]
    do.take_reading(figure="bore", piece="1", typed=worn, stage="as finished")

    with pytest.raises(Refused, match="liner bore, Liner, 1: worn out"):
        do.move_piece(part="liner", piece="1", to="passed")


@pytest.mark.parametrize("to", ["passed", "passed with a note", "built in"])
def test_a_new_part_that_comes_in_sizes_is_not_passed_unread(do, to):
    do.take_reading(figure="bore", piece="1", typed=NEW_BORE)  # of the old one
    for word in ("off", "rejected", "wanted", "on order", "in hand"):
        do.move_piece(part="liner", piece="1", to=word)

    with pytest.raises(Refused, match="liner bore, Liner, 1: has no reading as finished"):
        do.move_piece(part="liner", piece="1", to=to)


def test_a_new_part_that_has_nothing_to_be_read_is_passed(machine, do):
    for word in ("off", "rejected", "wanted", "on order", "in hand", "passed"):
        do.move_piece(part="hood", to=word)

    assert machine_now(machine).piece("hood").word == PartWord.PASSED


def test_a_size_that_is_judged_by_nothing_does_not_stand_against_a_new_part(machine, do):
    limits = "    new: 5.7500 .. 5.7510 in\n    limit: max 5.7600 in\n"
    do.change_book(book_text=TEXT.replace(limits, "    unit: in\n"))
    do.move_piece(part="liner", piece="1", to="off")
    do.take_reading(figure="bore", piece="1", typed=NEW_BORE, stage="as finished")
    PieceState.objects.update(word="in hand")  # by whatever way it came

    do.move_piece(part="liner", piece="1", to="passed")
