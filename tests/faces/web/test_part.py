"""A part's page: how its pieces stand, and what may become of them."""

import re

from shimstock.workshop import acts
from shimstock.workshop.looking import see
from workshop.shed_book import TEXT


def moved(pages, **fields):
    return pages.post("/m/grey/part/pump/", {"form": "a-form", **fields})


def test_a_piece_is_written_down_as_it_stands(pages):
    answer = moved(pages, piece="left", to="off", maker="T", note="drips")

    assert answer.headers["Location"] == "/m/grey/part/pump/?piece=left"
    stands = see("grey").now.piece("pump", "left")
    assert (str(stands.word), stands.maker, stands.note) == ("off", "T", "drips")
    assert str(see("grey").now.piece("pump", "right").word) == "fitted"


def test_what_the_rules_forbid_is_refused_with_what_was_typed(pages):
    answer = moved(pages, piece="left", to="in the post", note="from the dealer")
    html = answer.content.decode()

    assert answer.status_code == 422
    assert "from the dealer" in html
    assert "<option selected>in the post</option>" in html


def test_only_what_may_be_now_is_offered_first(pages):
    html = pages.get("/m/grey/part/pump/?piece=left").content.decode()
    now = html[html.index('label="May be now"') : html.index('label="Not yet')]

    assert "<option>off</option>" in now
    assert "<option>in the post</option>" not in now


def test_the_joints_that_lead_to_it_its_set_and_its_figures_are_links(pages):
    html = pages.get("/m/grey/part/liner/?piece=1").content.decode()

    assert 'href="/m/grey/joint/sump-joint/"' in html
    assert 'href="/m/grey/reading/bore/?piece=1"' in html
    assert 'href="/m/grey/reach/?to=liner"' in html


def test_another_piece_is_shown_when_it_is_asked_for(pages):
    acts.move_piece(machine="grey", part="pump", piece="right", to="off", who="Ben")

    html = pages.get("/m/grey/part/pump/?piece=right").content.decode()

    assert 'value="off">off (as it is)' in html


def test_a_part_is_found_by_its_mark_and_an_unknown_one_is_said(pages):
    assert "Pump" in pages.get("/m/grey/part/P5/").content.decode()
    assert pages.get("/m/grey/part/magneto/").status_code == 404


def test_a_refused_form_keeps_a_tick_that_was_taken_away(pages):
    acts.move_piece(
        machine="grey", part="pump", piece="left", to="off", proved_pair=True, who="Ben"
    )
    asked = pages.get("/m/grey/part/pump/?piece=left").content.decode()
    refused = moved(pages, piece="left", to="in the post", set="pumps").content.decode()
    ticked = re.compile(r'name="proved_pair" checked')

    assert ticked.search(asked)
    assert not ticked.search(refused)


def test_after_a_move_the_same_piece_is_shown_whatever_its_name(pages):
    text = TEXT.replace("[left, right]", "[left, L & R]")
    acts.add_machine(slug="red", name="Red", book_text=text, who="Ann")
    sent = {"form": "a-form", "piece": "L & R", "to": "off"}

    answer = pages.post("/m/red/part/pump/", sent)
    html = pages.get(answer.headers["Location"]).content.decode()

    assert '<input type="hidden" name="piece" value="L &amp; R">' in html


def test_each_piece_to_choose_says_its_state_in_words(pages):
    acts.move_piece(machine="grey", part="pump", piece="right", to="off", who="Ben")

    html = pages.get("/m/grey/part/pump/?piece=left").content.decode()
    choice = html[html.index('class="pieces"') : html.index("</nav>", html.index('class="pieces"'))]

    assert "fitted" in choice and "off" in choice


def test_somebody_elses_change_in_between_is_told_and_nothing_is_lost(pages, grey):
    acts.move_piece(machine="grey", part="pump", piece="left", to="off", who="Ben")

    answer = moved(pages, piece="left", to="wanted", note="mine", seen=str(grey.pk))
    html = answer.content.decode()

    assert answer.status_code == 422
    assert "Somebody else changed this" in html and "Ben" in html and "mine" in html


def test_a_piece_sits_on_the_part_of_its_own_side(client, settings, db):
    from dataclasses import replace

    from workshop.shed_book import MONDAY, TEXT

    text = TEXT.replace(
        "joints:\n",
        "  left-drum: {name: Drum, left, sits-on: case}\n"
        "  right-drum: {name: Drum right, sits-on: case}\n"
        "  shoes: {name: Shoes, sits-on: left-drum, each: [left, right]}\njoints:\n",
        1,
    ).replace("name: Drum, left,", "name: Drum left,")
    acts.add_machine(slug="red", name="Red", book_text=text, who="Ann", at=MONDAY)
    settings.SERVING = replace(settings.SERVING, who="Ann")

    for side in ("left", "right"):
        html = client.get(f"/m/red/part/shoes/?piece={side}").content.decode()
        assert f'href="/m/red/part/{side}-drum/">Drum {side}</a>' in html
        drum = client.get(f"/m/red/part/{side}-drum/").content.decode()
        assert 'href="/m/red/part/shoes/"' in drum


def test_a_pair_is_proved_by_a_tick_and_no_more_so_without_it(pages):
    moved(pages, piece="left", to="off", set="pumps", proved_pair="on", form="first")
    assert see("grey").now.piece("pump", "left").proved_pair

    moved(pages, piece="left", to="washed", set="pumps", form="second")
    assert not see("grey").now.piece("pump", "left").proved_pair
