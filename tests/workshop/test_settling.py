"""Every reason against opening or closing leads to the place where it is settled."""

import pytest

from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.state import JointNow, MachineNow, PieceNow, VerdictNow
from shimstock.trade.machine.words import JointWord, PartWord, Stage, Verdict
from shimstock.trade.reach.closing import why_not_close, why_not_open
from shimstock.trade.reach.reason import Reason
from shimstock.workshop.settling import settled_at
from workshop.shed_book import MONDAY, TEXT

SETS = "    dangers: [dust]\n    settles: [{figure: end-float}]\n"
BOOK = read_book(
    TEXT.replace("    mark: J2\n", f"    mark: J2\n{SETS}").replace(
        "{ask: Is it degreased?}", "{ask: Is it degreased?, before-closing: [dust]}"
    )
)
OPEN = JointNow(JointWord.OPEN)


@pytest.fixture
def against():
    """Where each reason against closing the side cover is settled, by how it begins."""
    now = MachineNow(
        BOOK,
        MONDAY.date(),
        joints={"hood-joint": OPEN, "cover-joint": OPEN},
        pieces={("pump", "left"): PieceNow(PartWord.REJECTED)},
        verdicts={("delivery", "right", Stage.FOUND): VerdictNow(Verdict.WORN_OUT)},
    )
    return {
        f"{reason.what}: {reason.why}": settled_at(now, reason)
        for reason in why_not_close(now, "cover-joint")
    }


@pytest.mark.parametrize(
    ("begins", "place"),
    [
        ("Pump, left: is rejected", "piece:pump:left"),
        ("pumps: Pump, left is rejected", "piece:pump:left"),
        ("delivery, Pump, right: worn out", "verdict:delivery:right:as finished"),
        ("end float, Main case, set by the gasket", "verdict:end-float::as finished"),
        ("side gasket, 0.015 in: is not ready", ""),
        ("side cover to case: faces are not clean", "joint:cover-joint"),
        ("side cover to case: fastenings are not counted", "joint:cover-joint"),
        ("side cover to case: waits for an answer", "gate:paint"),
    ],
)
def test_a_reason_against_closing_leads_to_where_it_is_settled(against, begins, place):
    (settled,) = [at for said, at in against.items() if said.startswith(begins)]
    assert settled == place


def test_what_must_be_opened_first_is_where_one_goes():
    now = MachineNow(BOOK, MONDAY.date())
    (reason,) = why_not_open(now, "cover-joint")

    assert settled_at(now, reason) == "joint:hood-joint"


def test_what_stands_open_behind_it_is_where_one_goes():
    now = MachineNow(BOOK, MONDAY.date(), joints={"hood-joint": OPEN, "cover-joint": OPEN})

    assert settled_at(now, why_not_close(now, "hood-joint")[0]) == "joint:cover-joint"


def test_a_reason_about_nothing_in_the_book_leads_nowhere():
    now = MachineNow(BOOK, MONDAY.date())

    assert settled_at(now, Reason("the moon", "is full", "wait a week")) == ""
