import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.conversion import convert
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.fasteners._drills import LETTERS, NUMBERS, nearest, parse_drill
from shimstock.trade.sums.fasteners._series import rows
from shimstock.trade.sums.fasteners._threads import parse_thread
from shimstock.trade.sums.fasteners.tap_drill import tap_drill
from shimstock.trade.sums.fasteners.thread_percent import thread_percent
from shimstock.trade.sums.fasteners.which_thread import which_thread

BOTH = [(0.25, 20), (0.3125, 18), (0.375, 16), (0.4375, 14), (0.5625, 12), (0.625, 11), (0.75, 10),
        (0.875, 9), (1, 8)]  # fmt: skip


@pytest.mark.parametrize(("d", "tpi"), BOTH)
def test_what_is_both_unified_coarse_and_whitworth_comes_out_as_two(d, tpi):
    """ASME B1.1 and BS 84 agree in size and pitch there; only the angle tells."""
    got = which_thread(diameter=d - 0.004, tpi=tpi, unit="in")

    assert [name.split()[-1] for name in got.value] == ["UNC", "BSW"]
    said = got.working.answers["tell apart by"].value
    assert "UNC 60°" in said
    assert "BSW 55°" in said


def test_half_an_inch_tells_whitworth_from_unified_by_its_pitch():
    assert which_thread(diameter=0.497, tpi=12, unit="in").value == ("1/2-12 BSW",)
    assert which_thread(diameter=0.497, tpi=13, unit="in").value == ("1/2-13 UNC",)


def test_a_quarter_inch_of_28_and_of_26_are_not_the_same():
    assert which_thread(diameter=0.247, tpi=28, unit="in").value == ("1/4-28 UNF",)
    assert which_thread(diameter=0.247, tpi=26, unit="in").value == ("1/4-26 BSF", "1/4-26 BSC")
    loose = which_thread(diameter=0.247, tpi=27, pitch_error=5, unit="in")
    assert set(loose.value) == {"1/4-28 UNF", "1/4-26 BSF", "1/4-26 BSC"}
    assert "pitch, over ten threads" in loose.working.answers["tell apart by"].value


def test_six_millimetres_of_one_may_be_iso_or_ba():
    got = which_thread(diameter=5.9, pitch=1)
    assert set(got.value) == {"M6", "0 BA"}
    assert "47.5°" in got.working.answers["tell apart by"].value


@pytest.mark.parametrize("row", rows(), ids=lambda row: row.name)
def test_every_thread_of_the_tables_is_found_at_its_largest_and_its_thinnest(row):
    """ASME B1.1 class 2A: the outside is made up to 0.060·P^(2/3) in and an allowance under."""
    inch = convert(1, "in", row.unit)
    tolerance = 0.060 * (row.pitch / inch) ** (2 / 3) * inch
    for under in (0, tolerance):
        got = which_thread(diameter=row.d - under, pitch=row.pitch, unit=row.unit)
        assert row.name in got.value
        assert got.working.disagreements() == []


def test_a_thread_of_no_table_names_what_is_near():
    got = which_thread(diameter=0.6, tpi=37, unit="in")
    assert got.value == ()
    assert got.working.answers["candidates"].value == "none of these series"
    assert any("nearest are" in line for line in got.working.shown())


@pytest.mark.parametrize("given", [{}, {"tpi": 16, "pitch": 1.5}])
def test_the_pitch_is_said_once(given):
    with pytest.raises(NotPossible, match="one of tpi and pitch"):
        which_thread(diameter=10, **given)


@given(st.sampled_from([r for r in rows() if r.d > 0.2]), st.floats(20, 100))
def test_a_tap_drill_leaves_about_the_thread_that_is_wanted(row, percent):
    thread = parse_thread(row.name)
    got = tap_drill(thread=thread, percent=percent)
    drilled = parse_drill(got.working.answers["drill"].value)
    left = thread_percent(thread=thread, drill=drilled)

    assert left.value == pytest.approx(got.working.value("q_1"))
    full = thread.form.full * thread.pitch
    assert 100 * (thread.d - got.value) / full == pytest.approx(percent)
    half_a_step = {"in": 0.008, "mm": 0.25}[thread.unit]  # of the coarsest drills there
    assert abs(got.working.value("D_1") - got.value) < half_a_step + 0.01 * thread.d
    assert got.working.disagreements() == left.working.disagreements() == []


def test_a_larger_drill_leaves_less_thread():
    drills = [parse_drill(each) for each in ("6.8 mm", "F", "6.4 mm")]
    left = [thread_percent(thread=parse_thread("M8"), drill=each).value for each in drills]
    assert left == sorted(left)


def test_inch_drills_may_be_had_for_a_metric_thread():
    assert (
        tap_drill(thread=parse_thread("M8"), drills="inch").working.answers["drill"].value
        == "17/64"
    )


def test_a_drill_as_large_as_the_thread_is_refused():
    with pytest.raises(NotPossible, match="clearance"):
        thread_percent(thread=parse_thread("1/4-20"), drill=parse_drill("1/4"))


@pytest.mark.parametrize("text", ["#61", "AB", "0.201", "", "5/0"])
def test_what_is_no_drill_is_refused(text):
    with pytest.raises(NotUnderstood, match="no drill"):
        parse_drill(text)


def test_drill_tables_run_one_way():
    assert list(NUMBERS) == sorted(NUMBERS, reverse=True)
    assert list(LETTERS) == sorted(LETTERS)
    assert (len(NUMBERS), len(LETTERS)) == (60, 26)


def test_of_two_drills_equally_near_the_larger_is_taken():
    assert nearest(40.25, "mm").name == "40.5 mm"


@pytest.mark.parametrize(
    ("size", "drill"),
    [
        ("1/4", "5.10 mm"),
        ("5/16", "6.50 mm"),
        ("3/8", "5/16"),
        ("7/16", "9.25 mm"),
        ("1/2", "10.50 mm"),
        ("5/8", "13.50 mm"),
        ("3/4", "41/64"),
        ("1", "22.00 mm"),
    ],
)
def test_bs_1157_drills_of_whitworth_threads_leave_77_to_87_per_cent(size, drill):
    """Both the drills and "from 77 to 87 % of full thread" read in a copy of the BSW table."""
    got = thread_percent(thread=parse_thread(f"{size} BSW"), drill=parse_drill(drill))
    assert 77 <= round(got.value) <= 87
