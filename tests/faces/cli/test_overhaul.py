"""The overhaul in the order a restorer wants: common practice, no source."""

import json

ORDER = (
    "What was found",
    "Fan drive, crankshaft to fan",
    "Use again",
    "Machine",
    "Not a pair",
    "Put right or replace",
    "Measure first",
    "To order",
    "Must wait, and why",
    "Ordered, or away",
    "Ways in still to go",
    "Leaking",
    "Open",
    "Unsafe tonight",
    "Gates",
)


def overhaul(run, machine):
    ran = run(f"shimstock overhaul {machine} --json")
    assert ran.code == 0, ran.err
    return json.loads(ran.out)


def test_it_goes_from_what_was_found_to_what_still_blocks(in_demo, run):
    lines = run("shimstock overhaul brackwater").out.splitlines()

    assert [line for line in lines if line in ORDER] == list(ORDER)


def test_both_liners_are_bored_and_wait_for_the_pistons(in_demo, run):
    (bore,) = (
        each
        for each in overhaul(run, "brackwater")["remedies"]
        if each["what"] == "machine" and each["part"] == "liner"
    )

    assert (bore["pieces"], bore["size"]) == (["1", "2"], "+0.020 in")
    assert any("not in hand" in reason for reason in bore["held"])


def test_the_fan_rocks_because_of_the_governor_mesh(in_demo, run):
    trains = {each["train"]: each for each in overhaul(run, "brackwater")["trains"]}
    train = trains["fan-drive"]

    worn = [link["figure"] for link in train["links"] if link["verdict"] == "worn out"]
    assert worn == ["governor-mesh-lash"]


def test_the_pumps_are_no_pair(in_demo, run):
    remedies = overhaul(run, "brackwater")["remedies"]

    (pumps,) = (each for each in remedies if each["what"] == "not a pair")
    assert pumps["blocks"]
    assert any("not a pair" in reason for reason in pumps["because"])


def test_joints_on_paint_are_counted(in_demo, run):
    gates = {gate["gate"]: gate for gate in overhaul(run, "brackwater")["gates"]}

    paint = gates["paint"]
    assert paint["says"].startswith(
        f"{paint['dry']} of {paint['on_paint']} leak-checked or chalk-dry"
    )
    assert 0 < paint["dry"] < paint["on_paint"]
    assert not any(gate["may_be_passed"] for gate in gates.values())


def test_a_gate_cannot_be_passed_while_a_point_is_open(in_demo, run):
    for gate in ("paint", "first-start", "road", "handing-over"):
        ran = run(f"shimstock gate brackwater {gate} --pass")
        assert ran.code == 1, ran.err
        assert ran.out == ""


def test_the_forgotten_brake_housing_comes_first_of_what_is_unsafe(in_demo, run):
    told = overhaul(run, "brackwater")

    assert "right has stood open for 9 days, not covered" in told["unsafe"][0]
    assert told["next"][0] == "Cover Brake housing to main case, right (J56)"


def test_a_machine_nobody_has_touched_can_be_shown(in_demo, run):
    run("shimstock machine add hill --book two-cylinder-diesel")

    told = overhaul(run, "hill")
    assert (told["open"], told["worn"], told["away"]) == ([], [], [])
    assert run("shimstock overhaul hill").code == 0
    assert run("shimstock machine show hill").code == 0
    assert run("shimstock verdicts hill --all").code == 0
    assert run("shimstock play hill fan-drive").code == 0
    assert run("shimstock record hill").code == 0


def test_a_thing_to_do_for_two_figures_is_said_once_with_the_reasons_of_both(in_demo, run):
    ran = run("shimstock overhaul lowmere")

    waiting = ran.out.split("Must wait, and why")[1].split("Ordered, or away")[0]
    assert waiting.count("- Measure crankshaft") == 1
    assert "Rod journal diameter" in waiting
    assert "Main journal diameter" in waiting


def test_of_a_new_machine_it_is_said_that_nothing_is_open_and_what_to_type_next(in_demo, run):
    added = run("shimstock machine add hill --book petrol-crawler")

    assert "shimstock machine names hill" in added.out
    assert "Nothing stands open." in run("shimstock machine show hill").out
