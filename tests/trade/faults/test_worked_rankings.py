"""Twelve rankings from the starters, with the first checks by chance per minute, and three scenes.

Source: worked exactly by a second hand, by summing over the subsets of the signs seen; the priors
and weights in them are experience, no source. A is the two-cylinder diesel, B the petrol crawler.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from published.as_printed import as_printed
from shimstock.trade.faults.network import Told
from shimstock.trade.faults.of_book import CAUSE, checks_of, network_of
from shimstock.trade.faults.ranking import EXACT, Ranking, rank
from shimstock.trade.faults.search import by_chance_a_minute
from shimstock.trade.machine.state import MachineNow
from shimstock.trade.reach.way import way_in
from trade.scenes.diesel import TODAY, starter

STARTERS = {"A": "two-cylinder-diesel", "B": "petrol-crawler"}

# Machine; seen; not seen; causes cleared; the five likeliest; the first checks with their minutes,
# opening included.
WORKED = """
A; S14; -; -; C30 0.326, C34 0.176, C33 0.176, C31 0.176, C60 0.100; C33 5, C34 10, C30 45, C31 90
A; S14 S08; S09 S06; -; C31 0.347, C30 0.340, C27 0.228, C01 0.226, C02 0.130; C27 5, C33 5, C01 10, C34 10
A; S14 S08; S09 S06; C33 C34; C30 0.420, C31 0.417, C01 0.201, C27 0.196, C02 0.125; C27 5, C01 10, C02 13, C30 45
A; S09 S08; S14; -; C27 0.578, C29 0.324, C01 0.149, C26 0.115, C06 0.115; C27 5, C29 10, C01 10, C02 13
A; S22; S23; -; C57 0.526, C58 0.363, C60 0.100, C51 0.100, C50 0.100; C57 5, C58 5, C54 15
A; S02; S24; -; C11 0.250, C10 0.250, C08 0.250, C45 0.136, C01 0.136; C45 5, C08 10, C01 10, C10 25
A; S02; S24; C11 C08; C10 0.347, C45 0.160, C01 0.160, C14 0.136, C09 0.107; C45 5, C14 5, C01 10, C10 25
A; S07 S03; S04; -; C24 0.339, C08 0.325, C11 0.297, C02 0.186, C29 0.136; C24 5, C08 10, C27 5, C02 13
B; S12; S11 S13; -; C40 0.377, C11 0.250, C39 0.159, C29 0.100, C27 0.100; C40 10, C39 11, C44 8, C11 45
A; S15 S16; -; -; C46 0.725, C12 0.142, C48 0.142, C24 0.108, C11 0.100; C46 8, C24 5, C48 8, C12 10
A; S25; S04; -; C60 0.482, C18 0.259, C59 0.100, C58 0.100, C57 0.100; C18 5, C60 25, C34 10, C20 20
A; S17 S06; -; -; C19 0.351, C20 0.349, C23 0.301, C08 0.204, C60 0.100; C23 3, C19 10, C08 10, C20 20
"""  # noqa: E501 - a row of the table is a row here
ROWS = [tuple(field.strip() for field in row.split(";")) for row in WORKED.strip().splitlines()]
EACH = pytest.mark.parametrize(
    ("machine", "seen", "not_seen", "cleared", "likeliest", "first"),
    ROWS,
    ids=["-".join(row[:4]).replace(" ", "") for row in ROWS],
)


@cache
def by_mark(machine: str) -> dict[str, str]:
    """Keys of causes and signs by their marks."""
    book = starter(STARTERS[machine])
    return {each.mark: key for key, each in (*book.causes.items(), *book.signs.items())}


def ranked(machine: str, seen: str, not_seen: str = "", cleared: str = "") -> Ranking:
    """What was told by marks, ranked."""
    keys = by_mark(machine)
    findings = {keys[mark]: True for mark in seen.replace("-", "").split()}
    findings |= {keys[mark]: False for mark in not_seen.replace("-", "").split()}
    causes = {keys[mark]: False for mark in cleared.replace("-", "").split()}
    return rank(network_of(starter(STARTERS[machine])), Told(findings, causes))


def first_checks(machine: str, ranking: Ranking) -> list[tuple[str, float]]:
    """Checks by chance per minute on a machine that nobody has opened, by the mark of the cause."""
    book = starter(STARTERS[machine])
    now = MachineNow(book, TODAY)
    checks = {
        key: replace(check, joints=frozenset(way_in(now, sorted(check.joints)).opens))
        if check.joints
        else check
        for key, check in checks_of(book).items()
    }
    joints = {key: joint.open for key, joint in book.joints.items()}
    order = by_chance_a_minute(ranking, checks, joints)
    return [(str(book.causes[key.removeprefix(CAUSE)].mark), minutes) for key, minutes in order]


@EACH
def test_the_five_likeliest_to_three_digits(machine, seen, not_seen, cleared, likeliest, first):
    found = ranked(machine, seen, not_seen, cleared)
    printed = [each.split() for each in likeliest.split(",")]

    assert found.method == EXACT
    for mark, chance in printed:
        assert found.chances[by_mark(machine)[mark]] == as_printed(chance), mark
    for chance, (_, as_likely) in zip(found.chances.values(), printed, strict=False):
        assert chance == as_printed(as_likely), "another cause is as likely as this one"


@EACH
def test_the_first_checks_by_chance_per_minute(machine, seen, not_seen, cleared, likeliest, first):
    wanted = [(mark, float(minutes)) for mark, minutes in (c.split() for c in first.split(","))]
    found = first_checks(machine, ranked(machine, seen, not_seen, cleared))

    assert found[: len(wanted)] == wanted
    if len(wanted) < 4:
        assert found == wanted, "no other cause is likelier than before"


def test_a_fan_that_rocks_and_an_engine_that_hunts_before_anything_is_measured():
    found = ranked("A", "S14 S08", "S09 S06")
    checks = dict(first_checks("A", found))
    order = list(checks)

    assert [found.chances[by_mark("A")[mark]] for mark in ("C31", "C30", "C27", "C01")] == [
        as_printed(chance) for chance in ("0.347", "0.340", "0.228", "0.226")
    ]
    assert order[:4] == ["C27", "C33", "C01", "C34"]
    assert (checks["C30"], checks["C31"]) == (45, 90)
    assert order.index("C34") < order.index("C30") < order.index("C31")


def test_an_idle_too_high_before_anything_is_measured():
    found = ranked("A", "S09 S08", "S14")
    keys = by_mark("A")

    assert list(found.chances)[:2] == [keys["C27"], keys["C29"]]
    assert found.chances[keys["C27"]] == as_printed("0.578")
    assert found.chances[keys["C29"]] == as_printed("0.324")


def test_a_brake_that_pulls_before_anything_is_measured():
    found = ranked("A", "S22", "S23")

    assert next(iter(found.chances)) == by_mark("A")["C57"]
    assert found.chances[by_mark("A")["C57"]] == as_printed("0.526")
