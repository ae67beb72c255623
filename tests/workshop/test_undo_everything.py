"""Whatever was done, undone from the last act back, leaves the machine as it was at first."""

from random import Random

import pytest

from shimstock.trade.machine.state import AS_MADE, UNTOUCHED
from shimstock.workshop.now import machine_now
from shimstock.workshop.refused import Refused
from workshop.shed_book import LINER_1, LINER_2


def something(do, dice: Random):
    """One act, which may be refused as things stand."""
    joint = dice.choice(["J1", "J2", "J3"])
    side, number = dice.choice(["left", "right"]), dice.choice("12")
    return dice.choice(
        [
            lambda: do.open_joint(joint=joint, path=True),
            lambda: do.cover_joint(joint=joint),
            lambda: do.ready_joint(joint=joint, faces_clean=True, bolts=12),
            lambda: do.close_joint(joint=joint, dry=True),
            lambda: do.leak_check(joint=joint, result="dry", chalk=True),
            lambda: do.move_piece(part="pump", piece=side, to="off", note=dice.choice("abc")),
            lambda: do.move_piece(part="pump", piece=side, to="washed", maker=dice.choice("AB")),
            lambda: (
                do.take_reading(
                    figure="bore", piece=number, typed=dice.choice([LINER_1, LINER_2])
                ).entry
            ),
            lambda: do.take_reading(figure="delivery", piece=side, typed="24.2").entry,
            lambda: do.accept_verdict(figure="taper", piece=number, reason="it may stay"),
            lambda: do.answer_point(point="stop", answer=dice.choice(["yes", "no"])),
        ]
    )


def picture(machine):
    """All that counts, without rows that say only that nothing was done."""
    now = machine_now(machine)
    readings = machine.readings.filter(superseded=False, withdrawn=False)
    return (
        {key: joint for key, joint in now.joints.items() if joint != UNTOUCHED},
        {key: piece for key, piece in now.pieces.items() if piece != AS_MADE},
        now.verdicts,
        now.answers,
        sorted(readings.values_list("figure", "piece", "typed")),
    )


@pytest.mark.parametrize("seed", range(8))
def test_undone_from_the_last_act_back_all_is_as_it_was(machine, do, seed):
    dice = Random(seed)
    first = picture(machine)
    done = []
    while len(done) < 20:
        try:
            entry = something(do, dice)()
        except Refused:
            continue
        if entry.touched:
            done.append(entry)
    last = picture(machine)

    undone = [do.undo(entry) for entry in reversed(done)]

    assert picture(machine) == first
    for entry in reversed(undone):
        do.undo(entry)
    assert picture(machine) == last
