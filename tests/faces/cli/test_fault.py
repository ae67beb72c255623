"""Finding a fault by typing: ranked, kept in a search, found, and counted."""

import json
from pathlib import Path

import pytest

FAN = "--seen S14 --seen hunts --not S09 --not knock"


def told(run, line):
    ran = run(f"{line} --json")
    assert ran.code == 0, ran.err
    return json.loads(ran.out)


def words(text):
    return " ".join(text.split())


def shown(run, line):
    ran = run(line)
    assert (ran.code, ran.err) == (0, "")
    return words(ran.out)


@pytest.fixture
def fresh(in_demo, run):
    """A diesel of which nothing is known yet."""
    ran = run("shimstock machine add fresh --book two-cylinder-diesel --called Fresh")
    assert ran.code == 0, ran.err


def test_scene_1_is_ranked_as_worked_apart(fresh, run):
    """Noisy-OR worked apart from this program: C31 0.347, C30 0.340, C27 0.228, C01 0.226."""
    ranking = told(run, f"shimstock fault fresh {FAN}")["ranking"]

    assert [(each["mark"], round(each["chance"], 3)) for each in ranking[:4]] == [
        ("C31", 0.347), ("C30", 0.340), ("C27", 0.228), ("C01", 0.226),
    ]  # fmt: skip


def test_it_says_what_it_can_be_what_to_look_for_and_what_to_check_next(fresh, run):
    text = shown(run, f"shimstock fault fresh {FAN}")

    parts = ["What it can be", "Look for this first", "Next check", "Or ", "What would change"]
    places = [text.index(each) for each in parts]
    assert places == sorted(places)
    assert "Next check: Governor linkage slack" in text
    assert "shimstock read fresh F045" in text  # where its result is typed
    assert "S14 seen ×" in text  # why, in a line
    assert "stop here and open" in text


def test_bars_show_the_interval_and_the_chance(fresh, run):
    out = run(f"shimstock fault fresh {FAN}").out
    line = next(line for line in out.splitlines() if "35 %" in line)

    assert "#" in line and "|" in line and "=" in line
    bar = line[line.index("#") :].split("  ")[0]
    assert bar.index("|") == int(0.347 * 20)


def test_cautions_stand_before_the_action(fresh, run):
    text = shown(run, "shimstock fault fresh --seen white-smoke-hard-start --not slow-starter")
    first = told(run, "shimstock fault fresh --seen S02 --not S24")["offers"][0]

    assert first["cautions"]
    assert text.index("CAUTION:") < text.index(f"Do: {first['do']}"[:30])
    assert text.index("The maker's book") < text.index("CAUTION:")


def test_a_sign_is_told_by_everyday_words_or_the_nearest_are_named(fresh, run):
    assert told(run, "shimstock fault fresh --seen 'knocks under load'")["told"][0]["mark"] == "S06"

    ran = run("shimstock fault fresh --seen 'clutch smells of fish'")
    assert ran.code != 0
    assert "Did you mean: " in words(ran.err) and "Clutch slips (S18)" in words(ran.err)
    assert "Clutch drags and gears crash (S19)" in words(ran.err)


def test_what_must_not_be_run_is_said_before_what_it_can_be(fresh, run):
    text = shown(run, "shimstock fault fresh --seen S10")
    data = told(run, "shimstock fault fresh --seen S10")

    line = "The engine must not turn or run while Engine will not stop, or runs away (S10) is seen"
    assert text.index("CAUTION: Runaway diesel") < text.index(line) < text.index("What it can be")
    assert data["must_not"][0].lower().startswith(line.lower())


def test_a_free_sign_that_is_asked_stands_with_its_caution(fresh, run):
    text = shown(run, "shimstock fault fresh --seen S08")
    asked = told(run, "shimstock fault fresh --seen S08")["questions"]

    assert "Fast idle too high, or it overspeeds (S09)" in text
    assert text.index("CAUTION: Runaway diesel") < text.index("Look for this first")
    cautions = {each["mark"]: [c["name"] for c in each["cautions"]] for each in asked}
    assert cautions["S09"] == ["Runaway diesel"]


def test_with_two_searches_going_on_one_must_be_named(fresh, run):
    run("shimstock fault fresh --seen S10 --keep --about 'will not stop'")
    second = run("shimstock fault fresh --seen S22 --keep --about 'Will not stop'")
    assert "One like it goes on: number 1." in words(second.out)

    for line in (
        "showed fresh C06 there",
        "found fresh C06",
        "fault fresh --seen S06 --keep",
    ):
        ran = run(f"shimstock {line}")
        assert ran.code != 0
        assert "2 (Will not stop) and 1 (will not stop)" in words(ran.err)
        assert "--search 2" in words(ran.err)
    ended = run("shimstock searches fresh --end")
    assert ended.code != 0 and "shimstock searches fresh 2 --end" in words(ended.err)
    assert run("shimstock showed fresh C06 there --search 1").code == 0
    assert run("shimstock searches fresh 2 --give-up").code == 0
    assert run("shimstock showed fresh C06 cleared").code == 0


def test_who_is_there_and_what_is_not_changes_what_is_offered(fresh, run):
    plain = told(run, f"shimstock fault fresh {FAN}")
    young = told(run, f"shimstock fault fresh {FAN} --young --without 'dial gauge' --people 2")

    assert any(each["cautions"] for each in plain["offers"])
    assert not any(each["cautions"] for each in young["offers"])
    reasons = [each["reason"] for each in young["not_offered"]]
    assert any("helper under age" in each for each in reasons)
    assert not any("2 people" in each for each in reasons)


def test_without_anything_told_the_signs_are_listed_by_where_they_show(fresh, run):
    text = shown(run, "shimstock fault fresh")

    assert "Nothing speaks for any cause yet" in text
    assert "you can wag the fan with your finger" in text


def test_what_is_typed_is_not_kept_unless_one_says_so(fresh, run):
    run(f"shimstock fault fresh {FAN}")
    assert told(run, "shimstock searches fresh")["searches"] == []

    kept = told(run, f'shimstock fault fresh {FAN} --keep --about "fan rocks" --people 2')
    assert [each["says"][:14] for each in kept["entries"]] == ["Began search 1", "Search 1: Fan "]
    assert kept["search"] | {"about": "fan rocks", "people": 2} == kept["search"]

    again = told(run, "shimstock fault fresh")
    assert again["search"]["number"] == 1
    assert again["ranking"] == kept["ranking"]


def test_what_is_kept_later_goes_into_the_search_that_goes_on(fresh, run):
    run("shimstock fault fresh --seen S14 --keep")
    more = told(run, "shimstock fault fresh --not S09 --cleared C33 --keep --people 3")

    assert more["search"]["number"] == 1 and more["search"]["people"] == 3
    about = {each["about"] for each in more["told"]}
    assert about == {"sign:fan-rocks", "sign:overspeeds", "cause:gear-loose"}


def test_what_is_typed_stands_alone_unless_a_search_is_named(fresh, run):
    run("shimstock fault fresh --seen S14 --keep")

    alone = told(run, "shimstock fault fresh --seen S22")
    beside = told(run, "shimstock fault fresh --seen S22 --search 1")

    assert alone["search"] is None
    assert [each["about"] for each in alone["told"]] == ["sign:brake-pulls"]
    assert [each["about"] for each in beside["told"]] == ["sign:brake-pulls", "sign:fan-rocks"]


def test_nothing_is_kept_where_a_name_is_wrong(fresh, run):
    ran = run("shimstock fault fresh --seen S14 --not fan-rok --keep")

    assert ran.code == 2
    assert "Did you mean" in words(ran.err)
    assert told(run, "shimstock searches fresh")["searches"] == []


def test_an_ambiguous_word_names_them_all(fresh, run):
    ran = run("shimstock fault fresh --seen smoke")

    assert ran.code == 1
    assert "more than one sign" in words(ran.err)
    assert "black-smoke" in ran.err and "blue-smoke" in ran.err


def test_a_number_may_be_told_of_a_sign(fresh, run):
    (rocks,) = told(run, "shimstock fault fresh --seen 'S14=0.35 in'")["told"]
    assert (rocks["said"], rocks["says"]) == (0.35, "0.35 in")

    assert run("shimstock fault fresh --seen 'S14=12 psi'").code == 2


def test_a_number_that_slipped_is_refused_with_what_would_do(fresh, run):
    for line in (
        "showed fresh S14 35",
        "fault fresh --seen S14=35",
        "fault fresh --seen S14=35 --keep",
    ):
        ran = run(f"shimstock {line}")
        assert ran.code == 2
        said = words(ran.err)
        assert "Wrong: 35 lies outside 0.0000 in to 2.0000 in" in said
        assert "0.3500 in" in said and "shimstock read MACHINE F042 VALUE --meant" in said
    assert told(run, "shimstock searches fresh")["searches"] == []


def test_a_tool_that_is_none_is_answered_with_those_that_are(fresh, run):
    said = words(run("shimstock fault fresh --seen S14 --without spanner").err)

    assert "One of these would do: " in said and "dial gauge" in said


def test_a_mark_far_from_all_others_is_not_likened_to_any(fresh, run):
    said = run("shimstock fault fresh --seen S999").err

    assert "Did you mean" not in said and "shimstock machine names MACHINE WORD" in words(said)


def test_more_people_than_there_can_be_are_refused(fresh, run):
    ran = run("shimstock fault fresh --seen S14 --people 999")

    assert ran.code != 0 and "1 to 20" in words(ran.err)


def test_why_shows_all_that_stands_behind_a_cause(fresh, run):
    text = shown(run, f"shimstock fault fresh {FAN} --why C31")
    why = told(run, f"shimstock fault fresh {FAN} --why 'governor gear'")["why"]

    assert "Chance 35 %; before anything was told 3 %: occasional, 0.03 (stand-in)" in text
    assert "Fan rocks too far, or a rattle at the governor (S14), seen: speaks for" in text
    assert why["cause"] == "governor-mesh-worn"
    assert why["speaks"][0]["about"] == "sign:fan-rocks"
    assert why["settled"] == ""


def test_why_says_in_words_that_a_check_settled_a_cause(fresh, run):
    text = shown(run, f"shimstock fault fresh {FAN} --cleared C31 --why C31")

    assert "Cleared: it is not there (typed now); before anything was told 3 %" in text
    assert "(C31), cleared: that settles it [typed now]" in text


def test_readings_of_the_demo_speak_without_being_typed(in_demo, run):
    search = told(run, "shimstock fault brackwater")

    assert {each["comes_from"] for each in search["told"]} == {"reading"}
    assert "From readings: " in shown(run, "shimstock fault brackwater")


def test_a_check_is_told_and_a_search_is_begun_where_none_goes_on(fresh, run):
    text = shown(run, "shimstock showed fresh C33 cleared")
    assert "Began search 1" in text and "(C33): cleared." in text

    run("shimstock showed fresh S14 seen")
    run("shimstock showed fresh C33 not-looked")
    (rocks,) = told(run, "shimstock fault fresh")["told"]
    assert rocks["about"] == "sign:fan-rocks"


def test_a_wrong_word_begins_no_search(fresh, run):
    ran = run("shimstock showed fresh C33 seen")

    assert ran.code == 1
    assert "there, cleared or not looked would do" in words(ran.err)
    assert told(run, "shimstock searches fresh")["searches"] == []


def test_a_search_is_ended_listed_and_taken_up_again_with_its_trail(fresh, run):
    run("shimstock fault fresh --seen S14 --keep --about 'fan rocks'")
    ended = told(run, "shimstock searches fresh --give-up")
    assert ended["searches"][0]["ended"] == "given up"
    assert run("shimstock searches fresh --end").code == 1

    again = told(run, "shimstock searches fresh 1 --again")
    assert again["searches"][0]["ended"] == ""
    assert [each["says"][:9] for each in again["trail"]] == [
        "Began sea", "Search 1:", "Search 1 ", "Took up s",
    ]  # fmt: skip
    assert "fan rocks" in shown(run, "shimstock searches fresh 1")


def test_a_search_does_not_end_as_found_with_nothing_found_and_what_it_says_would_do(fresh, run):
    run("shimstock fault fresh --seen S10 --keep --about 'ran away'")
    ended = run("shimstock searches fresh --end")
    assert ended.code == 1
    says = words(ended.err)
    assert "shimstock searches fresh 1 --give-up" in says
    assert "shimstock found fresh CAUSE --ends --search 1" in says

    assert run("shimstock searches fresh 1 --give-up").code == 0
    assert run("shimstock searches fresh 1 --again").code == 0
    assert run("shimstock found fresh C06 --ends --search 1").code == 0


def test_taking_up_wants_to_know_which_and_one_thing_at_a_time(fresh, run):
    assert "say which" in words(run("shimstock searches fresh --again").err)
    assert run("shimstock searches fresh 1 --end --again").code == 2
    assert "no search" in words(run("shimstock searches fresh 3").err)


def test_a_fault_found_counts_and_is_undone(fresh, run):
    run(f"shimstock fault fresh {FAN} --keep")
    done = told(run, "shimstock found fresh C31 --how 'new gears' --ends")
    assert done["says"].endswith("Search 1 is over.")
    assert told(run, "shimstock counts")["own"] == {
        "governor-mesh-worn": {"confirmed": 1, "looked": 1}
    }
    lead = told(run, f"shimstock fault fresh {FAN}")["ranking"][0]
    assert (lead["cause"], lead["confirmed"], round(lead["prior"], 4)) == (
        "governor-mesh-worn", 1, 0.0762,
    )  # fmt: skip

    run(f"shimstock undo {done['entry']}")
    assert told(run, "shimstock counts")["own"] == {}


def test_counts_go_out_to_a_file_and_come_in_under_a_name(fresh, run):
    run("shimstock found fresh C31")
    assert "Wrote counts.json." in shown(run, "shimstock counts --export counts.json")
    assert run("shimstock counts --export counts.json").code == 1  # nothing is overwritten

    line = "shimstock counts --import counts.json --label Lowmere"
    assert "this workshop's own counts" in words(run(line).err)
    of_another("counts.json", workshop="a1")
    came = {
        "label": "Lowmere",
        "causes": 1,
        "confirmed": 1,
        "looked": 1,
        "by": "Ida",
        "known": True,
    }
    assert told(run, line)["imported"] == [came]
    assert told(run, "shimstock counts --import counts.json")["imported"] == [
        came
    ]  # and not 2 of 2
    of_another("counts.json", workshop="a1", written="2026-01-01T12:00:00Z")
    assert "it is older" in words(run(line).err)
    assert run(f"{line} --replace").code == 0
    assert told(run, "shimstock counts --take-back Lowmere")["imported"] == []
    assert run("shimstock counts --take-back Lowmere").code == 2
    assert run("shimstock counts --import none.json --label x").code == 2
    assert "go with --import" in words(run("shimstock counts --replace").err)


def test_counts_whose_file_does_not_say_whose_they_are_are_asked_about_twice(fresh, run):
    run("shimstock found fresh C31")
    run("shimstock counts --export counts.json")
    of_another("counts.json", workshop="")
    line = "shimstock counts --import counts.json --label"
    said = shown(run, f"{line} Lowmere")
    assert "nobody can know whether it was taken in before" in said
    assert "its file did not say whose it is" in said

    again = run(f"{line} Brackwater")
    assert again.code != 0
    assert "as Lowmere, and may be the same workshop's" in words(again.err)
    assert "--meant" in words(again.err)
    assert len(told(run, f"{line} Brackwater --meant")["imported"]) == 2


def of_another(file, **said):
    """Make a file of counts one that another workshop wrote."""
    counts = json.loads(Path(file).read_text())
    Path(file).write_text(json.dumps(counts | said))


def test_a_book_without_causes_says_so(fresh, run):
    run("shimstock machine add bare --book any-tractor")

    assert "holds no causes and signs yet" in shown(run, "shimstock fault bare")
