"""Causes and signs in a book: what is wrong with them is told, and a machine's own go first."""

import json

import pytest

from shimstock.trade.faults.network import Told
from shimstock.trade.faults.of_book import checks_of, network_of
from shimstock.trade.faults.ranking import rank
from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.schema import schema
from shimstock.trade.machine.sheet import BookErrors

HEAD = "book: shed-engine\ntitle: Shed engine (invented)\n"
OVER = HEAD + "extends: two-cylinder-diesel\n"
CHECK = "causes:\n  gear-loose:\n    check: {do: rock it, minutes: 5 min, %s}\n"
BEFORE_MORE_WAS_ASKED = (
    HEAD
    + """
parts:
  case: {name: Main case}
causes:
  key-loose: {name: Key loose, part: case, prior: rare, check: {do: rock it, minutes: 5 min}}
signs:
  rattles: {name: Rattles, causes: {key-loose: strong}}
"""
)


def faults_of(text):
    with pytest.raises(BookErrors) as caught:
        read_book(text, "shed.yaml")
    return [str(problem) for problem in caught.value.problems]


@pytest.mark.parametrize(
    ("text", "where", "says"),
    [
        (
            "causes:\n  gear-loose: {figures: [lost-motoin]}\n",
            "5: causes > gear-loose > figures ('lost-motoin')",
            "did you mean 'lost-motion'?",
        ),
        (
            "causes:\n  gear-loose: {never-with: [gear-lose]}\n",
            "5: causes > gear-loose > never-with ('gear-lose')",
            "did you mean 'gear-loose'?",
        ),
        (
            "causes:\n  gear-loose: {never-with: gear-loose}\n",
            "5: causes > gear-loose > never-with ('gear-loose')",
            "excludes itself; name another cause, or take the line out",
        ),
        (
            "causes:\n  gear-loose: {prior: 3}\n",
            "5: causes > gear-loose > prior ('3')",
            "says how often by a number from 0 to 1; 0.03 would do",
        ),
        (
            "causes:\n  gear-loose: {prior: -0.1}\n",
            "5: causes > gear-loose > prior ('-0.1')",
            "by a number from 0 to 1; occasional or 0.03 would do",
        ),
        (
            CHECK % "dangers: [fule]",
            "6: causes > gear-loose > check > dangers ('fule')",
            "is not among the danger words of the cautions; did you mean 'fuel'?",
        ),
        (
            CHECK % "open: [tnak]",
            "6: causes > gear-loose > check > open ('tnak')",
            "did you mean 'tank'?",
        ),
        (
            CHECK % "dangers: [running]",
            "6: causes > gear-loose > check > dangers ('running')",
            "is a danger only while the engine turns; add 'when: running' or 'cranking', "
            "or take 'running' out and look with it standing",
        ),
        (
            CHECK % "dangers: [running, driving], when: cranking",
            "6: causes > gear-loose > check > dangers ('driving')",
            "is a danger only while the machine is driven; add 'when: running', "
            "or take 'driving' out and look with the machine standing",
        ),
        (
            "signs:\n  fan-rocks: {dangers: [running]}\n",
            "5: signs > fan-rocks > dangers ('running')",
            "or take 'running' out and look with it standing",
        ),
        (
            "signs:\n  fan-rocks: {dangers: [driving]}\n",
            "5: signs > fan-rocks > dangers ('driving')",
            "or take 'driving' out and look with the machine standing",
        ),
        (
            CHECK % "closed: [tnak]",
            "6: causes > gear-loose > check > closed ('tnak')",
            "is not among the joints; did you mean 'tank'?",
        ),
        (
            CHECK % "open: [tank], closed: [tank]",
            "6: causes > gear-loose > check > closed ('tank')",
            "is to be open and closed at once; leave it in one of the two",
        ),
        (
            "signs:\n  fan-rocks: {closed: [bonet]}\n",
            "5: signs > fan-rocks > closed ('bonet')",
            "is not among the joints; did you mean 'bonnet'?",
        ),
        (
            "signs:\n  fan-rocks: {where: fann}\n",
            "5: signs > fan-rocks > where ('fann')",
            "is not among the parts; did you mean 'fan'?",
        ),
        (
            "signs:\n  fan-rocks: {figure: fan-rok}\n",
            "5: signs > fan-rocks > figure ('fan-rok')",
            "did you mean 'fan-rock'?",
        ),
        (
            "signs:\n  fan-rocks: {open: [bonet]}\n",
            "5: signs > fan-rocks > open ('bonet')",
            "is not among the joints; did you mean 'bonnet'?",
        ),
        (
            "signs:\n  fan-rocks: {dangers: [fule]}\n",
            "5: signs > fan-rocks > dangers ('fule')",
            "did you mean 'fuel'?",
        ),
        (
            "signs:\n  fan-rocks:\n    causes: {gear-loose: 40}\n",
            "6: signs > fan-rocks > causes > gear-loose ('40')",
            "says how strongly by a number from 0 to 1; 0.4 would do",
        ),
        (
            "signs:\n  fan-rocks:\n    causes: {gear-lose: 0.4}\n",
            "6: signs > fan-rocks > causes > gear-lose ('gear-lose')",
            "is not among the causes; did you mean 'gear-loose'?",
        ),
        (
            "causes:\n  gear-loose:\n    forbids: {engine: running, why: so, until: oil-wong}\n",
            "6: causes > gear-loose > forbids > until ('oil-wong')",
            "is not among the causes; did you mean 'oil-wrong'?",
        ),
        (
            "causes:\n  gear-loose:\n    forbids: {engine: turning, why: so, until: gear-loose}\n",
            "6: causes > gear-loose > forbids > until ('gear-loose')",
            "waits for itself; name another cause, or take the line out",
        ),
        (
            "signs:\n  fan-rocks:\n    forbids: {engine: turning, why: so, until: oil-wrong}\n",
            "6: signs > fan-rocks > forbids > until ('oil-wrong')",
            "does not bring this sign on, so nobody would look for it; one of its causes would do",
        ),
        (
            "signs:\n  knock:\n    forbids: {engine: running, why: so, until: nozzle-bad}\n",
            "6: signs > knock > forbids > until ('nozzle-bad')",
            "cannot be cleared while the engine must not turn; "
            "give that check 'standing', or take the line out",
        ),
        (
            "signs:\n  knock:\n    forbids: {engine: flying, why: so}\n",
            "6: signs > knock > forbids > engine ('flying')",
            "'running' or 'turning' would do",
        ),
        (
            CHECK % "standing: {do: look at it}",
            "6: causes > gear-loose > check > standing",
            "is asked of a check that is done standing as it is; "
            "take it out, or say 'when: running' or 'cranking'",
        ),
        (
            CHECK % "when: running, standing: {do: look, dangers: [running]}",
            "6: causes > gear-loose > check > standing > dangers ('running')",
            "is no danger of an engine that stands; take it out",
        ),
        (
            CHECK % "when: running, standing: {do: look, dangers: [fule]}",
            "6: causes > gear-loose > check > standing > dangers ('fule')",
            "did you mean 'fuel'?",
        ),
    ],
)
def test_what_is_wrong_is_told_on_its_line_with_what_would_do(text, where, says):
    (fault,) = faults_of(OVER + text)

    assert fault.startswith(f"shed.yaml:{where}: ")
    assert fault.endswith(says)


@pytest.mark.parametrize("chance", [0, 0.03, 1])
def test_any_share_will_do_as_a_prior_and_as_a_weight(chance):
    own = f"causes:\n  gear-loose: {{prior: {chance}}}\nsigns:\n  fan-rocks:\n    causes: "
    book = read_book(f"{OVER}{own}{{gear-loose: {chance}}}\n")

    assert book.causes["gear-loose"].chance == chance
    assert book.signs["fan-rocks"].weights["gear-loose"] == chance


def test_a_danger_word_is_wanted_of_the_machines_own_cautions_too():
    own = "cautions:\n  dust: {name: Dust, dangers: [dust], do: Wet it., never: No air gun.}\n"

    assert read_book(OVER + own + CHECK % "dangers: [dust]").causes["gear-loose"].check.dangers


@pytest.mark.parametrize(
    ("dangers", "when"),
    [("running", "cranking"), ("running", "running"), ("running, driving", "running")],
)
def test_a_check_with_the_dangers_of_running_says_when(dangers, when):
    book = read_book(OVER + CHECK % f"dangers: [{dangers}], when: {when}")

    assert book.causes["gear-loose"].check.when == when


def test_a_prior_of_the_machines_book_goes_before_the_starters_and_leaves_the_rest():
    starter = read_book(OVER)
    book = read_book(OVER + "causes:\n  gear-loose: {prior: 0.2, page: our own eleven}\n")
    told = Told({"fan-rocks": True})

    loose = book.causes["gear-loose"]
    assert loose.check == starter.causes["gear-loose"].check
    assert (loose.chance, loose.stand_in) == (0.2, False)
    assert {key for key, cause in book.causes.items() if not cause.stand_in} == {"gear-loose"}
    # Bayes' rule by hand, with the one sign seen and everything else at rest.
    chance = rank(network_of(book), told).chances["gear-loose"]
    assert chance == pytest.approx(0.2 * _shows(0.4) / (0.2 * _shows(0.4) + 0.8 * _shows(0)))
    assert chance > rank(network_of(starter), told).chances["gear-loose"]


def _shows(loose: float) -> float:
    """Chance that the fan rocks, by the weight with which the key brings it on."""
    others = [(0.03, 0.8), (0.03, 0.4), (0.03, 0.4), (0.01, 0.4), (0.03, 0.1)]
    quiet = 0.99 * (1 - loose)
    for prior, weight in others:
        quiet *= 1 - prior * weight
    return 1 - quiet


def test_one_weight_is_changed_one_added_and_one_taken_away():
    starter = read_book(OVER).signs["fan-rocks"]
    own = "gear-loose: weak\n      rod-bearing-worn: 0.05\n      weights-sticking:\n"
    sign = read_book(f"{OVER}signs:\n  fan-rocks:\n    causes:\n      {own}").signs["fan-rocks"]

    wanted = {**starter.weights, "gear-loose": 0.1, "rod-bearing-worn": 0.05}
    del wanted["weights-sticking"]
    assert sign.weights == wanted
    assert (sign.name, sign.where, sign.figure, sign.leak) == (
        starter.name,
        starter.where,
        starter.figure,
        starter.leak,
    )


def test_a_changed_weight_stays_a_stand_in_until_it_is_said_where_it_is_from():
    changed = OVER + "signs:\n  fan-rocks:\n    causes: {gear-loose: 0.6}\n"

    assert read_book(changed).signs["fan-rocks"].stand_in
    assert not read_book(changed + "    page: 88\n").signs["fan-rocks"].stand_in


def test_a_figure_taken_away_that_a_cause_needs_is_told():
    (fault, *_) = faults_of(OVER + "figures:\n  lost-motion:\n")

    assert "is taken away here, but causes > linkage-slack > figures needs it" in fault


def test_an_old_book_without_the_newer_fields_still_loads():
    book = read_book(BEFORE_MORE_WAS_ASKED)

    cause, sign = book.causes["key-loose"], book.signs["rattles"]
    assert (cause.figures, cause.never_with, cause.check.hands) == ((), (), 1)
    assert (sign.where, sign.figure, sign.minutes, sign.open) == (None, None, 0, ())
    assert rank(network_of(book), Told({"rattles": True})).raised == ("key-loose",)


def test_the_schema_knows_the_fields():
    described = schema()["$defs"]

    assert {"figures", "never-with", "page"} <= set(described["Cause"]["properties"])
    assert {"where", "figure", "minutes", "open", "page"} <= set(described["Sign"]["properties"])
    assert {"hands", "needs", "dangers", "standing"} <= set(described["Check"]["properties"])
    assert {"forbids", "also-said"} <= set(described["Sign"]["properties"])
    assert "forbids" in described["Cause"]["properties"]
    assert {"engine", "why", "until"} <= set(described["Forbids"]["properties"])
    assert json.dumps(described)


def test_a_copy_that_a_machine_keeps_is_not_held_to_rules_that_came_since():
    """A shed of before this rule opens still, and its check counts as one of a running engine."""
    text = OVER + CHECK % "dangers: [running]"
    with pytest.raises(BookErrors):
        read_book(text)

    book = read_book(text, kept=True)

    assert checks_of(book)["cause:gear-loose"].engine
