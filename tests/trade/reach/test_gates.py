import pytest

from shimstock.trade.machine.state import JointNow, SearchNow, VerdictNow
from shimstock.trade.machine.words import JointWord, PartWord, Stage, Verdict
from shimstock.trade.reach.gates import gate, may_pass
from shimstock.trade.reach.points import LEAK_CHECK
from shimstock.trade.reach.target import UnknownName
from trade.reach.small import OPEN, TODAY, machine, piece
from trade.scenes.diesel import diesel

DRY = JointNow(JointWord.LEAK_CHECKED)
CHALKED = JointNow(JointWord.UNDISTURBED, dry_chalked_on=TODAY)
ALL_DRY = {
    "cover-face": DRY,
    "governor-base": DRY,
    "left-pump-seat": CHALKED,
    "head-face": CHALKED,
}
SINGLE = {"kind": ("single-pack", "")}
STARTED = {"stop": ("yes", ""), "plate": ("yes", ""), "oil": ("yes", "")}


def kinds(view):
    return [(point.kind, point.where) for point in view.open_points]


def test_paint_counts_joints_that_are_dry():
    view = gate(machine(joints={**ALL_DRY, "cover-face": JointNow(JointWord.SEALED)}), "paint")

    assert (view.dry, view.on_paint) == (3, 4)
    assert view.says.startswith("3 of 4 leak-checked or chalk-dry; ")
    assert kinds(view) == [("leak check", "cover-face"), ("question", "kind")]


def test_paint_may_be_passed_when_all_is_dry_and_answered():
    now = machine(joints=ALL_DRY, answers=SINGLE)

    assert may_pass(now, "paint") == ()
    assert gate(now, "paint").may_be_passed
    assert gate(now, "paint").minutes == 0


def test_undisturbed_is_not_enough_without_chalk():
    view = gate(machine(joints={**ALL_DRY, "head-face": JointNow()}, answers=SINGLE), "paint")

    assert kinds(view) == [("leak check", "head-face")]
    assert "chalk" in view.open_points[0].would_do


def test_chalk_from_before_does_not_make_a_leak_dry():
    wet = JointNow(JointWord.LEAKING, dry_chalked_on=TODAY)
    view = gate(machine(joints={**ALL_DRY, "head-face": wet}, answers=SINGLE), "paint")

    assert kinds(view) == [("open again", "head-face")]


def test_open_joints_come_first_and_the_innermost_of_them_first():
    joints = {**ALL_DRY, "cover-face": OPEN, "governor-base": OPEN, "left-pump-seat": JointNow()}
    view = gate(machine("hood-bolts", joints=joints), "paint")

    assert kinds(view)[:3] == [
        ("close", "governor-base"),
        ("close", "cover-face"),
        ("leak check", "left-pump-seat"),
    ]
    assert view.open_points[0].minutes == 60 + LEAK_CHECK


def test_leaking_joints_carry_their_way_in_and_share_it():
    wet = JointNow(JointWord.LEAKING)
    joints = {**ALL_DRY, "cover-face": wet, "head-face": JointNow(JointWord.WEEPING)}
    view = gate(machine(joints=joints, answers=SINGLE), "paint")

    assert [point.minutes for point in view.open_points] == [60 + LEAK_CHECK, 370 + LEAK_CHECK]
    assert view.minutes == 60 + 370 - 25 + 2 * LEAK_CHECK  # the hood comes off once
    assert view.working.disagreements() == []
    assert {due.key for due in view.cautions} == {"paint", "fuel", "lift"}


def test_a_leaking_joint_cannot_be_signed_away():
    joints = {**ALL_DRY, "cover-face": JointNow(JointWord.LEAKING)}
    signed = {**SINGLE, "joint:cover-face": ("not needed", "only a little")}

    (reason,) = may_pass(machine(joints=joints, answers=signed), "paint")

    assert reason.hard


def test_a_question_that_is_not_hard_may_be_set_aside_with_a_reason():
    for why, left in (("dry sump, hand-filled", 0), (" ", 1)):
        signed = {**STARTED, "oil": ("not needed", why)}
        assert len(may_pass(machine(answers=signed), "first-start")) == left
    aside = {"kind": ("Not needed", "another shop paints"), "air-fed": ("Tom", "")}
    assert may_pass(machine(joints=ALL_DRY, answers=aside), "paint") == ()


def test_a_hard_question_that_hangs_on_one_set_aside_is_asked():
    aside = {"kind": ("not needed", "another shop paints")}

    (reason,) = may_pass(machine(joints=ALL_DRY, answers=aside), "paint")

    assert reason.hard and "air-fed" in reason.why


def test_first_start_asks_for_joints_parts_readings_sets_and_answers_in_this_order():
    now = machine(
        "hood-bolts",
        pieces={
            ("tank", ""): piece(PartWord.ON_ORDER),
            ("pump", "left"): piece(maker="Ash"),
            ("pump", "right"): piece(maker="Birch"),
        },
        verdicts={("mesh", "", Stage.FOUND): VerdictNow(Verdict.WORN_OUT)},
    )
    view = gate(now, "first-start")

    assert kinds(view) == [
        ("close", "hood-bolts"),
        ("part", "tank"),
        ("reading", "mesh"),
        ("set", "pumps"),
        ("question", "stop"),
        ("question", "plate"),
        ("question", "oil"),
    ]
    # 7 joints, 11 pieces, one reading, one set and three questions are looked at; of the pieces
    # somebody has judged the two pumps, of the joints none
    assert len(view.open_points) + view.settled + view.as_they_came == 7 + 11 + 1 + 1 + 3
    assert (view.settled, view.as_they_came) == (2, 6 + 8)
    assert view.minutes == 15 + 10 + 5 + 5 + 15
    assert view.working.disagreements() == []


def test_a_part_that_this_machine_never_had_may_be_set_aside():
    pieces = {("badge", ""): piece(PartWord.WANTED)}

    assert len(may_pass(machine(pieces=pieces, answers=STARTED), "first-start")) == 1
    signed = {**STARTED, "part:badge": ("not needed", "never had one")}
    assert may_pass(machine(pieces=pieces, answers=signed), "first-start") == ()


def test_a_rejected_part_may_not():
    pieces = {("badge", ""): piece(PartWord.REJECTED)}
    signed = {**STARTED, "part:badge": ("not needed", "looks only")}

    (reason,) = may_pass(machine(pieces=pieces, answers=signed), "first-start")

    assert reason.hard


def test_a_set_of_two_makes_cannot_be_signed_away():
    pieces = {("pump", side): piece(maker=side) for side in ("left", "right")}
    signed = {**STARTED, "set:pumps": ("not needed", "runs well")}

    (reason,) = may_pass(machine(pieces=pieces, answers=signed), "first-start")

    assert reason.hard


def test_an_answer_without_a_name_does_not_count():
    now = machine(answers=STARTED)
    unsigned = {key: type(a)(a.answer, " ", a.on) for key, a in now.answers.items()}

    assert may_pass(now, "first-start") == ()
    assert len(may_pass(type(now)(now.book, TODAY, answers=unsigned), "first-start")) == 3


def road(verdict, stage=Stage.FINISHED, **more):
    answers = {"brake-test": ("yes", ""), "linings": ("new", "")}
    verdicts = {("mesh", "", stage): VerdictNow(verdict, **more)}
    now = machine(verdicts=verdicts, answers=answers, passed={"first-start"})
    return may_pass(now, "road")


def test_a_gate_figure_must_be_read_as_finished_and_in_limit():
    assert road(Verdict.SERVICEABLE) == ()
    assert "no reading as finished" in road(Verdict.GOOD, Stage.FOUND)[0].why
    assert road(Verdict.BORDERLINE)[0].would_do == "measure again"
    assert road(Verdict.WORN_OUT, accepted="Ann: never mind")[0].hard


def test_a_gate_waits_for_the_one_before_it():
    view = gate(machine(), "road")

    assert kinds(view)[0] == ("gate", "first-start") and view.open_points[0].hard


def test_an_unknown_gate_is_answered_with_the_nearest():
    with pytest.raises(UnknownName, match="did you mean first-start"):
        gate(machine(), "first start")


def test_a_figure_read_running_counts_only_once_the_engine_has_run():
    found = {("fast-idle", "", Stage.FOUND): VerdictNow(Verdict.WORN_OUT, "1344 rpm")}

    def readings(key):
        points = gate(diesel(verdicts=found), key).open_points
        return [p.where for p in points if p.kind == "reading" and p.where == "fast-idle"]

    assert readings("first-start") == []
    assert readings("handing-over") == ["fast-idle"]


@pytest.mark.parametrize(
    "said",
    [
        "—",
        ".",
        "--",
        "n/a",
        "N.A.",
        "unknown",
        "nobody yet",
        "no-one",
        "No one.",
        "tbd",
        "yes",
        "none",
    ],
)
def test_a_word_that_names_nobody_does_not_say_who_has_the_mask(said):
    answers = {"kind": ("two-pack", ""), "air-fed": (said, "")}

    (reason,) = may_pass(machine(joints=ALL_DRY, answers=answers), "paint")

    assert reason.hard and "air-fed" in reason.why


@pytest.mark.parametrize("said", ["Ida", "Tom of the body shop", "Noah", "Nora", "Yesenia"])
def test_a_name_says_who_has_the_mask(said):
    answers = {"kind": ("two-pack", ""), "air-fed": (said, "")}

    assert may_pass(machine(joints=ALL_DRY, answers=answers), "paint") == ()


def test_a_hard_question_taken_back_after_its_gate_stands_before_the_next_gate():
    signed = {**STARTED, "brake-test": ("yes", ""), "linings": ("new", "")}
    verdicts = {("mesh", "", Stage.FINISHED): VerdictNow(Verdict.GOOD)}
    passed = frozenset({"first-start"})

    assert may_pass(machine(answers=signed, verdicts=verdicts, passed=passed), "road") == ()
    signed["stop"] = ("no", "")
    (reason,) = may_pass(machine(answers=signed, verdicts=verdicts, passed=passed), "road")
    assert reason.hard and reason.why == "Stop proved?"


def test_what_nobody_has_looked_at_is_not_counted_as_settled():
    view = gate(machine(), "first-start")

    # 7 joints, 11 pieces and a set as they came; three questions
    assert (len(view.open_points), view.settled, view.as_they_came) == (3, 0, 7 + 11 + 1)
    assert view.says == (
        "3 points block first start; 0 settled, 19 as they came and not looked at; "
        "25 min that can be foreseen"
    )
    again = machine(
        joints={"hood-bolts": JointNow(JointWord.SEALED)}, answers={"stop": ("yes", "")}
    )
    counted = gate(again, "first-start")
    assert (counted.settled, counted.as_they_came) == (2, 18)


def test_nothing_is_run_to_look_for_leaks_before_first_start_is_passed():
    assert gate(diesel(), "paint").run_first == "Nothing is run before first start is passed."
    assert gate(diesel(passed=frozenset({"first-start"})), "paint").run_first == ""
    assert gate(diesel(), "first-start").run_first == ""
    dry = dict.fromkeys(diesel().book.on_paint, DRY)
    assert gate(diesel(joints=dry), "paint").run_first == ""


@pytest.mark.parametrize("passed", [(), ("first-start",)])
@pytest.mark.parametrize(
    "left", [{"found": ("rack-stuck",)}, {"seen": ("will-not-stop",)}, {"seen": ("overspeeds",)}]
)
def test_nothing_is_run_to_look_for_leaks_with_a_fault_that_stands(passed, left):
    """Not even where first start was passed before it showed."""
    search = SearchNow(1, "", TODAY, **left)
    now = diesel(searches=(search,), passed=frozenset(passed))

    fault = next(p for p in gate(now, "first-start").open_points if p.kind == "fault")
    assert gate(now, "paint").run_first == f"Nothing is run: {fault.what}; {fault.would_do}."


def test_what_is_dangerous_only_on_the_road_does_not_stop_looking_for_leaks():
    signs = diesel().book.signs
    road = next(k for k, s in signs.items() if s.dangers == ("driving",) and not s.forbids)
    search = SearchNow(1, "", TODAY, seen=(road,))
    now = diesel(searches=(search,), passed=frozenset({"first-start"}))

    assert gate(now, "paint").run_first == ""


def test_a_joint_that_leaks_is_not_run_on_unless_somebody_signs_why():
    leaking = {"cover-face": JointNow(JointWord.LEAKING)}
    signed = {**STARTED, "joint:cover-face": ("not needed", "a weep; a tray is under it")}

    (reason,) = may_pass(machine(joints=leaking, answers=STARTED), "first-start")
    assert reason.why == "Governor cover to case is leaking" and not reason.hard
    assert may_pass(machine(joints=leaking, answers=signed), "first-start") == ()


def test_the_paint_gate_warns_of_the_engine_that_is_run_for_it():
    due = {each.key for each in gate(diesel(), "paint").cautions}

    assert {"running-engine", "exhaust-gas", "hot"} <= due
