"""Injection pumps of two makes were found in the block: neither is built in. Invented makers."""

from shimstock.trade.machine.state import JointNow, PieceNow
from shimstock.trade.machine.words import JointWord, PartWord
from shimstock.trade.reach.closing import why_not_close
from shimstock.trade.reach.gates import gate
from shimstock.trade.reach.moves import may_move_piece
from trade.scenes.diesel import diesel

PUMPS = ("injection-pump-1", "injection-pump-2")
OPEN = JointNow(JointWord.OPEN)
SEATS = {key: OPEN for key in ("pipe-1", "pipe-2", "rack-cover", "pump-1-seat", "pump-2-seat")}


def machine(word=PartWord.PASSED, makers=("Alder", "Rowan"), **more):
    pieces = {
        (pump, ""): PieceNow(word, maker=maker, **more)
        for pump, maker in zip(PUMPS, makers, strict=True)
    }
    return diesel(joints=SEATS, pieces=pieces)


def test_neither_pump_may_be_built_in():
    for pump in PUMPS:
        (reason,) = may_move_piece(machine(), pump, "", PartWord.BUILT_IN)

        assert reason.hard
        assert "of two makes, not proved a pair: Alder and Rowan" in reason.why
        assert "bench sheet" in reason.would_do


def test_no_way_to_adjust_the_rack_is_offered():
    reasons = may_move_piece(machine(), PUMPS[0], "", PartWord.BUILT_IN)

    assert not any(
        "adjust" in reason.would_do or "rack to suit" in str(reason) for reason in reasons
    )


def test_neither_seat_may_be_closed_and_first_start_is_blocked():
    for seat in ("pump-1-seat", "pump-2-seat"):
        assert any(r.hard and "of two makes" in r.why for r in why_not_close(machine(), seat))
    point = next(p for p in gate(machine(), "first-start").open_points if p.kind == "set")
    assert point.where == "injection-pumps" and point.hard


def test_trying_them_dry_is_allowed():
    assert may_move_piece(machine(), PUMPS[0], "", PartWord.DRY_FITTED) == ()


def test_two_of_one_make_or_proved_a_pair_may_be_built_in():
    same = machine(makers=("Alder", "Alder"))
    proved = machine(proved_pair=True)

    assert may_move_piece(same, PUMPS[0], "", PartWord.BUILT_IN) == ()
    assert may_move_piece(proved, PUMPS[0], "", PartWord.BUILT_IN) == ()


def test_a_pump_whose_mate_is_still_wanted_stays_out():
    pieces = {
        (PUMPS[0], ""): PieceNow(PartWord.PASSED, maker="Alder"),
        (PUMPS[1], ""): PieceNow(PartWord.WANTED),
    }

    (reason,) = may_move_piece(diesel(pieces=pieces), PUMPS[0], "", PartWord.BUILT_IN)

    assert reason.hard and "is wanted" in reason.why
