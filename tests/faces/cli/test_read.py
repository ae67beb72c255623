import json

import pytest


def reading(run, line):
    ran = run(f"{line} --json")
    assert ran.code == 0, ran.err
    return json.loads(ran.out)


def test_a_slipped_digit_is_refused_and_kept_only_when_it_is_meant(in_demo, run):
    # 5.9752 for 5.7952 or 5.7592: common practice, no source
    line = "shimstock read brackwater F001 1 5.9752 5.7554 5.7532 5.7568 5.7546 5.7528"
    refused = run(line)

    assert refused.code == 2
    assert "slipped digit" in " ".join(refused.err.split())
    assert "--meant" in refused.err
    assert reading(run, f"{line} --meant")["reading"]["values"][0] == 5.9752


@pytest.mark.parametrize(
    ("typed", "inches"),
    [
        ('"1 3/8 in"', 1.375),
        ("1-3/8in", 1.375),
        ("34.925mm", 1.375),
    ],
)
def test_values_are_kept_as_typed_and_understood_once(typed, inches, in_demo, run):
    got = reading(run, f"shimstock read brackwater steering-free-movement {typed}")["reading"]

    assert got["typed"] == [typed.strip('"')]
    assert got["values"] == [pytest.approx(inches, abs=1e-12)]


def test_a_negative_number_is_a_number_and_no_option(in_demo, run):
    ran = run("shimstock read brackwater F045 -0.003 --finished")

    assert "-0.003" in ran.err
    assert "No such option" not in ran.err


def test_a_dash_is_a_place_not_read(in_demo, run):
    got = reading(run, "shimstock read brackwater F001 2 - 5.7541 - 5.7551 5.7537 -")["reading"]

    assert got["values"] == [None, 5.7541, None, 5.7551, 5.7537, None]


def test_as_found_stays_beside_as_finished(in_demo, run):
    reading(run, "shimstock read brackwater F067 right 0.002 --finished")

    both = json.loads(run("shimstock verdicts brackwater F067 --json").out)["verdicts"]
    assert [(v["stage"], v["verdict"]) for v in both if v["piece"] == "right"] == [
        ("as found", "worn out"),
        ("as finished", "good"),
    ]


def test_a_surer_gauge_settles_a_borderline_reading(in_demo, run):
    plain = reading(run, "shimstock read brackwater F060 175")
    surer = reading(run, 'shimstock read brackwater F060 175.5 --good-to "0.2 degF"')

    assert plain["verdicts"][0]["verdict"] == "borderline"
    assert plain["verdicts"][0]["settles"]
    assert surer["verdicts"][0]["verdict"] == "worn out"
    assert surer["verdicts"][0]["p"] < 0.01


def test_the_instrument_can_be_named(in_demo, run):
    got = reading(run, "shimstock read brackwater F060 165 --with thermometer")

    assert got["reading"]["instrument"]["name"] == "thermometer"


def test_a_reading_says_what_to_do(in_demo, run):
    ran = run("shimstock read brackwater F021 0.002 0.003 0.002 0.002 0.009 0.009")

    said = " ".join(ran.out.split())
    assert "WORN OUT" in said
    assert "stand-in figure" in said
    assert "face the head" in said


def test_several_pieces_want_the_piece_named_first(in_demo, run):
    ran = run("shimstock read brackwater F055 350")

    assert ran.code == 2
    assert "piece" in ran.err


def test_what_was_understood_has_no_more_decimals_than_the_gauge_tells(in_demo, run):
    ran = run("shimstock read brackwater pedal-free-travel left '1 3/4'")

    assert ran.code == 0, ran.err
    assert "1 3/4  ->  1.75 in\n" in ran.out


def test_what_was_understood_stands_in_columns(in_demo, run):
    ran = run("shimstock read brackwater liner-bore 1 '146.28 mm' 5.7556 - 5.7567 5.7547 5.7529")

    places = {line.index("->") for line in ran.out.splitlines() if "->" in line}
    assert len(places) == 1


def test_how_the_book_wants_it_read_is_shown(in_demo, run):
    assert (
        "The book reads it so: push and pull."
        in run("shimstock read brackwater F065 right 0.0030").out
    )


def test_a_mean_of_several_readings_is_surer_than_one(in_demo, run):
    line = "shimstock read brackwater F065 right 0.0030"
    one, four = (json.loads(run(f"{line}{x} --json").out) for x in ("", " --each 4"))

    assert four["reading"]["each"] == 4
    assert four["verdicts"][0]["expanded"] < one["verdicts"][0]["expanded"]
    assert "mean of 4 readings" in run(f"{line} --each 4").out
