import pytest

from shimstock.trade.machine.state import PieceNow
from shimstock.trade.machine.words import PartWord
from shimstock.workshop.models import PieceState
from shimstock.workshop.now import machine_now
from shimstock.workshop.refused import NotFound, Refused
from workshop.shed_book import MONDAY


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
