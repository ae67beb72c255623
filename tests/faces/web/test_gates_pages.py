"""Gates as pages: what stands against each, answers signed, and the passing of it."""

import gzip

import pytest

from shimstock.workshop.models import AnswerRow, GatePass
from workshop.shed_book import MONDAY, TEXT


@pytest.fixture
def asked(client, settings, db):
    from dataclasses import replace

    from shimstock.workshop import acts

    settings.SERVING = replace(settings.SERVING, who="Ann")
    acts.add_machine(slug="grey", name="Grey", book_text=TEXT, who="Ann", at=MONDAY)
    return client


def sign(asked, gate="paint", **typed):
    return asked.post(f"/m/grey/gates/{gate}/", typed)


def said(answer) -> str:
    return " ".join(answer.content.decode().split())


def test_every_gate_says_how_it_stands(asked):
    shown = said(asked.get("/m/grey/gates/"))

    assert "Paint" in shown and "First start" in shown
    assert shown.count("blocked") >= 2
    assert "3 points block; 0 settled; 0 of 2 joints on paint seen dry" in shown
    assert "as they came and not looked at" in shown
    assert 'href="/m/grey/gates/first-start/"' in shown


def test_each_open_point_leads_to_where_it_is_done_and_a_question_is_answered_in_place(asked):
    from shimstock.workshop import acts

    acts.open_joint(machine="grey", joint="J1", who="Ben")
    acts.move_piece(machine="grey", part="pump", piece="left", to="off", who="Ben")
    paint = said(asked.get("/m/grey/gates/paint/"))
    start = said(asked.get("/m/grey/gates/first-start/"))

    assert 'href="/m/grey/joint/cover-joint/"' in paint
    assert 'href="/m/grey/joint/hood-joint/"' in start
    assert 'href="/m/grey/reading/end-float/"' in start
    assert 'type="radio" name="answer" value="named"' in start
    assert paint.index("side cover") < paint.index("Is it degreased?")


def test_what_must_be_is_marked_and_cannot_be_chosen_as_not_needed(asked):
    start = said(asked.get("/m/grey/gates/first-start/"))
    stop = start[start.index("Does the stop work") : start.index("Who has air-fed gear")]

    assert "must" in stop
    assert "not needed" not in stop
    assert "not needed" in start[start.index("Who has air-fed gear") :]


def test_an_answer_is_signed_in_this_persons_name_and_shown_with_its_day(asked):
    answered = sign(asked, point="degreased", answer="yes")

    assert (answered.status_code, answered["Location"]) == (302, "/m/grey/gates/paint/")
    row = AnswerRow.objects.get()
    assert (row.point, row.answer, row.by) == ("degreased", "yes", "Ann")
    shown = said(asked.get("/m/grey/gates/paint/"))
    signed = shown[shown.index("<h2>Signed</h2>") :]
    assert "Is it degreased?" in signed and "<strong>yes</strong>" in signed and "Ann, " in signed
    assert "2 points block; 1 settled" in shown


def test_own_words_are_taken_where_none_of_the_books_is_chosen(asked):
    sign(asked, "first-start", point="mask", own="Ben of the club")
    shown = said(asked.get("/m/grey/gates/first-start/"))

    assert AnswerRow.objects.get().answer == "Ben of the club"
    assert "does not settle it" in shown[shown.index("<h2>Signed</h2>") :]


@pytest.mark.parametrize(
    ("typed", "wrong"),
    [
        ({"answer": "not needed"}, "say why it is not needed"),
        ({"answer": "yes", "own": "twice over"}, "leave one of them out"),
        ({"answer": "", "own": " "}, "An empty answer says nothing"),
    ],
)
def test_what_settles_nothing_is_refused_and_stays_in_the_form(asked, typed, wrong):
    answered = sign(asked, point="degreased", **typed)

    assert answered.status_code == 422
    assert wrong in said(answered)
    assert not AnswerRow.objects.exists()
    if typed["answer"]:
        assert f'value="{typed["answer"]}" checked' in said(answered)
    if typed.get("own", "").strip():
        assert 'value="twice over"' in said(answered)


def test_a_hard_question_is_not_set_aside_even_by_a_form_of_ones_own(asked):
    answered = sign(asked, "first-start", point="stop", answer="not needed", reason="in a hurry")

    assert answered.status_code == 422
    assert "cannot be set aside" in said(answered)


def test_an_open_point_that_is_not_hard_is_set_aside_with_a_reason(asked):
    from shimstock.workshop import acts

    acts.open_joint(machine="grey", joint="J1", who="Ben")
    aside = {"do": "aside", "point": "joint:hood-joint", "answer": "not needed"}

    refused = sign(asked, "first-start", **aside, reason="")
    assert refused.status_code == 422 and "say why it is not needed" in said(refused)
    assert '<option value="joint:hood-joint" selected>' in said(refused)

    none = sign(asked, "first-start", **aside | {"point": ""}, reason="so")
    assert none.status_code == 422 and "Say which point is not needed." in said(none)

    assert sign(asked, "first-start", **aside, reason="it runs open").status_code == 302
    shown = said(asked.get("/m/grey/gates/first-start/"))
    assert 'option value="joint:hood-joint"' not in shown
    assert "because it runs open" in shown[shown.index("<h2>Signed</h2>") :]


def test_a_gate_that_is_blocked_is_refused_with_every_reason_and_shows_no_button(asked):
    assert 'value="pass"' not in said(asked.get("/m/grey/gates/paint/"))
    refused = sign(asked, do="pass")

    assert refused.status_code == 422
    shown = said(refused)
    wrong = shown[shown.index('role="alert"') : shown.index("All gates") + 5000]
    for reason in ("side cover", "sump", "degreased"):
        assert reason in wrong
    assert not GatePass.objects.exists()


def test_a_gate_against_which_nothing_stands_is_passed_in_this_persons_name(asked):
    from shimstock.workshop import acts

    for joint in ("J2", "J3"):
        acts.leak_check(machine="grey", joint=joint, result="dry", chalk=True, who="Ben")
    sign(asked, point="degreased", answer="yes")
    shown = said(asked.get("/m/grey/gates/paint/"))
    assert "can be passed" in shown and 'value="pass"' in shown

    assert sign(asked, do="pass").status_code == 302
    row = GatePass.objects.get()
    assert (row.gate, row.by) == ("paint", "Ann")
    after = said(asked.get("/m/grey/gates/paint/"))
    assert "passed by Ann" in after and 'value="pass"' not in after


def test_an_unknown_gate_is_not_there(asked):
    assert asked.get("/m/grey/gates/pant/").status_code == 404


@pytest.fixture
def demo(client, settings, db):
    from dataclasses import replace

    from shimstock.workshop.demo.lay_out import lay_out

    settings.SERVING = replace(settings.SERVING, who="Ida")
    lay_out()
    return client


def test_a_gate_with_seventy_open_points_is_small_and_asks_little(
    demo, django_assert_max_num_queries
):
    with django_assert_max_num_queries(12):
        shown = demo.get("/m/brackwater/gates/first-start/")

    assert shown.content.decode().count('class="point"') > 60
    assert len(gzip.compress(shown.content)) < 50_000
    with django_assert_max_num_queries(12):
        demo.get("/m/brackwater/gates/")


def test_what_is_not_torqued_leads_to_its_joint_and_what_is_not_put_right_to_its_search(demo):
    from shimstock.workshop import acts
    from shimstock.workshop.looking import see

    acts.open_joint(machine="brackwater", joint="J40", who="Ida")
    joint = see("brackwater").book.joints["filter-head-flange"]
    acts.close_joint(
        machine="brackwater", joint="J40", who="Ida", faces_clean=True, bolts=joint.bolts,
        gaskets=[use.name for use in joint.uses],
    )  # fmt: skip
    acts.say_in_search(machine="brackwater", said={"cause:rack-stuck": "there"}, who="Ida")
    start = said(demo.get("/m/brackwater/gates/first-start/"))

    fault = start[start.index('<a class="point" href="/m/brackwater/faults/1/">') :]
    assert "is not put right" in fault[:300] and "must" in fault[:500]
    torque = start[start.index('href="/m/brackwater/joint/filter-head-flange/"') :]
    assert "is closed, not torqued" in torque[:300] and "must" in torque[:500]
    machine = said(demo.get("/m/brackwater/"))
    unsafe = machine[machine.index("Unsafe tonight") :]
    assert unsafe.index("is not put right: do not run or drive it") < unsafe.index("Gates")
    assert "Search 1 goes on since" in machine and "pulls to the left" in machine


def test_nothing_is_run_for_paint_before_first_start_is_passed(demo):
    paint = said(demo.get("/m/brackwater/gates/paint/"))

    assert paint.count("Nothing is run before first start is passed.") == 1
    assert "Carbon monoxide" in paint


def test_dry_is_asked_about_on_an_engine_in_pieces_and_standing_is_chalk_dry(demo):
    from shimstock.workshop import acts
    from shimstock.workshop.looking import see

    acts.close_joint(machine="brackwater", joint="J39", bolts=8, torqued=True, who="Ida")
    page = "/m/brackwater/joint/oil-pump-plate/"
    assert 'name="meant"' not in said(demo.get(page))

    asked = demo.post(page, {"do": "leak", "result": "dry"})
    assert asked.status_code == 422 and "cannot be told by a run" in said(asked)
    assert 'name="meant" value="dry"' in said(asked)

    assert demo.post(page, {"do": "leak", "result": "dry", "standing": "on"}).status_code == 302
    stands = see("brackwater").now.joint("oil-pump-plate")
    assert stands.word == "torqued" and stands.dry_chalked_on
    assert demo.post(page, {"do": "leak", "meant": "dry"}).status_code == 302
    assert see("brackwater").now.joint("oil-pump-plate").word == "leak-checked"
