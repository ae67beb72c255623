"""A case file: what it comes to, and all that can be wrong with one. Invented numbers."""

import json
from copy import deepcopy
from itertools import product
from pathlib import Path
from statistics import NormalDist

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from shimstock.trade.faults import case as case_module
from shimstock.trade.faults.case import MOST_BYTES, answer, offered, read_case
from shimstock.trade.faults.case_form import CaseErrors, misfits
from shimstock.trade.faults.case_schema import MOST, case_schema

SIX = json.loads((Path(__file__).parent / "six_causes.json").read_text(encoding="utf-8"))
FORM = Draft202012Validator(case_schema())


def with_(**changed):
    return deepcopy(SIX) | changed


def read(data):
    return read_case(json.dumps(data).encode())


def faults_of(data):
    raw = data if isinstance(data, bytes) else json.dumps(data).encode()
    with pytest.raises(CaseErrors) as errors:
        read_case(raw)
    return {each.where: each for each in errors.value.faults}


def by_every_machine(data):
    """Chances by the definition: every set of causes, its prior, and what each finding does in it.

    Source: leaky noisy-OR, Pearl 1988; Henrion 1989.
    """
    said = {k: v == "seen" for k, v in data["reported"].items() if v != "not looked"}
    said |= data.get("observed", {})
    total, shares = 0.0, dict.fromkeys((c["id"] for c in data["causes"]), 0.0)
    for there in product((False, True), repeat=len(shares)):
        machine = {c for c, is_there in zip(shares, there, strict=True) if is_there}
        if any(len(machine & set(group)) > 1 for group in data["exclusive"]):
            continue
        weight = 1.0
        for cause in data["causes"]:
            weight *= cause["prior"] if cause["id"] in machine else 1 - cause["prior"]
        for finding in data["findings"]:
            quiet = 1 - finding["leak"]
            for cause in machine & finding["causes"].keys():
                quiet *= 1 - finding["causes"][cause]
            match said.get(finding["id"]):
                case None:
                    pass
                case True:
                    weight *= 1 - quiet
                case False:
                    weight *= quiet
                case number:
                    absent, present = (
                        NormalDist(*finding["reading"][key]) for key in ("absent", "present")
                    )
                    weight *= quiet * absent.pdf(number) + (1 - quiet) * present.pdf(number)
        total += weight
        for cause in machine:
            shares[cause] += weight
    return {cause: share / total for cause, share in shares.items()}


# --- what it comes to ------------------------------------------------------------------


@pytest.mark.parametrize(
    "observed",
    [
        {},
        {"rock read": 19.5},
        {"rock read": True, "hunts": True},
        {"hub-seen": False, "bevel-seen": True},
        {"rocks": False, "starves": True},
    ],
)
def test_every_cause_is_ranked_as_by_every_machine(observed):
    data = with_(observed=observed)

    ranking = answer(read(data)).ranking

    wanted = by_every_machine(data)
    assert ranking.chances.keys() == wanted.keys()
    assert ranking.chances == pytest.approx(wanted, rel=1e-12)
    assert list(ranking.chances.values()) == sorted(ranking.chances.values(), reverse=True)
    assert (ranking.method, ranking.error) == ("exact", 0)


def test_observed_goes_before_reported():
    case = read(with_(observed={"hums": True, "rock read": 3}))

    assert case.told.findings == {"rocks": True, "hums": True, "rock read": 3.0}


def test_not_looked_is_nothing_told():
    said = with_(reported={"rocks": "seen", "hunts": "not looked"})
    left_out = with_(reported={"rocks": "seen"})

    assert read(said) == read(left_out)


def test_minutes_take_in_all_that_is_needed_and_still_closed():
    case = read(with_(open=["hood"]))

    assert case.minutes("hold the camshaft") == 20 + 45 + 25
    assert case.minutes("look at the hub") == 5
    assert read(SIX).minutes("hold the camshaft") == 20 + 45 + 25 + 10
    everything = read(with_(open=["hood", "side-cover", "top-cover"]))
    assert everything.minutes("hold the camshaft") == 20


def test_the_hub_that_is_at_hand_is_looked_at_before_a_long_way_in():
    without_tests = [c for c in SIX["checks"] if c["id"] not in ("read the rock", "listen")]

    found = answer(read(with_(checks=without_tests))).next

    assert (found.check, found.minutes) == ("look at the hub", 5)
    assert found.expected > 5


def test_a_check_that_was_done_is_not_offered_again():
    """Every answer leads on, until nothing is left: no check is named twice."""
    data, named = with_(observed={}), []
    gives = {check["id"]: check["gives"] for check in SIX["checks"]}
    while found := answer(read(data)).next:
        named.append(found.check)
        data["observed"] |= dict.fromkeys(gives[found.check], False)

    assert len(named) == len(set(named))
    assert {"look at the hub", "look at the bevels", "hold the camshaft"} <= set(named)
    assert "drain the tap" not in named  # nothing that was seen or read speaks for it


def test_a_check_is_over_when_its_findings_are_observed_or_its_causes_were_looked_at():
    bench = {"id": "strip it", "gives": ["hub-seen", "starves"], "minutes": 300,
             "confirms": ["hub-loose"]}  # fmt: skip
    data = with_(checks=[*SIX["checks"], bench])
    before = offered(read(data))
    after = offered(read(data | {"observed": {"hub-seen": True}}))

    assert before.keys() - after.keys() == {"look at the hub", "strip it"}


def test_a_check_that_can_tell_nothing_is_not_offered():
    bench = {"id": "strip it", "minutes": 300, "confirms": ["hub-loose"]}  # gives no finding
    data = with_(checks=[*SIX["checks"], bench])
    everything = {check["id"] for check in SIX["checks"]}

    assert offered(read(data)).keys() == everything - {"drain the tap", "push the weights"}
    heard = read(data | {"observed": {"hunts": True}})
    assert offered(heard).keys() == everything - {"listen"}  # it hunts: tap and weights come in


def test_a_cause_found_is_evidence_like_any_other():
    ranking = answer(read(with_(observed={"bevel-seen": True}))).ranking

    assert 0.95 < ranking.chances["bevel-worn"] < 1
    assert ranking.chances["mesh-worn"] < answer(read(SIX)).ranking.chances["mesh-worn"]


@pytest.mark.parametrize(
    ("observed", "found"),
    [
        ({}, set()),
        ({"hub-seen": True, "bevel-seen": True, "mesh-seen": False}, {"hub-loose", "bevel-worn"}),
        ({"rocks": True, "rock read": 26}, set()),  # they show a cause, and settle none
        ({"tight-seen": 26}, {"bevel-tight"}),
        ({"tight-seen": 9}, set()),
    ],
)
def test_what_a_check_showed_is_told_to_those_who_look_ahead(monkeypatch, observed, found):
    """An inspection counts as found where it was seen, or read as there rather than not."""
    from shimstock.trade.faults.search import Search

    told = []
    monkeypatch.setattr(
        case_module, "next_checks", lambda *_, found, **__: told.append(found) or Search()
    )
    data = with_(observed=observed)
    tight = next(each for each in data["findings"] if each["id"] == "tight-seen")
    tight["reading"] = {"absent": [10, 4], "present": [25, 6]}
    answer(read(data))

    assert told == [found]


def test_the_search_goes_on_where_looking_ahead_sees_nothing(monkeypatch):
    """What the drawn machines do not hold is still looked for, by chance a minute."""
    from shimstock.trade.faults.search import Search

    monkeypatch.setattr(case_module, "next_checks", lambda *_, **__: Search())
    case = read(SIX)
    found = answer(case)

    chances = found.ranking.chances
    worth = {"look at the hub": chances["hub-loose"] / 5,
             "look at the bevels": chances["bevel-worn"] / 55,
             "hold the camshaft": chances["mesh-worn"] / 100}  # fmt: skip
    assert found.next.check == max(worth, key=worth.get)
    assert found.next.minutes == case.minutes(found.next.check)


@pytest.mark.parametrize("known", [
    {"reported": {"hums": "not seen"}},
    {"reported": {}, "observed": {"rock read": 3}},
])  # fmt: skip
def test_nothing_seen_is_nothing_to_look_for(known):
    """A reading that speaks against its causes has nothing seen either."""
    found = answer(read(with_(**known)))

    assert found.next is None
    assert len(found.ranking.chances) == 6


def test_a_cause_that_never_brings_it_on_is_not_looked_for():
    never = [SIX["findings"][0] | {"causes": {"hub-loose": 0}}, *SIX["findings"][1:]]

    assert answer(read(with_(findings=never))).next is None


def test_a_check_that_costs_nothing_can_be_weighed():
    free = [check | {"minutes": 0, "joints": []} for check in SIX["checks"]]

    found = answer(read(with_(checks=free))).next

    assert found.minutes == 0


def test_a_case_may_hold_no_more_than_causes_and_findings():
    bare = {key: SIX[key] for key in ("format", "causes", "findings")}

    found = answer(read(bare))

    assert found.next is None
    assert found.ranking.chances == pytest.approx(
        {c["id"]: c["prior"] for c in SIX["causes"]}, rel=1e-12
    )


# --- what can be wrong -----------------------------------------------------------------


def changed(path, value, data=SIX):
    """A case with another value in one place."""
    data = deepcopy(data)
    at = data
    for step in path[:-1]:
        at = at[step]
    at[path[-1]] = value
    return data


NAN, INFINITY = float("nan"), float("inf")


@pytest.mark.parametrize(
    ("path", "value", "where", "found", "wrong", "would"),
    [
        (["format"], "diag-case/9", "$.format", '"diag-case/9"', "not known", '"diag-case/1"'),
        (["causes", 1, "id"], "hub-loose", "$.causes[1].id", '"hub-loose"', "$.causes[0]", "own"),
        (["joints", 1, "needs"], ["hod"], "$.joints[1].needs[0]", '"hod"', "joints", '"hood"'),
        (["checks", 0, "gives"], ["hub"], "$.checks[0].gives[0]", '"hub"', "findings", "name"),
        (["checks", 0, "confirms"], ["hub"], "$.checks[0].confirms[0]", '"hub"', "causes", "name"),
        (["checks", 2, "joints"], ["top"], "$.checks[2].joints[0]", '"top"', "joints", "name"),
        (["findings", 2, "causes"], {"x": 0.1}, "$.findings[2].causes.x", '"x"', "causes", "name"),
        (["exclusive"], [["bevel-worn", "q"]], "$.exclusive[0][1]", '"q"', "causes", "name"),
        (["exclusive"], [["mesh-worn"] * 2], "$.exclusive[0]", "a list of 2", "one twice", "once"),
        (["exclusive"], [["bevel-worn"]], "$.exclusive[0]", "a list of 1", "holds 1", "2 to"),
        (["reported", "rock"], "seen", "$.reported.rock", '"rock"', "findings", "rocks"),
        (["reported", "rocks"], "yes", "$.reported.rocks", '"yes"', "not known", '"not looked"'),
        (["observed"], {"smokes": True}, "$.observed.smokes", '"smokes"', "findings", "name"),
        (["observed"], {"rocks": 3}, "$.observed.rocks", "3", "has no reading", "true or false"),
        (["observed"], {"rocks": None}, "$.observed.rocks", "null", "is null", "true or false"),
        (["open"], ["bonnet"], "$.open[0]", '"bonnet"', "joints", "name"),
        (["causes", 0, "prior"], 1.3, "$.causes[0].prior", "1.3", "out of range", "0 to 1"),
        (["causes", 0, "prior"], "3%", "$.causes[0].prior", '"3%"', "is a word", "a number"),
        (["causes", 0, "prior"], True, "$.causes[0].prior", "true", "true or false", "a number"),
        (["causes", 0, "prior"], NAN, "$.causes[0].prior", "nan", "no number", "0 to 1"),
        (["findings", 0, "leak"], -0.1, "$.findings[0].leak", "-0.1", "out of range", "0 to 1"),
        (["findings", 2, "causes", "bevel-tight"], 7, "$.findings[2].causes['bevel-tight']", "7",
         "out of range", "0 to 1"),
        (["findings", 4, "reading", "absent"], [9, 0], "$.findings[4].reading.absent[1]", "0",
         "out of range", "1e-12"),
        (["findings", 4, "reading", "present"], [9], "$.findings[4].reading.present", "a list of 1",
         "holds 1", "2 would do"),
        (["checks", 3, "minutes"], INFINITY, "$.checks[3].minutes", "inf", "no number", "1e+06"),
        (["checks", 3, "minutes"], -5, "$.checks[3].minutes", "-5", "out of range", "0 to"),
        (["joints", 0, "needs"], ["top-cover"], "$.joints[0].needs", "a list of 1",
         "hood needs top-cover needs side-cover needs hood", "first"),
        (["joints", 3, "needs"], ["tank"], "$.joints[3].needs", "a list of 1", "tank needs tank",
         "none"),
        (["causes", 3], "mesh", "$.causes[3]", '"mesh"', "is a word", "an object"),
        (["causes", 3, "id"], "a\nb", "$.causes[3].id", r'"a\nb"', "cannot be printed", "plain"),
        (["causes", 3, "id"], "", "$.causes[3].id", '""', "empty", "plain"),
        (["causes", 3, "id"], "x" * 101, "$.causes[3].id", '"xxx', "101 characters", "up to 100"),
        (["causes", 3, "id"], 3, "$.causes[3].id", "3", "is a number", "a word"),
        (["checks"], {"hub": 5}, "$.checks", "an object of 1", "is an object", "a list"),
        (["causes"], [], "$.causes", "a list of 0", "holds 0", "1 to"),
        (["joints"], [{}] * (MOST + 1), "$.joints", "a list of 2001", "holds 2001", "0 to 2000"),
    ],
)  # fmt: skip
def test_an_error_names_the_place_what_stands_there_what_is_wrong_and_what_would_do(
    path, value, where, found, wrong, would
):
    fault = faults_of(changed(path, value))[where]

    assert fault.found.startswith(found)
    assert wrong in fault.wrong
    assert would in fault.would_do


@pytest.mark.parametrize(
    ("raw", "found", "wrong"),
    [
        (b"", "nothing", "is not JSON: Expecting value at line 1, column 1"),
        (
            b'{"format":\n "diag-case/1"\n "causes": []}',
            r'"\"causes\": []}"',
            "at line 3, column 2",
        ),
        (b"\xff\xfe\xff", "", "is not plain text"),
        (b"[" * 100_000, "", "is nested too deep"),
        (b" " * (MOST_BYTES + 1), "5.0 MB", "is too large"),
        (b"[1, 2]", "a list of 2", "is a list"),
        (b"null", "null", "is null"),
    ],
)
def test_what_is_no_case_at_all_is_said(raw, found, wrong):
    fault = faults_of(raw)["$"]

    assert fault.found.startswith(found)
    assert wrong in fault.wrong
    assert fault.would_do


def test_all_that_is_wrong_is_said_at_once():
    data = changed(["causes", 0, "prior"], 2)
    data["findings"][0]["leak"] = "none"
    data["checks"][0]["gives"] = ["?"]
    del data["checks"][1]["minutes"]
    data["open"] = ["?"]

    assert faults_of(data).keys() == {
        "$.causes[0].prior",
        "$.findings[0].leak",
        "$.checks[0].gives[0]",
        "$.checks[1].minutes",
        "$.open[0]",
    }


def test_a_key_that_stands_twice_is_said():
    raw = json.dumps(SIX).replace('"hums": "not seen"', '"rocks": "not seen"').encode()

    fault = faults_of(raw)["$.reported.rocks"]

    assert (fault.found, fault.wrong) == ('"not seen"', "stands twice")


def test_a_field_that_is_misspelt_is_said_and_one_of_somebodys_own_is_not():
    faults = faults_of(with_(observd={"hunts": True}, shed="ours", colour=["red"]))

    assert list(faults) == ["$.observd"]
    assert faults["$.observd"].would_do == 'did you mean "observed"?'


def test_each_circle_is_said_once():
    joints = [{"id": n, "minutes": 1, "needs": [needs]} for n, needs in
              [("a", "b"), ("b", "a"), ("c", "a"), ("d", "e"), ("e", "f"), ("f", "d")]]  # fmt: skip

    found = [f.wrong for f in faults_of(with_(joints=joints)).values() if "circle" in f.wrong]

    assert found == [
        "goes in a circle: a needs b needs a",
        "goes in a circle: d needs e needs f needs d",
    ]


def test_a_long_chain_of_joints_is_no_trouble():
    chain = [{"id": f"j{n}", "minutes": 1, "needs": [f"j{n - 1}"] * bool(n)} for n in range(MOST)]
    checks = [SIX["checks"][0] | {"joints": [f"j{MOST - 1}"]}]

    assert read(with_(joints=chain, checks=checks)).minutes("look at the hub") == 5 + MOST


# --- the form as it is published -------------------------------------------------------


def test_it_is_json_schema_and_takes_the_six_causes():
    Draft202012Validator.check_schema(case_schema())

    assert [error.message for error in FORM.iter_errors(SIX)] == []


def places(value, path=()):
    yield path
    if isinstance(value, dict | list):
        for step in value if isinstance(value, dict) else range(len(value)):
            yield from places(value[step], (*path, step))


ALL = with_(observed={"rock read": 3.5, "hums": True}, open=["hood"])
PLACES = [path for path in places(ALL) if path]
VALUES = [None, True, -1.0, 0.0, 0.5, 1.0, 3.0, 1e13, "", "seen", "rocks", "a\nb", "x" * 200,
          [], ["hood"], ["hood", "hood"], [1.0, 2.0], [1.0, 0.0], [[]], {}, {"rocks": 1.0},
          {"id": "a"}, {"hub-loose": 2.0}]  # fmt: skip


@settings(deadline=None, max_examples=400)
@given(st.sampled_from(PLACES), st.sampled_from(VALUES))
def test_the_reader_and_an_independent_validator_agree_on_the_form(path, value):
    """Source: the jsonschema library."""
    data = json.loads(json.dumps(changed(path, value, ALL)), parse_int=float)

    ours = {fault.where for fault in misfits(data, case_schema())}

    assert bool(ours) == (not FORM.is_valid(data)), (path, value, ours)


@settings(deadline=None, max_examples=200)
@given(st.sampled_from(PLACES), st.sampled_from(VALUES))
def test_no_file_ends_in_anything_but_an_answer_or_an_error_in_words(path, value):
    from shimstock.trade.faults.network import CannotBe

    try:
        found = answer(read(changed(path, value, ALL)))
    except (CaseErrors, CannotBe) as error:
        assert str(error)
    else:
        assert all(0 <= chance <= 1 for chance in found.ranking.chances.values())


def test_a_test_that_shows_by_itself_does_not_lead_away_from_the_complaint():
    """What was reported is looked for; a result since then only tells more of it."""
    data = {
        "format": "diag-case/1",
        "causes": [{"id": "near", "prior": 0.02}, {"id": "far", "prior": 0.02}],
        "findings": [
            {"id": "smokes", "leak": 0.01, "causes": {"near": 0.8}},
            {"id": "hums", "leak": 0.01, "causes": {"far": 0.9}},
            {"id": "near seen", "leak": 0.001, "causes": {"near": 0.95}},
            {"id": "far seen", "leak": 0.001, "causes": {"far": 0.95}},
        ],
        "checks": [
            {"id": "look near", "gives": ["near seen"], "minutes": 60, "confirms": ["near"]},
            {"id": "look far", "gives": ["far seen"], "minutes": 5, "confirms": ["far"]},
        ],
        "reported": {"smokes": "seen"},
        "observed": {"hums": True},
    }

    assert answer(read(data)).next.check == "look near"
    assert answer(read({**data, "observed": {"near seen": False, "hums": True}})).next is None
    del data["reported"]
    data["observed"] = {"smokes": True, "hums": True}
    assert answer(read(data)).next.check == "look far"
