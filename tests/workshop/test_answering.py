"""What people call a thing finds it, and first what is it, then what only mentions it.

The nicknames and American words are from memory.
"""

import pytest

from shimstock.trade.machine.starters import starter_text
from shimstock.workshop.answering import Answers, answers, plain
from shimstock.workshop.books import book_from
from shimstock.workshop.find import find_joint, find_part
from shimstock.workshop.names import names

DIESEL, CRAWLER = (
    book_from(starter_text(name), name) for name in ("two-cylinder-diesel", "petrol-crawler")
)


def found(book, words):
    return [each.key for each in names(book, words.split())]


@pytest.mark.parametrize("book", [DIESEL, CRAWLER], ids=["diesel", "crawler"])
@pytest.mark.parametrize(
    ("typed", "first"),
    [
        ("big end", ["rod-shells", "rod-caps"]),
        ("Big-end bearings", ["rod-shells"]),
        ("conrod", ["connecting-rod", "rod-caps"]),
        ("rod bolt", ["rod-caps"]),
        ("rod bolts", ["rod-caps"]),
        ("rocker gasket", ["rocker-cover"]),
        ("valve cover", ["rocker-cover-casting", "rocker-cover"]),
        ("head gasket", ["head", "head-gasket-blown"]),
        ("cylinder head", ["cylinder-head", "head", "head-flatness"]),
        ("hood", ["bonnet-panels", "bonnet"]),
        ("wrist pin", ["piston-pin"]),
        ("big end clearance", ["rod-bearing-clearance"]),
    ],
)
def test_what_people_call_it_finds_it_first(book, typed, first):
    assert found(book, typed)[: len(first)] == first


def test_a_drain_plug_is_found_where_the_oil_is_drained():
    assert found(DIESEL, "drain plug") == ["main-case"]
    assert set(found(CRAWLER, "drain plug")) == {"sump-pan", "sump", "gearbox-case"}


@pytest.mark.parametrize("typed", ["carburetor", "carburettor", "Carburetors"])
def test_american_spelling_finds_what_british_does(typed):
    assert found(CRAWLER, typed)[:2] == ["carburettor", "carburettor-flange"]


def test_a_joint_that_the_words_only_mention_comes_after_the_thing_itself():
    keys = found(DIESEL, "cylinder head")

    assert keys.index("head") < min(keys.index(each) for each in ("injector-1-seat", "rockers"))


def test_it_says_by_which_other_word_it_was_found():
    by = {each.key: each.by for each in names(DIESEL, ["head", "gasket"])}

    assert (by["head"], by["head-gasket-blown"]) == ("head gasket", "")


def test_a_command_takes_the_other_word_too():
    assert (find_part(DIESEL, "con rod"), find_joint(DIESEL, "big end")) == (
        "connecting-rod", "rod-caps",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("words", "how"),
    [
        ("j31", Answers.BY_MARK),
        ("head gasket", Answers.BY_NAME),
        ("cylinder head", Answers.FIRST),
        ("head", Answers.IN_NAME),
        ("block", Answers.BESIDE),
        ("gasket block", Answers.SOMEWHERE),
    ],
)
def test_the_best_answer_counts(words, how):
    joint = {"marks": ["J31"], "name": "Cylinder head to cylinder block"}
    assert answers(words.split(), **joint, others=["head gasket"])[0] == how


def test_what_has_not_all_the_words_does_not_answer():
    assert answers(["head", "pump"], marks=["J31"], name="Cylinder head to block") is None


def test_one_and_several_are_one_word_and_glass_stays_glass():
    assert plain("Glass bowls, gray (cork)") == "glass bowl grey"
