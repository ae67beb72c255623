"""Every sum says its source and units, its working agrees with itself, and nothing breaks it."""

import doctest
import inspect
import re
from functools import wraps
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import shimstock.trade.sums
from shimstock.faces.cli.sum_lines import example_of
from shimstock.faces.cli.sums import command_of
from shimstock.trade.numbers.coherent import WORDS
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.unit_names import INCH_POUND, OTHER_SYSTEM, UNITS, find
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Input, Of, Read, Sum, a_sum, declared
from shimstock.trade.sums.find import all_sums, families, find_sum

ROOM = Path(shimstock.trade.sums.__file__).parent
SUMS = {each.name: each for family in all_sums().values() for each in family}
EVERY = pytest.mark.parametrize("sum_", SUMS.values(), ids=SUMS.keys())
FAMILIES = {
    "brakes", "drive", "electrics", "engine", "fasteners", "fits", "freeing", "gaskets", "gears",
    "geometry", "governor", "ignition", "injection", "keys", "lifting", "oil", "paint", "power",
    "shims", "stacks",
}  # fmt: skip
FOLLOWING = {"length": "in `unit`"} | {
    word: f"in the {word} of `unit`" for word in WORDS if word != "length"
}


def complaints(sum_: Sum) -> list[str]:
    """What a sum's docstring and declaration leave out."""
    out = [f"no {word}" for word in ("Source:", ">>>") if word not in sum_.text]
    if not re.match(r".+?\.\n", f"{sum_.text}\n", re.DOTALL) or not sum_.sentence.endswith("."):
        out.append("does not begin with a sentence")
    if "Worked[" not in str(inspect.signature(sum_.function).return_annotation):
        out.append("gives no working")
    for one in sum_.inputs:
        out += input_complaints(one)
    kinds = {p.kind for p in inspect.signature(sum_.function).parameters.values()}
    if kinds != {inspect.Parameter.KEYWORD_ONLY}:
        out.append("takes arguments without their names")
    return out


def input_complaints(one: Input) -> list[str]:
    if not one.meaning:
        return [f"{one.name} has no line"]
    if not isinstance(one.takes, Of):
        yes_or_no = isinstance(one.default, bool)
        free = one.name == "unit" or isinstance(one.takes, Read | tuple) or yes_or_no
        return [] if free else [f"{one.name} is not declared"]
    if one.takes.unit in WORDS:
        wanted = [FOLLOWING[one.takes.unit]]
    elif one.takes.unit:
        known = find(one.takes.unit)
        wanted = [f"in {word}" for word in (known.name, known.words, *known.spellings)]
    else:
        wanted = ["no unit", "a count", "teeth"]
    said = any(re.search(rf"{re.escape(word)}(?=[;,:. ]|$)", one.meaning) for word in wanted)
    return [] if said else [f"{one.name} has no unit"]


def test_the_sums_are_found():
    assert set(families()) == FAMILIES
    assert sum(map(len, families().values())) == len(SUMS) >= 230, "a name stands twice"
    assert not FAMILIES & set(SUMS), "shimstock sum NAME would mean a family and a sum"


def test_a_number_of_a_kind_that_has_two_systems_is_never_taken_without_its_unit():
    """Every such unit that a sum takes offers another; see OTHER_SYSTEM."""
    kinds = [{u.kind for u in UNITS if (u.name in INCH_POUND) == inch} for inch in (True, False)]
    both = kinds[0] & kinds[1]
    taken = {
        one.takes.in_unit(unit)
        for sum_ in SUMS.values()
        for one in sum_.inputs
        if isinstance(one.takes, Of) and one.takes.unit
        for unit in ("mm", "in")
    }
    lacking = [unit for unit in taken if find(unit).kind in both and unit not in OTHER_SYSTEM]
    assert sorted(lacking) == []
    for unit, other in OTHER_SYSTEM.items():
        assert (unit in INCH_POUND) != (other in INCH_POUND), unit
        assert find(unit).kind == find(other).kind


def test_a_sum_a_file_and_every_other_file_begins_with_a_dash_below():
    for family in ROOM.iterdir():
        for file in family.glob("*.py") if family.is_dir() else ():
            text = file.read_text()
            assert text.count("@a_sum(") == (0 if file.name.startswith("_") else 1), file


@EVERY
def test_a_sum_says_its_source_its_units_and_an_example(sum_):
    assert complaints(sum_) == []


@EVERY
def test_the_example_as_typed_works_and_agrees_with_its_working(sum_):
    done = example_of(sum_)
    working = done.worked.working
    assert working.disagreements() == []
    assert done.results, "no result is named"
    assert [name for name in done.results if "_" in name] == []
    assert working.source
    assert set(sum_.cautions) <= set(working.cautions)
    assert [r.unit for r in done.results.values() if r.unit and not find(r.unit)] == []


@EVERY
def test_a_sum_becomes_a_command(sum_):
    command = command_of(sum_)
    options = [name for each in command.params for name in each.opts]
    assert [one.option for one in sum_.inputs if one.option not in options] == []


@EVERY
def test_the_docstrings_example_calls_the_sum(sum_):
    seen: list[Worked[Any]] = []
    function = sum_.function

    @wraps(function)
    def watched(**given: Any) -> Worked[Any]:
        seen.append(function(**given))
        return seen[-1]

    names = {**inspect.getmodule(sum_.function).__dict__, sum_.function.__name__: watched}
    for test in doctest.DocTestFinder(recurse=False).find(function, sum_.name, globs=names):
        doctest.DocTestRunner(verbose=False).run(test)
    assert seen
    assert [one.working.disagreements() for one in seen if one.working.disagreements()] == []


MANY = settings(
    max_examples=30, deadline=None, derandomize=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)  # fmt: skip
ABSURD = st.one_of(
    st.sampled_from([0.0, -1.0, 1.0, 1e-9, -1e-9, 1e9, 1e12, 0.5, 2.0, 90.0, 100.0, 180.0]),
    st.floats(-1e12, 1e12, allow_nan=False, allow_infinity=False),
)


def near(value: Any, one: Input) -> st.SearchStrategy[Any]:
    """Values a restorer might have instead of the example's."""
    if isinstance(one.takes, tuple):
        return st.sampled_from([*one.takes, *([None] if one.default is None else [])])
    if one.name == "unit":
        return st.sampled_from(["mm", "in"])
    if isinstance(value, bool):
        return st.booleans()
    if not isinstance(one.takes, Of):
        return st.just(value)
    if value is None:
        return st.none() | st.sampled_from([1, 2, 10] if one.whole else [0.1, 1.0, 10.0, 100.0])
    if one.many and not value:
        return st.just(value)
    if one.many:
        return st.lists(
            st.sampled_from(value).flatmap(lambda each: near_number(each, one)),
            min_size=len(value), max_size=len(value),
        )  # fmt: skip
    return near_number(value, one)


def near_number(value: float, one: Input) -> st.SearchStrategy[Any]:
    shares = st.sampled_from([1.0, 1.0, 0.9, 1.1, 0.5, 2.0, 0.3, 3.0, 0.1])
    if one.whole:
        return shares.map(lambda share: round(value * share))
    return shares.map(lambda share: value * share)


def absurd(value: Any, one: Input) -> st.SearchStrategy[Any]:
    """Values that nobody should type, and some will."""
    if isinstance(one.takes, tuple) or isinstance(value, bool) or not isinstance(one.takes, Of):
        return near(value, one)
    none = st.none() if one.default is None else st.nothing()
    number = st.integers(-10, 10**6) if one.whole else ABSURD
    return none | (st.lists(number, max_size=4) if one.many else number)


def arguments(sum_: Sum) -> dict[str, Any]:
    """What the example gives, and every other input at its default."""
    usual = {one.name: one.default for one in sum_.inputs if not one.needed}
    usual |= {each.name: each.value for each in example_of(sum_).given}
    return usual | ({"unit": _unit_of(sum_)} if sum_.unit else {})


def _unit_of(sum_: Sum) -> str:
    followed = [i for i in sum_.inputs if isinstance(i.takes, Of) and i.takes.unit in WORDS]
    units = {each.name: each.unit for each in example_of(sum_).given}
    for one in followed:
        for unit in ("mm", "in"):
            if units.get(one.name) == one.takes.in_unit(unit):
                return unit
    return sum_.unit


@EVERY
@given(data=st.data())
@MANY
def test_near_values_agree_with_their_working(sum_, data):
    drive(sum_, data, near)


@EVERY
@given(data=st.data())
@MANY
def test_absurd_values_are_refused_in_words(sum_, data):
    drive(sum_, data, absurd)


def drive(sum_: Sum, data: st.DataObject, how: Any) -> None:
    usual = arguments(sum_)
    chosen = set(data.draw(st.sets(st.sampled_from(sorted(usual)), max_size=3), "changed"))
    typed = {
        name: data.draw(how(value, sum_.input(name)), name) if name in chosen else value
        for name, value in usual.items()
    }
    try:
        worked = sum_.function(**typed)
    except (NotPossible, NotUnderstood) as error:
        assert len(str(error)) > 12
        return
    assert worked.working.disagreements() == [], typed
    for name, answer in worked.working.answers.items():
        assert isinstance(answer.value, str) or abs(answer.value) < float("inf"), name


READS = [
    one.takes for sum_ in SUMS.values() for one in sum_.inputs if isinstance(one.takes, Read)
]  # fmt: skip


@given(read=st.sampled_from(READS), text=st.text(max_size=30))
@settings(MANY, max_examples=1000)
def test_texts_are_read_or_refused_in_words(read, text):
    assert read.parse(read.example) is not None
    zeros = [re.sub(r"\d+", nought, read.example) for nought in ("0", "00")]
    wrong = (text, read.example + text, text + read.example, read.example[:-1], *zeros)
    for typed in (*wrong, re.sub(r"\d+(?=\D*$)", "0", read.example)):
        try:
            read.parse(typed)
        except NotUnderstood as error:
            assert error.would_do


def test_what_is_left_out_is_named():
    @a_sum(example="--bore 3")
    def half(*, bore: float, wear: float) -> Worked[float]:
        """Half of the bore.

        bore: the bore, in mm.
        """
        w = Working()
        w.step("b", "1/2", 0.5, "", answer="half")
        return Worked(0.5, w)

    found = complaints(declared(half))
    assert found == ["no Source:", "no >>>", "bore is not declared", "wear has no line"]


def test_a_result_that_is_no_number_is_refused():
    @a_sum(example="")
    def endless(*, bore: float) -> Worked[float]:
        """Endless."""
        w = Working()
        w.given("b", bore, "mm")
        w.step("x", "∞", float("inf"), "", answer="end")
        return Worked(bore, w)

    with pytest.raises(NotPossible, match="beyond all numbers"):
        endless(bore=1)


def test_a_sum_is_found_however_it_is_spelled():
    assert find_sum("Ring Gap") is find_sum("ring_gap")
    with pytest.raises(NotUnderstood, match="ring-gap"):
        find_sum("ringgap")
