"""A case file at the terminal: answered in JSON and in words, and refused in words."""

import io
import json
import re
import subprocess
import sys
from pathlib import Path
from types import SimpleNamespace

import pytest
from jsonschema import Draft202012Validator

HOUSE = Path(__file__).parents[3]
SIX = HOUSE / "tests/trade/faults/six_causes.json"
PAGE = (HOUSE / "docs/fault-case.md").read_text(encoding="utf-8")


@pytest.fixture
def case(tmp_path, monkeypatch):
    """Write a case beside which commands are typed; what is given goes over the six causes."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")

    def write(**changed):
        data = json.loads(SIX.read_text(encoding="utf-8")) | changed
        (tmp_path / "case.json").write_text(json.dumps(data), encoding="utf-8")

    write()
    return write


def test_json_holds_every_cause_the_next_check_and_how_it_was_worked_out(case, run):
    ran = run("shimstock fault --case case.json --json")

    assert (ran.code, ran.err) == (0, "")
    answer = json.loads(ran.out)
    assert list(answer) == ["ranking", "next", "method", "error"]
    assert [set(each) for each in answer["ranking"]] == [{"cause", "probability"}] * 6
    assert answer["ranking"][0]["cause"] == "bevel-worn"
    assert answer["next"] == {"check": "look at the hub", "minutes": 5}
    assert (answer["method"], answer["error"]) == ("exact", 0)


def test_probabilities_are_printed_to_the_last_digit(case, run):
    """A probability read back is the one that was worked out."""
    from shimstock.trade.faults.case import answer, read_case

    told = json.loads(run("shimstock fault --case case.json --json").out)["ranking"]

    chances = answer(read_case(SIX.read_bytes())).ranking.chances
    assert {each["cause"]: each["probability"] for each in told} == chances


def test_minutes_hold_the_joints_that_are_still_closed(case, run):
    looked = {"hub-seen": False, "rock read": 24, "hunts": False}
    case(observed=looked)
    shut = json.loads(run("shimstock fault --case case.json --json").out)["next"]
    case(observed=looked, open=["hood"])
    half = json.loads(run("shimstock fault --case case.json --json").out)["next"]

    assert shut == {"check": "look at the bevels", "minutes": 20 + 25 + 10}
    assert half == {"check": "look at the bevels", "minutes": 20 + 25}


def test_nothing_left_to_check_is_null_and_said(case, run):
    case(checks=[])

    assert json.loads(run("shimstock fault --case case.json --json").out)["next"] is None
    assert "Nothing: no check is left" in run("shimstock fault --case case.json").out


def test_words_name_what_is_raised_the_next_check_and_the_minutes(case, run):
    ran = run("shimstock fault --case case.json")

    assert (ran.code, ran.err) == (0, "")
    assert re.search(r"(?m)^ +53 % +bevel-worn$", ran.out)
    assert "tap-blocked" not in ran.out  # nothing speaks for it
    assert "look at the hub: 5 min, with what is still to be opened" in ran.out
    assert re.search(r"Until the cause is found: about \d+ min", ran.out)


def test_nothing_seen_raises_nothing(case, run):
    case(reported={})

    assert (
        "Nothing that was seen speaks for any cause." in run("shimstock fault --case case.json").out
    )


def test_a_drawn_ranking_says_how_far_it_may_be_off(case, run, monkeypatch):
    from shimstock.trade.faults import exact, ranking

    monkeypatch.setattr(exact, "REACH", 0)
    monkeypatch.setattr(ranking, "WRITTEN_OUT", 0)

    told = json.loads(run("shimstock fault --case case.json --json").out)
    said = run("shimstock fault --case case.json").out

    assert told["method"] == "sampled"
    assert 0 < told["error"] < 0.1
    assert f"may be off by {100 * told['error']:.0f} %" in said


def test_a_hyphen_reads_from_stdin(case, run, monkeypatch):
    from_file = run("shimstock fault --case case.json --json").out
    stdin = SimpleNamespace(buffer=io.BytesIO(SIX.read_bytes()))
    monkeypatch.setattr("sys.stdin", stdin)

    assert run("shimstock fault --case - --json").out == from_file


def test_all_that_is_wrong_is_told_at_once_and_nothing_is_printed(case, run):
    case(open=["bonnet"], observed={"rocks": 3})

    ran = run("shimstock fault --case case.json --json")

    assert (ran.code, ran.out) == (2, "")
    said = " ".join(ran.err.split())
    assert "Typed: shimstock fault --case case.json" in said
    assert '$.open[0] ("bonnet"): is not among the joints; name one of them' in said
    assert '$.observed.rocks (3): is a number, and finding "rocks" has no reading' in said
    assert "docs/fault-case.md" in said


def test_of_very_many_faults_the_first_are_told(case, run):
    case(open=[f"j{n}" for n in range(100)])

    said = run("shimstock fault --case case.json").err

    assert "$.open[39]" in said and "$.open[40]" not in said
    assert "and 60 more" in said


def test_what_cannot_all_be_true_is_refused(case, run):
    sure = json.loads(SIX.read_text())["causes"]
    for cause in sure:
        cause["prior"] = 1 if cause["id"].startswith("bevel") else cause["prior"]
    case(causes=sure)

    ran = run("shimstock fault --case case.json")

    assert (ran.code, ran.out) == (1, "")
    assert "cannot all be true" in ran.err


def test_a_file_that_is_not_there_and_one_that_is_no_json(case, run, tmp_path):
    assert (
        "There is no file or folder nothing.json" in run("shimstock fault --case nothing.json").err
    )
    (tmp_path / "book.yaml").write_text("book: ours\n")
    ran = run("shimstock fault --case book.yaml")

    assert ran.code == 2
    assert "is not JSON" in ran.err


@pytest.mark.parametrize("more", ["brackwater", "--seen S14", "--why C31", "--keep"])
def test_a_case_stands_alone(more, case, run):
    ran = run(f"shimstock fault {more} --case case.json")

    assert ran.code == 2
    assert "a case stands alone" in ran.err


def test_neither_machine_nor_case(run):
    ran = run("shimstock fault")

    assert ran.code == 2
    assert "name a machine, or a case file with --case" in ran.err


def test_the_form_is_printed_as_json_schema_and_takes_the_case(run):
    ran = run("shimstock fault --case-schema")

    form = json.loads(ran.out)
    Draft202012Validator.check_schema(form)
    assert Draft202012Validator(form).is_valid(json.loads(SIX.read_text()))
    assert json.loads(run("shimstock fault --case-schema --json").out) == form


def test_the_example_of_the_page_is_answered_as_the_page_says(tmp_path, monkeypatch, run):
    example, answer = re.findall(r"```json\n(.*?)```", PAGE, re.DOTALL)[:2]
    monkeypatch.chdir(tmp_path)
    Path("page.json").write_text(example, encoding="utf-8")

    told = json.loads(run("shimstock fault --case page.json --json").out)

    shown = json.loads(answer.replace(", …]", "]"))
    (first,) = shown.pop("ranking")
    assert told["ranking"][0]["cause"] == first["cause"]
    assert told["ranking"][0]["probability"] == pytest.approx(first["probability"], abs=1e-12)
    assert {key: told[key] for key in shown} == shown


LOADED = """
import sys
from shimstock.faces.cli.main import run
try:
    run(["fault", "--case", sys.argv[1]])
except SystemExit as ended:
    print("ended with", ended.code, file=sys.stderr)
print(*sys.modules, file=sys.stderr)
"""


def test_a_case_needs_no_shed_and_loads_nothing_of_it():
    ran = subprocess.run([sys.executable, "-c", LOADED, SIX], capture_output=True, text=True)

    *_, ended, loaded = ran.stderr.splitlines()
    assert ended == "ended with 0"
    assert {"django", "scipy", "matplotlib"} & set(loaded.split()) == set()
