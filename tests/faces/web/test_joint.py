"""The page of a joint: what can hurt first, then the likely thing to do, done by one form."""

import re
from dataclasses import replace

import pytest

from shimstock.workshop import acts
from shimstock.workshop.looking import see
from workshop.shed_book import MONDAY, TEXT

DANGER = """
cautions:
  springs:
    name: Springs under load
    dangers: [spring]
    do: Let it down evenly.
    never: Never cut it.
    defer: somebody with the fixture
"""
BOOK = TEXT.replace("    mark: J2\n", "    mark: J2\n    dangers: [spring]\n") + DANGER
PAGE = "/m/grey/joint/J2/"


@pytest.fixture
def machine(db, settings):
    settings.SERVING = replace(settings.SERVING, who="Ann")
    acts.add_machine(slug="grey", name="The grey one", book_text=BOOK, who="Ann", at=MONDAY)
    return see("grey").row


@pytest.fixture
def send(machine, client):
    """Send a form of a joint's page with what it holds, filled in."""

    def send(do, joint="J2", *, page=None, **typed):
        page = page or client.get(f"/m/grey/joint/{joint}/")
        seen = re.search(r'name="seen" value="(\d+)"', page.content.decode())
        form = re.search(r'name="form" value="([^"]+)"', page.content.decode())
        hidden = {"do": do, "seen": seen[1], "form": form[1]}
        return client.post(f"/m/grey/joint/{joint}/", hidden | typed)

    return send


def shown(client, joint="J2"):
    answer = client.get(f"/m/grey/joint/{joint}/")
    assert answer.status_code == 200
    return text_of(answer)


def text_of(answer):
    """What one reads, without the markup."""
    body = re.sub(r"(?s)<(style|script|svg)\b.*?</\1>", "", answer.content.decode())
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", body)).replace("&#x27;", "'")


def stands(joint):
    return see("grey").now.joint(joint)


def test_what_can_hurt_stands_before_anything_to_do(machine, client):
    read = shown(client)

    assert "Let it down evenly. Never cut it. Ask: somebody with the fixture" in read
    assert read.index("Never cut it") < read.index("To do here")
    assert read.index("go before everything said here") < read.index("To do here")


def test_the_cautions_of_the_joints_on_the_way_are_shown_too(machine, client):
    text = BOOK.replace("    after: hood-joint\n", "").replace(
        "    name: sump to case\n", "    name: sump to case\n    after: cover-joint\n"
    )
    acts.change_book(machine="grey", book_text=text, who="Ann")

    assert "Never cut it" in shown(client, "J3")
    assert "Never cut it" not in shown(client, "J1")


@pytest.mark.parametrize("joint", ["J2", "J3"])
def test_the_cautions_stay_until_the_joint_is_torqued(send, client, joint):
    """J3 calls up none itself: what hurts stands open before it, and goes back after it."""
    text = BOOK.replace("    after: hood-joint\n", "").replace(
        "    name: sump to case\n", "    name: sump to case\n    after: cover-joint\n"
    )
    acts.change_book(machine="grey", book_text=text, who="Ann")
    states = []

    def stays():
        read = shown(client, joint)
        states.append(str(see("grey").now.joint(see_key(joint)).word))
        assert "Never cut it" in read
        assert read.index("Never cut it") < read.index("To do here")

    stays()
    send("open", joint, path="on")
    stays()
    send("cover", joint)
    stays()
    uses = see("grey").book.joints[see_key(joint)]
    send("ready", joint, faces_clean="on", gasket=uses.uses[0].name, bolts=str(uses.bolts))
    stays()
    send("close", joint)
    stays()
    assert states == ["undisturbed", "open", "parked open", "gasket ready", "sealed"]


def see_key(mark):
    return {"J2": "cover-joint", "J3": "sump-joint"}[mark]


def test_what_must_come_off_first_is_listed_in_order_and_opened_with_it(send, client):
    read = shown(client)
    assert re.search(r"in this order: J1 hood to case .*10 min J2 side cover to case 25 min", read)

    answer = send("open", path="on", bolts="11", thickness="0.014 in")

    assert answer.status_code == 302
    assert answer.url == "/m/grey/joint/cover-joint/"
    assert stands("hood-joint").is_open
    assert (stands("cover-joint").bolts_out, stands("cover-joint").thickness_found) == (
        11,
        "0.014 in",
    )


def test_more_than_the_book_has_is_asked_about_and_opened_where_it_is_meant(send):
    typed = {"path": "on", "bolts": "13", "thickness": "3 mm"}

    answer = send("open", **typed)
    assert answer.status_code == 422
    read = text_of(answer)
    assert "Not done: a slip of the finger?" in read
    assert "13 came off where the book has 12, and 3 mm of old gasket where the book has" in read
    assert "Would do: 12 and 0.015 in" in read
    assert 'name="meant" value="1">It is meant: open J2' in answer.content.decode()
    assert 'value="13"' in answer.content.decode()
    assert not stands("cover-joint").is_open

    assert send("open", page=answer, meant="1", **typed).status_code == 302
    assert (stands("cover-joint").bolts_out, stands("cover-joint").thickness_found) == (13, "3 mm")


def test_that_it_is_meant_cannot_be_said_before_it_is_asked(machine, client):
    assert 'name="meant"' not in client.get(PAGE).content.decode()


def test_a_joint_that_cannot_be_got_at_is_refused_and_what_was_typed_stays(send):
    answer = send("open", bolts="11", thickness="0.014 in")

    assert answer.status_code == 422
    assert "cannot be got at yet; open hood to case first" in text_of(answer)
    assert 'value="11"' in answer.content.decode()
    assert 'value="0.014 in"' in answer.content.decode()
    assert not stands("cover-joint").is_open


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ({"do": "open", "bolts": "a few"}, "a few is no count of fastenings. Would do: 12"),
        ({"do": "open", "thickness": "thick"}, "thick"),
        ({"do": "paint"}, "There is no work at a joint 'paint'"),
        ({"do": "leak", "result": "damp"}, "There is no result of a leak check 'damp'"),
    ],
)
def test_what_is_not_understood_is_said_and_nothing_is_written(send, typed, says):
    before = see("grey").latest
    do = typed.pop("do")

    answer = send(do, "J1", **typed)

    assert says in text_of(answer).replace("&#39;", "'")
    assert answer.status_code == 422
    assert see("grey").latest == before


@pytest.fixture
def opened(send):
    send("open", path="on")


def test_an_open_joint_is_covered(send, opened, client):
    assert "not covered" in shown(client)
    send("cover")

    assert stands("cover-joint").covered
    assert re.search(r"parked open.* covered", shown(client))


def test_everything_against_closing_stands_before_the_button_with_its_page(send, opened, client):
    acts.move_piece(machine="grey", part="pump", piece="left", to="off", who="Ann")
    page = client.get(PAGE).content.decode()
    read = shown(client)

    assert "Pump, left : is off. Pass it, or fit one that is passed" in read
    assert 'class="settle" href="/m/grey/part/pump/?piece=left">Pass it' in page
    assert "side gasket, 0.015 in : is not ready" in read
    assert "fastenings are not counted" in read
    assert read.index("is not ready") < read.index("Close J2")
    assert "Undo entry" not in read  # no count disagrees


def test_a_joint_open_behind_it_is_a_link_to_its_page(send, opened, client):
    page = client.get("/m/grey/joint/J1/").content.decode()

    assert re.search(r'href="/m/grey/joint/cover-joint/">Close side cover to case first', page)


def test_what_lies_ready_is_ticked_counted_and_then_closed(send, opened, client):
    send("ready", faces_clean="on", gasket="side gasket", bolts="12")
    assert stands("cover-joint").bolts_ready == 12
    assert "All for it is there" in shown(client)
    assert "12 bolts 3/8-16 UNC, 24 lbf.ft stand-in" in shown(client)

    send("close", torqued="on")

    assert stands("cover-joint").word == "torqued"


def test_a_joint_is_closed_for_a_reason_where_only_soft_things_stand_against_it(send, opened):
    send("ready", gasket="side gasket", bolts="12")
    answer = send("close")
    assert answer.status_code == 422
    assert "faces are not clean" in text_of(answer)
    assert 'name="reason"' in answer.content.decode()

    send("close", reason="a club day")

    assert "because a club day" in machine_says()


def machine_says():
    return see("grey").row.diary.last().says


def test_of_bolts_that_do_not_agree_the_opening_can_be_undone(send, client):
    send("open", path="on", bolts="11")
    opened = see("grey").latest
    send("ready", faces_clean="on", gasket="side gasket", bolts="12", meant="1")
    undo = f'href="/m/grey/diary/{opened}/undo/">Undo entry {opened}, the opening'

    answer = send("close")
    assert "2 things still stand against it" in text_of(answer)
    assert undo in answer.content.decode()

    send("ready", bolts="11")
    send("close", reason="one was never there")
    assert undo not in client.get(PAGE).content.decode()


def test_more_bolts_than_came_off_are_asked_about_when_they_are_laid_ready(send):
    send("open", path="on", bolts="1")

    answer = send("ready", bolts="3")
    read = text_of(answer)
    assert answer.status_code == 422
    assert "3 counted where 1 came off: another joint" in read
    assert "It is meant: 3 bolts laid ready" in read
    assert stands("cover-joint").bolts_ready is None

    send("ready", bolts="3", meant="1")
    assert stands("cover-joint").bolts_ready == 3


def test_no_reason_is_asked_for_where_something_hard_stands_against_it(send, opened, client):
    assert 'name="reason"' not in client.get(PAGE).content.decode()


def test_a_joint_is_tried_dry(send, opened):
    send("close", dry="on")

    assert stands("cover-joint").word == "dry-fitted"


def test_a_sealed_joint_is_torqued_and_then_found_dry(send, opened, client):
    send("ready", faces_clean="on", gasket="side gasket", bolts="12")
    send("close")
    first = re.search(r'<div class="card likely" id="(\w+)"', client.get(PAGE).content.decode())
    assert first[1] == "torque"
    assert "write down the torque first" in shown(client)
    assert send("leak", result="dry").status_code == 422
    assert 'name="result"' not in client.get(PAGE).content.decode()
    send("torque")
    assert stands("cover-joint").word == "torqued"

    send("leak", result="dry")

    assert stands("cover-joint").word == "leak-checked"


def test_an_undisturbed_joint_is_chalked(send, client):
    send("leak", "J1", result="dry", chalk="on")

    assert stands("hood-joint").dry_chalked_on
    assert "Chalk-dry" in shown(client, "J1")


def test_a_leaking_joint_is_not_simply_found_dry(send, client):
    send("leak", "J3", result="leaking")
    page = client.get("/m/grey/joint/J3/").content.decode()

    assert 'value="leaking"' in page
    assert 'value="dry"' not in page


def test_the_second_of_two_people_sees_what_changed_and_decides(send, client, machine):
    page = client.get("/m/grey/joint/J1/")
    acts.open_joint(machine="grey", joint="J1", who="Bo", bolts_out=3)

    answer = send("leak", "J1", page=page, result="dry", chalk="on")
    assert answer.status_code == 422
    assert "is open" in text_of(answer)

    older = client.get("/m/grey/joint/J1/")
    acts.ready_joint(machine="grey", joint="J1", who="Bo", bolts=3)
    answer = send("cover", "J1", page=older)
    assert "Bo: Made ready hood to case (J1)" in text_of(answer)
    assert not stands("hood-joint").covered

    send("cover", "J1", page=answer)  # it is still right
    assert stands("hood-joint").covered


def test_who_closes_second_is_told_that_it_is_closed_and_only_what_applies(send, opened, client):
    send("ready", faces_clean="on", gasket="side gasket", bolts="12")
    older = client.get(PAGE)
    acts.close_joint(machine="grey", joint="J2", who="Bo", torqued=True)

    read = text_of(send("close", page=older))

    assert "side cover to case (J2) is torqued already: there is nothing to close." in read
    assert "Bo: side cover to case (J2): torqued." in read
    assert "The page below shows how it stands now." in read
    assert "What may be done now" in read
    for nonsense in ("open it first", "send the form below again", "You had typed"):
        assert nonsense not in read
    assert "You had typed: reason none fits" in text_of(
        send("close", page=older, reason="none fits")
    )


def test_a_photo_is_likely_of_before_until_there_is_one_and_of_after_once_it_is_closed(
    send, client, machine
):
    def likely():
        page = client.get(PAGE).content.decode()
        return re.findall(r'name="moment" value="(\w*)" checked', page)

    assert likely() == ["before"]
    send("open", path="on")
    assert likely() == ["before"]
    machine.photos.create(
        about="joint:cover-joint", moment="before", file="aa/x.jpg", name="x.jpg", size=1, width=1,
        height=1, by="Ann", taken_at=MONDAY, at=MONDAY,
    )  # fmt: skip
    assert likely() == [""]
    send("ready", faces_clean="on", gasket="side gasket", bolts="12")
    send("close")
    assert likely() == ["after"]


def test_a_form_that_comes_twice_is_done_once(send, client):
    page = client.get("/m/grey/joint/J1/")
    send("open", "J1", page=page)
    before = see("grey").latest

    assert send("open", "J1", page=page).status_code == 302
    assert see("grey").latest == before


def test_parts_figures_notes_and_the_diary_of_the_joint_are_there(send, opened, client):
    acts.take_reading(machine="grey", figure="delivery", piece="left", typed="17", who="Ann")
    acts.write_note(machine="grey", about="J2", text="two long bolts below", who="Bo")
    acts.put_in_bag(machine="grey", number="12", about="J2", shelf="B2", holds="bolts", who="Ann")
    read = shown(client)

    assert re.search(r"Pump, left \S* ?fitted \S* ?worn out", read)
    assert "delivery, Pump, right not read" in read
    assert "two long bolts below Bo," in read
    assert "Bag 12 , shelf B2: bolts" in read
    assert "Opened hood to case (J1) and side cover to case (J2)." in read


def test_the_page_asks_the_database_little(send, opened, client, django_assert_max_num_queries):
    with django_assert_max_num_queries(12):
        client.get(PAGE)


def test_no_such_joint(machine, client):
    answer = client.get("/m/grey/joint/J22/")

    assert answer.status_code == 404
    assert "Did you mean" in text_of(answer)
