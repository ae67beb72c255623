"""The machine's page: where one was, what comes next, and the drawing to tap."""

import re
from dataclasses import replace
from datetime import date, timedelta

import pytest
from django.utils.html import escape

from shimstock.faces.web.drawn import drawn
from shimstock.faces.web.found import found_on
from shimstock.trade.machine.state import JointNow
from shimstock.trade.machine.words import JointWord
from shimstock.workshop import acts
from shimstock.workshop.looking import see
from shimstock.workshop.models import Machine, Photo
from shimstock.workshop.standing import where_was_i
from workshop.pictures_made import corners, file
from workshop.shed_book import MONDAY, TEXT

WEEK = timedelta(days=7)


def test_every_joint_and_part_is_on_the_drawing_once_as_a_link(pages):
    html = pages.get("/m/grey/").content.decode()
    book = see("grey").book
    drawing = html[html.index('class="groups"') : html.index('class="legend"')]

    for kind, things in (("joint", book.joints), ("part", book.parts)):
        for key in things:
            assert drawing.count(f'href="/m/grey/{kind}/{key}/"') == 1, key


def test_what_stands_open_and_bare_is_told_in_words_on_the_drawing(pages):
    acts.open_joint(machine="grey", joint="J1", who="Ben")

    html = pages.get("/m/grey/").content.decode()

    assert '<details class="group" open>' in html
    assert re.search(r"hood to case, </span><span class=\"word\">open, not covered<", html)


def test_a_group_is_unfolded_where_a_joint_is_bare_or_was_moved_last(grey):
    now = see("grey").now
    apart = now.book.model_copy(update={"parts": in_two_groups(now.book.parts)})

    def unfolded(**joints):
        stands = {key.replace("_", "-"): joint for key, joint in joints.items()}
        groups = drawn(replace(now, book=apart, joints=stands)).groups
        return [group.title for group in groups if group.unfolded]

    old, new = date(2026, 3, 2), date(2026, 3, 9)
    shut, bare = JointNow(JointWord.TORQUED, old), JointNow(JointWord.OPEN, old)
    assert unfolded() == []
    assert unfolded(sump_joint=JointNow(JointWord.TORQUED, new), hood_joint=shut) == ["Below"]
    assert unfolded(sump_joint=JointNow(JointWord.TORQUED, new), hood_joint=bare) == [
        "Above",
        "Below",
    ]


def in_two_groups(parts):
    below = {"sump", "liner"}
    return {
        key: part.model_copy(update={"group": "below" if key in below else "above"})
        for key, part in parts.items()
    }


def test_a_group_counts_together_what_bears_one_sign(grey):
    acts.move_piece(machine="grey", part="pump", piece="left", to="off", who="Ben")
    acts.move_piece(machine="grey", part="pump", piece="right", to="off", who="Ben")
    acts.move_piece(machine="grey", part="pump", piece="right", to="washed", who="Ben")

    counts = drawn(see("grey").now).groups[0].counts

    assert [(each.number, each.says) for each in counts] == [(2, "off, in work")]


def test_where_was_i_says_what_was_done_last_what_stands_open_and_what_comes_next(pages):
    acts.open_joint(machine="grey", joint="J1", who="Ben")

    html = pages.get("/m/grey/").content.decode()

    assert "Today Ben: Opened hood to case (J1)." in html
    assert "hood to case (J1) stands open since today, not covered." in html
    assert "Next: Cover hood to case (J1)." in html


def test_where_was_i_tells_the_whole_of_one_evening_and_no_other(grey):
    for joint, at in (("J1", MONDAY), ("J2", MONDAY + WEEK), ("J3", MONDAY + WEEK)):
        acts.open_joint(machine="grey", joint=joint, who="Ben", at=at)
    acts.cover_joint(machine="grey", joint="J3", who="Ann", at=MONDAY + WEEK)
    seen = see("grey")
    last, *before = seen.row.diary.order_by("-pk")

    said = where_was_i(seen, last, before)

    assert said.startswith("On 9 Mar Ann: Covered sump to case (J3). Before that: Opened sump to")
    assert "And 1 thing more." in said


def test_where_was_i_names_what_is_bare_before_what_has_stood_longer(grey):
    acts.open_joint(machine="grey", joint="J1", who="Ben", at=MONDAY)
    acts.cover_joint(machine="grey", joint="J1", who="Ben", at=MONDAY)
    assert "hood to case (J1) stands open" in where_was_i(see("grey"), None)
    acts.open_joint(machine="grey", joint="J3", who="Ben", at=MONDAY + WEEK)

    said = where_was_i(see("grey"), None)

    assert "sump to case (J3) stands open" in said
    assert "not covered; 1 other too." in said


def test_where_was_i_of_a_machine_that_nobody_touched(pages):
    html = pages.get("/m/grey/").content.decode()

    assert "Ann: Booked in The grey one" in html
    assert "Nothing stands open." in html


def test_the_next_thing_leads_to_where_it_is_done(pages):
    acts.open_joint(machine="grey", joint="J1", who="Ben")

    html = pages.get("/m/grey/").content.decode()

    assert re.search(r'<a href="/m/grey/joint/hood-joint/">(<[^>]*>)?Cover hood to case', html)


def test_what_is_unsafe_and_what_is_missing_lead_to_their_joints(pages):
    acts.open_joint(machine="grey", joint="J1", who="Ben", at=MONDAY)
    html = pages.get("/m/grey/").content.decode()
    unsafe = html[html.index('id="unsafe"') : html.index('id="gates-head"')]
    waiting = html[html.index('id="open-now"') : html.index('id="drawing"')]

    assert 'href="/m/grey/joint/hood-joint/"' in unsafe
    assert "cover it, and look for rust" in unsafe
    assert "since 2 Mar 2026" in waiting and "not covered" in waiting


def test_what_is_missing_is_told_where_it_is_little_and_counted_where_it_is_much(pages):
    acts.open_joint(machine="grey", joint="J1", who="Ben")
    acts.open_joint(machine="grey", joint="J2", who="Ben")
    acts.open_joint(machine="grey", joint="J3", who="Ben")
    acts.ready_joint(machine="grey", joint="J2", who="Ben", bolts=12, gaskets=["side gasket"])
    missing = see("grey").standing["missing"]
    html = pages.get("/m/grey/").content.decode()
    waiting = html[html.index("Missing before") : html.index('id="drawing"')]

    assert len(missing["cover-joint"]) <= 2 < len(missing["sump-joint"])
    assert escape(missing["cover-joint"][0]) in waiting
    assert f"{len(missing['sump-joint'])} things" in waiting
    assert waiting.index("cover-joint") < waiting.index("sump-joint")


def test_what_is_stamped_on_it_and_the_newest_photo_are_shown(pages, settings, tmp_path):
    settings.SHED = tmp_path
    acts.add_machine(
        slug="red", name="Old red", book_text=TEXT, serials={"engine": "A-7"}, who="Ann"
    )
    for name, mode in (("first.png", "RGB"), ("second.png", "L")):
        data = file("PNG", corners().convert(mode))
        acts.keep_photo(machine="red", about="hood-joint", data=data, name=name, who="Ann")
    newest = Photo.objects.latest("pk").pk

    html = pages.get("/m/red/").content.decode()

    assert "A-7" in html
    assert re.findall(r'<img src="([^"]*)"', html) == [f"/photos/{newest}/small/"]


def test_the_legend_names_each_state_that_is_drawn(grey):
    acts.open_joint(machine="grey", joint="J1", who="Ben")

    words = [str(word) for word in drawn(see("grey").now).legend]

    assert words == ["undisturbed", "open", "fitted"]


@pytest.mark.parametrize(
    ("typed", "address"),
    [
        ("J2", "/m/grey/joint/cover-joint/"),
        ("side cover", "/m/grey/joint/cover-joint/"),
        ("pump", "/m/grey/part/pump/"),
        ("liner bore", "/m/grey/reading/bore/"),
        ("F1", "/m/grey/reading/bore/"),
        ("end-float", "/m/grey/reading/end-float/"),
        ("idle", "/m/grey/reading/idle/"),
        ("first start", "/m/grey/gates/first-start/"),
        ("grey", "/m/grey/"),
        ("engine a-7", "/m/grey/"),
    ],
)
def test_a_thing_is_found_by_mark_name_or_key_and_the_machine_by_its_numbers(pages, typed, address):
    Machine.objects.update(serials={"engine": "A-7"})
    html = pages.get("/m/grey/find/", {"q": typed}).content.decode()
    found = html[html.index('id="found"') :]

    assert f'href="{address}"' in found


def test_a_nickname_finds_it_and_the_line_says_by_which_word(pages):
    from shimstock.trade.machine.starters import starter_text

    name = "two-cylinder-diesel"
    acts.add_machine(slug="d", name="D", book_text=starter_text(name), book_name=name, who="Ann")

    html = pages.get("/m/d/find/", {"q": "conrod"}).content.decode()

    assert 'Connecting rod with cap<span class="under soft">conrod</span>' in html
    assert 'Rod caps to connecting rods<span class="under soft">conrod</span>' in html


def test_what_bears_just_that_mark_is_found_first(grey):
    text = TEXT.replace("mark: J1", "mark: J33").replace("side cover to case", "J3 side cover")
    acts.add_machine(slug="red", name="Red", book_text=text, who="Ann")

    assert [each.thing.mark for each in found_on(see("red"), "j3")] == ["J3", "J2", "J33"]


def test_what_is_found_says_what_it_is_and_how_it_stands(pages):
    acts.open_joint(machine="grey", joint="J1", who="Ben")

    html = pages.get("/m/grey/find/", {"q": "hood"}).content.decode()
    part, joint = html[html.index('class="lines found"') :].split("<li>")[1:3]

    assert "joint" in joint and "J1" in joint and "<span>open</span>" in joint
    assert "part" in part and "<span>fitted</span>" in part
    assert "not measured" in pages.get("/m/grey/find/", {"q": "bore"}).content.decode()


def test_what_is_found_as_one_types_is_only_the_lines(pages):
    answer = pages.get("/m/grey/find/", {"q": "pump"}, headers={"HX-Request": "true"})

    assert "<html" not in answer.content.decode()
    assert 'href="/m/grey/part/pump/"' in answer.content.decode()


def test_what_is_not_there_is_said_with_what_was_typed(pages):
    html = pages.get("/m/grey/find/", {"q": "<magneto>"}).content.decode()

    assert "“&lt;magneto&gt;”" in html


def test_a_machine_that_is_not_there_is_said_so(pages):
    answer = pages.get("/m/gray/")

    assert answer.status_code == 404
    assert "Did you mean grey?" in answer.content.decode()
