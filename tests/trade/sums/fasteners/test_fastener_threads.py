import pytest

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.fasteners._forms import UNIFIED
from shimstock.trade.sums.fasteners._threads import Thread, parse_thread, parse_whitworth


@pytest.mark.parametrize(
    ("text", "name", "d", "pitch", "angle"),
    [
        ("3/8-16 UNC", "3/8-16 UNC", 0.375, 1 / 16, 60),
        ("3/8-16", "3/8-16 UNC", 0.375, 1 / 16, 60),
        (".375-16", "3/8-16 UNC", 0.375, 1 / 16, 60),
        ('3/8"-16 UNC-2A', "3/8-16 UNC", 0.375, 1 / 16, 60),
        ("1 1/4-12", "1 1/4-12 UNF", 1.25, 1 / 12, 60),
        ("1-1/4-7 UNC", "1 1/4-7 UNC", 1.25, 1 / 7, 60),
        ("½-13", "1/2-13 UNC", 0.5, 1 / 13, 60),
        ("1-14 NF", "1-14 UNS", 1, 1 / 14, 60),
        ("#10-24", "#10-24 UNC", 0.19, 1 / 24, 60),
        ("10-32", "#10-32 UNF", 0.19, 1 / 32, 60),
        ("No. 6-32", "#6-32 UNC", 0.138, 1 / 32, 60),
        ("3/8 BSF", "3/8-20 BSF", 0.375, 1 / 20, 55),
        ("5/16 Whitworth", "5/16-18 BSW", 0.3125, 1 / 18, 55),
        ("1/4 BSC", "1/4-26 BSC", 0.25, 1 / 26, 60),
        ("M10", "M10", 10, 1.5, 60),
        ("M10x1.25", "M10×1.25", 10, 1.25, 60),
        ("m12 × 1,5", "M12×1.5", 12, 1.5, 60),
        ("2 BA", "2 BA", 4.7, 0.81, 47.5),
    ],
)
def test_a_thread_is_read_as_it_is_written(text, name, d, pitch, angle):
    got = parse_thread(text)

    assert (got.name, got.d, got.form.angle) == (name, d, angle)
    assert got.pitch == pytest.approx(pitch)


@pytest.mark.parametrize("text", ["3/8", "1/2-12 UNC", "M11", "19 BA", "3/0-16", "3/8-16 XYZ", ""])
def test_what_is_no_thread_is_refused_with_one_that_is(text):
    with pytest.raises(NotUnderstood) as refused:
        parse_thread(text)

    assert all(parse_thread(each) for each in refused.value.would_do)


def test_half_inch_twelve_is_whitworth_alone_and_thirteen_unified_alone():
    """BS 84 has 1/2-12, ASME B1.1 has 1/2-13."""
    assert parse_thread("1/2-12").name == "1/2-12 BSW"
    assert parse_thread("1/2-13").name == "1/2-13 UNC"


def test_a_thread_that_could_be_two_says_so():
    assert "3/8-16 BSW" in parse_thread("3/8-16").remark
    assert "BSW" not in parse_thread("3/8-24").remark
    assert parse_thread("3/8-16 UNC").remark == ""


def test_where_whitworth_is_asked_for_a_bare_size_is_whitworth():
    assert parse_whitworth("3/8-16").name == "3/8-16 BSW"
    with pytest.raises(NotUnderstood, match="unified form"):
        parse_whitworth("3/8-16 UNC")


@pytest.mark.parametrize(("d", "pitch"), [(0.1, 0.1), (0, 0.1), (1, 0), (1, -1), (float("nan"), 1)])
def test_diameter_and_pitch_of_no_thread_are_refused(d, pitch):
    with pytest.raises(NotPossible, match="swapped"):
        Thread("made up", d, pitch, "in", UNIFIED)
