import json

import pytest


def found(run, line):
    ran = run(line)
    assert ran.code == 0, ran.err
    return {each["key"]: each for each in json.loads(ran.out)["names"]}


def test_every_word_must_be_in_the_key_the_mark_or_the_name(in_demo, run):
    names = found(run, "shimstock machine names brackwater liner bore --json")

    assert set(names) == {"liner-bore", "liner-taper", "liner-out-of-round"}
    assert names["liner-bore"]["mark"] == "F001"
    assert names["liner-bore"]["pieces"] == ["1", "2"]


@pytest.mark.parametrize("word", ["j36", "timing-cover", '"gear side cover"'])
def test_a_thing_is_found_by_mark_key_or_name_in_any_case(word, in_demo, run):
    assert "timing-cover" in found(run, f"shimstock machine names brackwater {word} --json")


def test_all_kinds_are_listed_without_a_word(in_demo, run):
    names = found(run, "shimstock machine names lowmere --json")

    kinds = {each["kind"] for each in names.values()}
    assert kinds == {
        "joint", "part", "figure", "setting", "train", "sign", "cause", "gate", "question",
    }  # fmt: skip


def test_a_word_that_is_nowhere_is_said_in_words(in_demo, run):
    assert "a shorter word" in run("shimstock machine names brackwater zeppelin").out
