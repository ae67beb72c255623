"""What comes next, in words and with its place; and what a doubt waits for."""

from datetime import date

from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.starters import starter_text
from shimstock.trade.machine.state import JointNow, MachineNow, PieceNow, SearchNow, VerdictNow
from shimstock.trade.machine.words import JointWord, PartWord, Stage, Verdict
from shimstock.workshop.standing import ToDo, to_do

BOOK = read_book(starter_text("two-cylinder-diesel"))
TODAY = date(2026, 3, 9)
OUT = {("cylinder-head", ""): PieceNow(PartWord.AT_MACHINIST)}
OFF = {("piston-rings", "1"): PieceNow(PartWord.BAGGED)}


def next_on(pieces=None, *, head_open=False, doubts=("1",), searches=()):
    head = {"head": JointNow(JointWord.OPEN, covered=True)} if head_open else {}
    doubtful = {
        ("compression", piece, Stage.FOUND): VerdictNow(Verdict.BORDERLINE, "") for piece in doubts
    }
    state = {"joints": head, "pieces": pieces or {}, "verdicts": doubtful, "searches": searches}
    return to_do(MachineNow(BOOK, TODAY, **state))


def test_on_a_whole_machine_a_doubt_leads_to_its_reading():
    assert next_on() == (ToDo("Settle Compression (F055), 1", "reading:compression:1:as found"),)


def test_with_the_head_away_the_head_is_asked_after_and_why():
    head = "Ask after Cylinder head (EN4), out at the machinist"
    assert next_on(OUT, head_open=True) == (
        ToDo(f"{head}: Compression (F055), 1 waits for it", "piece:cylinder-head:"),
    )
    assert next_on(OUT, head_open=True, doubts=("1", "2"))[0].says == (
        f"{head}: Compression (F055), 1 and 1 other wait for it"
    )
    assert next_on(OUT, doubts=())[0].says == head


def test_what_needs_a_running_engine_waits_for_the_search_that_left_a_fault_standing():
    stuck = SearchNow(2, "ran away", TODAY, found=("rack-stuck",))
    assert next_on(searches=(stuck,)) == (
        ToDo("Settle Compression (F055), 1 once what search 2 found or saw is settled", "search:2"),
    )


def test_where_nothing_is_away_it_says_what_is_to_be_done_first():
    assert next_on(head_open=True) == (
        ToDo(
            "Settle Compression (F055), 1 once Cylinder head to cylinder block (J31) is closed",
            "joint:head",
        ),
    )
    assert next_on(OFF)[0].place == "piece:piston-rings:1"
    assert next_on(OFF)[0].says.endswith("1, bagged, is on the machine")
    gone = {("piston-rings", "1"): PieceNow(PartWord.REJECTED)}
    assert next_on(gone)[0].says.endswith("1, rejected, is replaced")
