"""The starters' fault books against the trade's table, mark by mark.

Source of every prior, leak, weight, minute and joint here: experience, no source. A is the
two-cylinder diesel, B the petrol crawler.
"""

from __future__ import annotations

import pytest

from shimstock.trade.faults.network import Told
from shimstock.trade.faults.of_book import free_signs, network_of, spreads_of
from shimstock.trade.faults.ranking import rank
from shimstock.trade.faults.readings import from_readings
from shimstock.trade.machine.faults import PRIORS
from shimstock.trade.machine.state import VerdictNow
from shimstock.trade.machine.words import Stage, Verdict
from trade.scenes.diesel import starter

STARTERS = {"A": "two-cylinder-diesel", "B": "petrol-crawler"}
BOTH = pytest.mark.parametrize("machine", STARTERS)

# Mark, where it can be, how often, minutes of its check, joints that the check needs open.
CAUSES = """
C01 A  common     10 -
C02 AB common      8 AJ05 BJ04
C03 A  occasional 10 AJ05
C04 A  occasional 20 AJ10 AJ11
C05 A  occasional 10 -
C06 A  occasional 15 AJ12
C07 A  rare       45 AJ07
C08 A  common     10 -
C09 A  occasional 25 AJ10
C10 AB common     25 -
C11 AB common     25 AJ27 BJ13
C12 AB occasional 10 -
C13 AB rare       30 -
C14 AB common      5 -
C15 AB common      8 -
C16 AB occasional 10 -
C17 AB common     12 -
C18 AB common      5 -
C19 AB occasional 10 -
C20 AB occasional 20 -
C21 AB occasional 10 -
C22 AB occasional 20 AJ39 BJ28
C23 AB common      3 -
C24 AB common      5 -
C25 AB rare       10 -
C26 AB occasional 20 AJ22 BJ23
C27 AB common      5 -
C28 AB occasional 20 AJ22 BJ23
C29 AB common     10 -
C30 A  occasional 20 AJ22
C31 AB occasional 20 AJ22 AJ32 BJ23
C32 AB rare       90 AJ36 BJ27
C33 AB occasional  5 -
C34 AB occasional 10 -
C35 B  common      8 BJ22
C36 B  occasional 10 BJ22
C37 B  occasional 25 -
C38 B  occasional  3 -
C39 B  common      8 BJ22
C40 B  common     10 -
C41 B  occasional 12 -
C42 B  common     12 BJ17
C43 B  common      5 -
C44 B  occasional  8 -
C45 AB common      5 -
C46 AB common      8 -
C47 AB occasional 15 -
C48 AB occasional  8 -
C49 AB occasional 10 -
C50 AB common      8 -
C51 AB common      5 -
C52 AB occasional  5 -
C53 AB occasional  5 -
C54 AB occasional 15 -
C55 AB occasional 15 -
C56 A  occasional 12 -
C57 AB common      5 -
C58 AB common      5 -
C59 AB common      8 -
C60 AB common     25 -
"""

# Mark, where it can show, chance of a reason that is not listed; causes by strength: strong,
# medium, weak.
SIGNS = """
S01 A  0.02  | C02 C06 | C01 C03 | C04 C45
S02 A  0.03  | C14 | C10 C11 C08 C09 C07 C15 | C04 C45 C01 C16 C12
S03 AB 0.03  | C24 | C08 C05 C07 C25 C11 | C10 C29 C09
S04 AB 0.02  | C10 | C23 C24 | C11 C18
S05 AB 0.02  | C08 | C05 C12 C11 C04 C13 | C01 C10 C07 C45
S06 AB 0.02  | C19 | C20 C21 C07 C08 | C23 C09 C32 C41
S07 AB 0.04  | C02 | C24 C05 C10 C08 C25 C03 C11 C07 C41 | C04 C29 C26 C50 C27 C46
S08 AB 0.02  | C27 | C28 C01 C06 C26 C31 C44 C42 | C30 C29 C02
S09 AB 0.01  | C29 | C27 C26 C06 C28 | C31
S10 AB 0.005 | C06 | C24 C10 C03 | C27 C23
S11 B  0.02  | C35 C37 | C36 C38 C39 C14 C41 | C40 C45 C42
S12 B  0.03  | C40 | C39 C35 C41 C44 C42 C11 C36 | C37 C12 C45
S13 B  0.03  | C42 C02 | C43 C45 C37 | C44 C36
S14 AB 0.01  | C30 | C31 C33 C34 C32 | C28
S15 AB 0.03  | C46 | C48 C47 C49 C12 C41 C07 | C13 C25 C24 C33
S16 AB 0.02  | C13 | C12 C48 C46 | C47
S17 AB 0.03  | C20 C22 | C23 C19 | C32
S18 AB 0.02  | C50 | C51 | C57 C60
S19 AB 0.02  | C52 | C51 C50 | C54 C53
S20 AB 0.02  | C53 | C54 | C52 C51
S21 AB 0.02  | C56 C55 | C02 | C60
S22 AB 0.02  | C57 C58 | - | C59 C54
S23 AB 0.03  | C59 | C58 | C57 C54
S24 AB 0.02  | C17 C15 C14 | C16 | C20
S25 AB 0.05  | C60 | C18 | C10 C34 C23 C20
"""

ADDED = {"A": {"compression-low", "volts-fall-cranking"}, "B": {"compression-low"}}
"""Readings that speak for several causes: additions, which have no mark."""


def rows(table, machine):
    """The rows that hold for one machine, by mark, without the mark."""
    split = [line.split(maxsplit=2) for line in table.strip().splitlines()]
    return {mark: rest for mark, scope, rest in split if machine in scope}


def book(machine):
    return starter(STARTERS[machine])


def causes(machine):
    return {cause.mark: cause for cause in book(machine).causes.values()}


def signs(machine):
    return {sign.mark: sign for sign in book(machine).signs.values() if sign.mark}


def key_of(entries, mark):
    return next(key for key, entry in entries.items() if entry.mark == mark)


def test_the_tables_hold_sixty_causes_and_twenty_five_signs_with_181_weights():
    assert len(CAUSES.strip().splitlines()) == 60
    assert len(SIGNS.strip().splitlines()) == 25
    assert sum(line.count("C") for line in SIGNS.splitlines()) == 181


@BOTH
def test_every_cause_is_there_where_it_can_be_and_nowhere_else(machine):
    assert set(causes(machine)) == set(rows(CAUSES, machine))


@BOTH
def test_priors_and_minutes_and_joints_of_the_checks(machine):
    joints = book(machine).joints
    for mark, rest in rows(CAUSES, machine).items():
        often, minutes, *opened = rest.split()
        cause = causes(machine)[mark]

        assert (cause.prior, cause.chance) == (often, PRIORS[often]), mark
        assert cause.check.minutes == float(minutes), mark
        wanted = [joint[1:] for joint in opened if joint.startswith(machine)]
        assert [joints[key].mark for key in cause.check.open] == wanted, mark


@BOTH
def test_every_cause_says_where_it_sits_how_it_is_checked_and_what_points_to_it_and_away(machine):
    for cause in book(machine).causes.values():
        assert cause.part and cause.check.do and cause.points_to and cause.points_away, cause.mark


@BOTH
def test_every_sign_is_there_where_it_can_be_with_its_leak(machine):
    table = rows(SIGNS, machine)

    assert set(signs(machine)) == set(table)
    for mark, rest in table.items():
        assert signs(machine)[mark].leak == float(rest.split()[0]), mark


@BOTH
def test_every_weight_of_the_table_and_no_other(machine):
    there = causes(machine)
    marks = {key: cause.mark for key, cause in book(machine).causes.items()}
    for mark, rest in rows(SIGNS, machine).items():
        by_strength = zip((0.8, 0.4, 0.1), rest.split("|")[1:], strict=True)
        wanted = {
            cause: weight
            for weight, named in by_strength
            for cause in named.split()
            if cause in there
        }
        weights = signs(machine)[mark].weights
        assert {marks[key]: weight for key, weight in weights.items()} == wanted, mark


def test_every_weight_of_the_table_is_in_one_of_the_starters():
    found = {
        (sign.mark, book(machine).causes[cause].mark)
        for machine in STARTERS
        for sign in signs(machine).values()
        for cause in sign.causes
    }
    assert len(found) == 181


@BOTH
def test_every_sign_says_where_it_shows_and_how_a_person_says_it(machine):
    for key, sign in book(machine).signs.items():
        assert sign.where in book(machine).parts, key
        assert sign.said, key


@BOTH
def test_only_what_takes_a_gauge_costs_minutes(machine):
    costs = set(book(machine).signs) - set(free_signs(book(machine)))

    assert costs == ADDED[machine] | {"low-oil-pressure"}


@BOTH
def test_the_additions_have_no_mark_and_a_figure_and_speak_for_several_causes(machine):
    unmarked = {key: sign for key, sign in book(machine).signs.items() if sign.mark is None}

    assert set(unmarked) == ADDED[machine]
    for sign in unmarked.values():
        assert sign.figure and len(sign.causes) > 1


@BOTH
def test_what_nobody_looked_at_changes_nothing_even_where_it_is_an_addition(machine):
    whole = book(machine)
    marked = {key: sign for key, sign in whole.signs.items() if sign.mark}
    without = whole.model_copy(update={"signs": marked})
    told = Told({key_of(marked, "S07"): True, key_of(marked, "S04"): False})

    with_them = rank(network_of(whole), told).chances
    assert with_them == pytest.approx(dict(rank(network_of(without), told).chances))


@BOTH
def test_causes_and_signs_are_stand_ins_until_it_is_said_where_they_are_from(machine):
    entries = [*book(machine).causes.values(), *book(machine).signs.values()]

    assert all(entry.stand_in for entry in entries)


@BOTH
def test_no_cause_rules_out_another(machine):
    """Several faults at once are normal on an old machine."""
    assert not any(cause.never_with for cause in book(machine).causes.values())


@pytest.mark.parametrize(
    ("machine", "mark", "danger"),
    [
        ("A", "C08", "cutting-out"),
        ("A", "C05", "cutting-out"),
        ("A", "C19", "cutting-out"),
        ("A", "C21", "cutting-out"),
        ("A", "C04", "fuel-jet"),
        ("A", "C06", "runaway"),
        ("B", "C19", "running"),
        ("B", "C38", "hand-crank"),
        ("B", "C43", "fuel"),
        ("A", "C15", "battery"),
        ("A", "C12", "hot"),
        ("A", "C56", "underneath"),
        ("A", "C50", "driving"),
    ],
)
def test_a_check_that_can_hurt_calls_its_caution_up(machine, mark, danger):
    """Hazards as common practice has them, no source."""
    assert danger in causes(machine)[mark].check.dangers
    assert any(danger in caution.dangers for caution in book(machine).cautions.values())


@pytest.mark.parametrize(
    ("machine", "mark", "figures"),
    [
        ("A", "C31", ("governor-mesh-lash",)),
        ("A", "C30", ("fan-bevel-lash",)),
        ("A", "C27", ("lost-motion",)),
        ("A", "C26", ("governor-spring-length",)),
        ("A", "C09", ("opening-pressure",)),
        ("A", "C51", ("clutch-pull",)),
        ("B", "C51", ("clutch-free-travel",)),
        ("B", "C31", ("drive-mesh-lash",)),
        ("A", "C08", ()),
        ("A", "C22", ()),
        ("B", "C50", ()),
    ],
)
def test_a_figure_is_a_cause_only_where_a_good_reading_clears_it_too(machine, mark, figures):
    """A good oil pump clears no stuck relief valve, a thick lining no oil on it."""
    assert causes(machine)[mark].figures == figures


@BOTH
def test_every_figure_of_a_cause_can_be_judged_and_every_figure_of_a_sign_read_as_a_number(machine):
    measures = book(machine).measures
    for cause in book(machine).causes.values():
        for figure in cause.figures:
            assert measures[figure].allowed is not None, (cause.mark, figure)
    for key, sign in book(machine).signs.items():
        if sign.figure is not None:
            assert spreads_of(measures[sign.figure]) is not None, key


@BOTH
def test_no_reading_counts_twice(machine):
    """A figure that is a cause is no sign beside it, nor another cause."""
    named = [figure for cause in book(machine).causes.values() for figure in cause.figures]
    named += [sign.figure for sign in book(machine).signs.values() if sign.figure]

    assert len(named) == len(set(named))


def test_a_compression_of_240_psi_speaks_for_rings_valve_and_gasket_alike():
    """Limit 300 psi, new 380 to 430: experience, no source."""
    read = {("compression", "2", Stage.FOUND): VerdictNow(Verdict.WORN_OUT, "too low")}
    values = {("compression", "2", Stage.FOUND): [240.0]}
    (said,) = from_readings(book("A"), read, values)
    found = rank(network_of(book("A")), Told({said.sign: said.said}))

    assert (said.sign, said.said) == ("compression-low", 240.0)
    assert set(found.raised) == set(book("A").signs["compression-low"].causes)
    likeliest = list(found.chances)[:2]
    assert set(likeliest) == {key_of(book("A").causes, mark) for mark in ("C10", "C11")}
