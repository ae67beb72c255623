from dataclasses import dataclass
from datetime import UTC, datetime

import pytest
from django.db import transaction

from shimstock.trade.machine.state import MachineNow
from shimstock.trade.machine.words import JointWord, PartWord, Verdict
from shimstock.workshop.books import book_from
from shimstock.workshop.demo.books import NAMES, demo_book
from shimstock.workshop.demo.lay_out import lay_out
from shimstock.workshop.demo.teller import Teller
from shimstock.workshop.find import find_machine
from shimstock.workshop.models import DiaryEntry
from shimstock.workshop.now import machine_now

TONIGHT = datetime(2026, 3, 12, 21, 0, tzinfo=UTC)


@dataclass(frozen=True)
class Laid:
    """What stood there after the shed had been laid out, and after it had been again."""

    first: tuple[str, ...]
    second: tuple[str, ...]
    machines: dict[str, MachineNow]
    times: dict[str, list[datetime]]
    entries: tuple[int, int]


@pytest.fixture(scope="session")
def laid(django_db_setup, django_db_blocker) -> Laid:
    with django_db_blocker.unblock(), transaction.atomic():
        first, told = lay_out(TONIGHT), DiaryEntry.objects.count()
        second, after = lay_out(TONIGHT), DiaryEntry.objects.count()
        rows = {slug: find_machine(slug) for slug in first}
        found = Laid(
            first,
            second,
            {slug: machine_now(row, TONIGHT.date()) for slug, row in rows.items()},
            {slug: list(row.diary.values_list("at", flat=True)) for slug, row in rows.items()},
            (told, after),
        )
        transaction.set_rollback(True)
    return found


@pytest.fixture
def brackwater(laid):
    return laid.machines["brackwater"]


pytestmark = pytest.mark.django_db  # so that the test database is made ready


def test_it_is_laid_out_once(laid):
    assert laid.first == ("brackwater", "lowmere")
    assert laid.second == ()
    assert laid.entries[0] == laid.entries[1]


def test_the_diary_runs_forward_and_ends_before_tonight(laid):
    for times in laid.times.values():
        assert times == sorted(times)
        assert times[-1] < TONIGHT


def test_an_evening_cannot_be_told_after_a_later_one():
    teller = Teller("nobody", TONIGHT)
    teller.evening(5, "Ida")

    with pytest.raises(ValueError, match="9 days ago comes before"):
        teller.evening(9, "Ida")


def test_one_joint_was_left_open_and_forgotten_the_others_are_covered(brackwater):
    bare = {key: now for key, now in brackwater.joints.items() if now.is_open and not now.covered}

    assert list(bare) == ["right-brake"]
    assert (TONIGHT.date() - bare["right-brake"].since).days == 9


def test_joints_stand_in_many_states(brackwater):
    words = {now.word for now in brackwater.joints.values()}

    assert words >= {
        JointWord.OPEN,
        JointWord.PARKED_OPEN,
        JointWord.GASKET_READY,
        JointWord.LEAKING,
        JointWord.TORQUED,
        JointWord.UNDISTURBED,
    }


def test_the_gasket_of_the_timing_cover_was_shoved_over(brackwater):
    assert brackwater.joint("timing-cover").word is JointWord.LEAKING


def test_parts_are_on_order_in_the_post_out_and_in_hand(brackwater):
    words = {now.word for now in brackwater.pieces.values()}

    assert words >= {
        PartWord.ON_ORDER,
        PartWord.IN_THE_POST,
        PartWord.AT_MACHINIST,
        PartWord.IN_HAND,
        PartWord.REJECTED,
        PartWord.PASSED,
    }


def test_what_was_mended_was_read_again(brackwater):
    found = brackwater.verdicts["lost-motion", "", "as found"]
    finished = brackwater.verdicts["lost-motion", "", "as finished"]

    assert (found.verdict, finished.verdict) == (Verdict.WORN_OUT, Verdict.GOOD)


@pytest.mark.parametrize("machine", ["brackwater", "lowmere"])
def test_verdicts_are_of_every_kind(machine, laid):
    words = {now.verdict for now in laid.machines[machine].verdicts.values()}

    assert words >= {
        Verdict.GOOD,
        Verdict.SERVICEABLE,
        Verdict.BORDERLINE,
        Verdict.WORN_OUT,
    }


@pytest.mark.parametrize("name", NAMES)
def test_a_book_has_some_figures_from_its_maker_and_leaves_the_rest_stand_ins(name):
    figures = book_from(demo_book(name), f"{name}.yaml").measures.values()
    typed = [figure for figure in figures if not figure.stand_in]

    assert 2 <= len(typed) <= 5
    assert all(figure.page for figure in typed)
    assert len(figures) - len(typed) > 50
