from collections.abc import Sequence
from typing import Annotated, Literal

import pytest

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, Read, a_sum, declared
from shimstock.trade.sums.find import find_sum
from shimstock.trade.sums.typed import Origin, value_of, work_out


def halved(text: str) -> float:
    if not text.isdigit():
        raise NotUnderstood(text, "is no number", ("8",))
    return int(text) / 2


@a_sum(example="--length 2", cautions=("Mind the edge.",))
def sample(
    *,
    length: Annotated[float, Of("length", above=0, most=100, known=(1, 10))],
    force: Annotated[float, Of("force")] = 3.0,
    sizes: Annotated[Sequence[float], Of("mm")] = (),
    film: Literal["dry", "anti-seize"] = "dry",
    half: Annotated[float | None, Read(halved, "8")] = None,
    both: bool = False,
    count: Annotated[int, Of("", least=1)] = 1,
    unit: str = "mm",
) -> Worked[float]:
    """Sample of all that can be taken.

    It has a remark.
    Over two lines.

    length: how long it is, in `unit`.
    force: the pull, in the force of `unit`.
    sizes: several, in mm.
    film: dry or not.
    half: read in its own way.
    both: whether.
    count: how many, a count.
    unit: unit of the lengths, mm or in.
    Raises NotPossible never.
    Source: a book,
    page 3.
    """
    w = Working()
    w.given("l", length, unit)
    w.given("F", force, coherent(unit).force)
    w.step("T", "F·l", force * length, coherent(unit).torque, answer="moment")
    w.tell("state", film)
    return Worked(force * length, w)


SAMPLE = declared(sample)


def test_the_docstring_says_what_the_sum_is():
    assert SAMPLE.name == "sample"
    assert SAMPLE.sentence == "Sample of all that can be taken."
    assert SAMPLE.remarks == "It has a remark. Over two lines."
    assert SAMPLE.source == "a book, page 3."
    assert [one.name for one in SAMPLE.inputs if one.needed] == ["length"]


@pytest.mark.parametrize(
    ("name", "text", "unit", "value"),
    [
        ("length", "1 in", "mm", 25.4),
        ("length", "1/2", "in", 0.5),
        ("force", "10 lb", "in", 10),
        ("force", "1 kgf", "mm", 9.80665),
        ("sizes", "1, 2 in", "mm", [25.4, 50.8]),
        ("sizes", "1,5; 2", "mm", [1.5, 2]),
        ("film", "Anti seize", None, "anti-seize"),
        ("film", "anti", None, "anti-seize"),
        ("half", "8", None, 4),
        ("both", "yes", None, True),
        ("both", "No", None, False),
        ("count", "3", None, 3),
    ],
)
def test_what_is_typed_is_understood(name, text, unit, value):
    assert value_of(SAMPLE.input(name), text, unit) == value


@pytest.mark.parametrize(
    ("name", "text"),
    [("film", "wet"), ("film", ""), ("both", "perhaps"), ("count", "1.5"), ("length", "3 psi")],
)
def test_what_is_not_understood_says_what_would_do(name, text):
    with pytest.raises(NotUnderstood) as error:
        value_of(SAMPLE.input(name), text, "mm")
    assert error.value.would_do


def test_values_are_held_against_their_rules():
    with pytest.raises(NotPossible, match="length −1 mm must be above 0 and at most 100; it means"):
        sample(length=-1)
    with pytest.raises(NotPossible, match="count 0 must be at least 1"):
        sample(length=1, count=0)
    with pytest.raises(NotPossible, match="film 'wet' must be one of dry, anti-seize"):
        sample(length=1, film="wet")
    with pytest.raises(NotPossible, match="is no number"):
        sample(length=float("nan"))


def test_beyond_the_source_it_says_that_it_extrapolates():
    assert sample(length=5).working.cautions == ["Mind the edge."]
    cautions = sample(length=50).working.cautions
    assert cautions == [
        "length 50 mm lies outside 1 to 10, where the source holds: this extrapolates.",
        "Mind the edge.",
    ]


def test_no_result_is_an_answer_in_words():
    @a_sum(example="")
    def division(*, by: Annotated[float, Of("")]) -> Worked[float]:
        """Division."""
        return Worked(1 / by, Working())

    with pytest.raises(NotPossible, match="division has no result for these values"):
        division(by=0)


def test_where_each_value_comes_from_is_kept():
    ring = find_sum("ring-gap")
    found = {"bore": Origin("3 1/2 in", "reading of 20 November"), "tyre": Origin("9", "book")}
    done = work_out(ring, {"least": "0.003"}, found=found)
    origins = {each.name: each.origin for each in done.given}
    assert origins == {
        "bore": "reading of 20 November",
        "least": "typed now",
        "most": "taken where nothing is typed",
    }
    typed = work_out(ring, {"bore": "4 in"}, found=found)
    assert typed.given[0].origin == "typed now"
    assert typed.given[0].value == 4


def test_volumes_come_out_as_a_measuring_glass_shows_them():
    done = work_out(find_sum("displacement"), {"bore": "100 mm", "stroke": "100 mm"})
    swept = done.results["displacement"]
    assert (round(swept.value, 1), swept.unit) == (785.4, "cc")
