import json
import subprocess
import sys

import pytest

from shimstock.faces.cli.sum_lines import typed_as
from shimstock.trade.sums.find import all_sums

SUMS = [each for sums in all_sums().values() for each in sums]
HEAVY = {"django", "yaml", "numpy", "scipy", "matplotlib", "pint", "ortools"}


def test_alone_it_lists_every_sum_with_a_sentence(run):
    ran = run("shimstock sum")

    assert ran.code == 0
    for each in SUMS:
        assert f"\n{each.name} " in ran.out
    as_json = json.loads(run("shimstock sum --json").out)
    assert {s["sum"] for sums in as_json["families"].values() for s in sums} == {
        each.name for each in SUMS
    }


def test_a_family_lists_its_own(run):
    listed = json.loads(run("shimstock sum brakes --json").out)["families"]
    assert "band-brake" in {each["sum"] for each in listed.pop("brakes")}
    assert listed == {}


@pytest.mark.parametrize("sum_", SUMS, ids=lambda s: s.name)
def test_each_example_is_typed_as_its_help_shows_it(sum_, run):
    told = run(f"shimstock sum {sum_.name} --help")
    ran = run(f"{typed_as(sum_)} --json")

    assert told.code == 0
    assert " ".join(typed_as(sum_).split()) in " ".join(told.out.replace("\\\n", "").split())
    assert [line for line in told.out.splitlines() if len(line) > 80] == []
    assert "Source:" in told.out and "Answers:" in told.out
    assert (ran.code, ran.err) == (0, "")
    answer = json.loads(ran.out)
    assert answer.keys() == {"sum", "given", "steps", "results", "source", "cautions"}
    assert answer["results"]
    assert all(result.keys() == {"value", "unit"} for result in answer["results"].values())


@pytest.mark.parametrize("sum_", SUMS, ids=lambda s: s.name)
def test_the_answer_fits_80_columns_and_ends_with_its_results(sum_, run):
    ran = run(typed_as(sum_))

    lines = ran.out.splitlines()
    assert "Working" in lines and "Result" in lines
    assert [line for line in lines if len(line) > 80] == []
    for text in sum_.cautions:
        assert " ".join(text.split()) in " ".join(ran.out.split())


def test_the_result_is_given_in_the_units_asked_for(run):
    inches = json.loads(run("shimstock sum ring-gap --bore '88 mm' --in thou --json").out)
    assert inches["results"]["least"]["unit"] == "thou"
    assert inches["results"]["least"]["value"] == pytest.approx(12.126, abs=0.001)


def test_whoever_types_inches_gets_the_working_in_inches(run):
    metric = run("shimstock sum displacement --bore '108 mm' --stroke '133 mm'").out
    inch = run("shimstock sum displacement --bore '4 1/4 in' --stroke '5 1/4 in'").out
    assert "D = 108 mm; bore" in metric
    assert "D = 4.25 in; bore" in inch
    assert "74.48 in3" in inch


@pytest.mark.parametrize(
    ("typed", "wrong", "would"),
    [
        ("ringgap", "ringgap is no sum of this book", "ring-gap"),
        ("ring-gap", "still needs --bore (diameter of the bore", "shimstock sum ring-gap --bore"),
        ("ring-gap --bore '88 psi'", "88 psi is a pressure; bore is a length", "5.7592"),
        ("ring-gap --bore '-3 in'", "bore −3 in must be above 0", "it means: diameter of the bore"),
        ("ring-gap --bore 3in --least 0.01", "must not be above most", "swap them"),
        ("ring-gap --bore 3in --in psi", "psi is no unit for any of these results", "in"),
        ("ring-gap --bore 3in --in furlong", "furlong is no unit known here", "mm"),
        ("ring-gap --unit ohm --bore 3", "unit ohm is no unit of length", "mm and in"),
        ("displacement --bore 3in --stroke 4in --cylinders 2.5", "2.5 is no whole number", "2"),
        ("ring-gap --bore 3", "3 says no unit", "3 mm or 3 in"),
        ("displacement --bore 108 --stroke '5.25 in'", "108 says no unit", "for bore 108 mm or"),
        ("ring-gap --bore '3 in' --bore '4 in'", "were both typed for bore", "3 in"),
        ("ring-gap --bore 3in --in mm,in", "is one of two units for a length", "mm"),
        ("fuse-size --currents 5,8", "may be several numbers", "5; 8"),
        ("torque --thread 0-0 --grade 8.8", "0-0", "3/8-16"),
        ("ring-gap --boar 3", "No such option", "--help"),
    ],
)
def test_what_cannot_be_is_refused_with_the_next_move(typed, wrong, would, run):
    ran = run(f"shimstock sum {typed}")

    assert ran.code == 2
    assert ran.out == ""
    said = " ".join(ran.err.split())
    assert wrong in said
    assert would in said


def test_a_sum_loads_nothing_heavy():
    code = (
        "import sys; from shimstock.faces.cli.main import run\n"
        "try: run(['sum', 'ring-gap', '--bore', '3 in', '--in', 'mm'])\n"
        "except SystemExit: pass\n"
        "print(*sys.modules)"
    )
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert set(ran.stdout.splitlines()[-1].split()) & HEAVY == set()


def test_a_machine_fills_in_what_its_book_has_and_each_value_says_where_it_is_from(in_demo, run):
    ran = run("shimstock sum torque brackwater J36 --film anti-seize --json")

    assert ran.code == 0
    answer = json.loads(ran.out)
    origins = {name: each["origin"] for name, each in answer["given"].items()}
    assert origins["thread"] == origins["grade"] == "book, page 61"
    assert origins["film"] == "typed now"
    assert origins["share"] == "taken where nothing is typed"
    assert answer["results"]["torque"]["value"] == pytest.approx(222.298, abs=0.01)


def test_a_reading_goes_before_the_book(in_demo, run):
    out = run("shimstock sum displacement brackwater --json").out
    given = json.loads(out)["given"]
    assert "reading" in given["bore"]["origin"]
    assert given["stroke"]["origin"] == "book, page 9"
    assert given["cylinders"]["origin"] == "stand-in figure of the starter"


def test_what_the_book_lacks_is_named_with_the_option_to_type_it(in_demo, run):
    ran = run("shimstock sum torque brackwater J29")

    assert ran.code == 1
    assert "gives no grade for J29" in " ".join(ran.err.split())
    assert "--grade" in ran.err


def test_an_unknown_place_on_the_machine_is_refused(in_demo, run):
    ran = run("shimstock sum torque brackwater nowhere")

    assert ran.code == 2
    assert "nowhere" in ran.err


def test_a_lining_is_held_against_its_own_limit_in_the_book_and_a_drum_is_no_lining(in_demo, run):
    given = json.loads(run("shimstock sum lining-left brackwater F068 --json").out)["given"]
    assert given["limit"]["typed"] == "0.1250 in"
    assert "stand-in" in given["limit"]["origin"]
    assert given["thickness"]["origin"].startswith("reading")

    ran = run("shimstock sum lining-left brackwater F066")
    assert ran.code == 1
    assert "takes nothing from F066" in ran.err


def test_a_difference_of_temperature_is_said_as_a_shed_says_it(run):
    line = "shimstock sum shrink-temperature --interference 0.002in --diameter 2.5in --metal steel"
    assert "F degrees)" in run(line).out
    assert "no unit" not in run(f"{line} --in f.degrees").err
