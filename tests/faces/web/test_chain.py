"""A train of play as a page: which link is worn, what to hold next, and where it is read."""

import pytest

from shimstock.faces.web.pages.chains import chains_of
from workshop.shed_book import MONDAY

# Two links: a camshaft mesh and a governor mesh, read at a rim of 5 in beyond a 1 in gear.
TEXT = """\
book: chain-book
title: Chain book (invented)
prints: inch
parts:
  case: {name: Case, mark: P1}
  gear: {name: Gear, mark: P2, sits-on: case}
joints:
  cover:
    name: cover to case
    mark: J1
    between: [gear, case]
    seals: oil
    open: 10 min
    close: 15 min
figures:
  rim: {name: rim play, mark: F1, of: gear, limit: max 0.100 in}
  rim-held: {name: "rim play, idler held", mark: F2, of: gear, unit: in}
  first-lash: {name: first lash, mark: F3, of: gear, new: 0.002 .. 0.004 in, limit: max 0.010 in}
  second-lash: {name: second lash, mark: F4, of: gear, new: 0.002 .. 0.004 in, limit: max 0.010 in}
trains:
  drive:
    name: Drive, crank to rim
    figure: rim
    links:
      - name: crank to idler
        figure: first-lash
        ratio: 2
        hold: {what: crank}
      - name: idler to rim
        figure: second-lash
        ratio: 5
        hold: {what: idler, figure: rim-held, open: cover}
        look-first: [a loose key]
"""


@pytest.fixture
def asked(client, settings, db):
    from dataclasses import replace

    from shimstock.workshop import acts

    settings.SERVING = replace(settings.SERVING, who="Ann")
    acts.add_machine(slug="grey", name="Grey", book_text=TEXT, who="Ann", at=MONDAY)
    return client


def read(figure, typed, stage="as found"):
    from shimstock.workshop import acts

    acts.take_reading(machine="grey", figure=figure, typed=typed, stage=stage, who="Ann")


def said(answer) -> str:
    return " ".join(answer.content.decode().split())


def test_before_anything_is_read_it_says_so_and_leads_to_the_readings(asked):
    shown = said(asked.get("/m/grey/chain/drive/"))

    assert "Which link is worn cannot be told yet." in shown
    assert "Not rocked yet" in shown
    assert 'href="/m/grey/reading/rim/?stage=as+found"' in shown
    assert 'href="/m/grey/reading/rim-held/?stage=as+found"' in shown
    assert shown.count("not measured") >= 2


def test_with_the_whole_alone_it_cannot_tell_and_names_the_next_hold(asked):
    read("rim", "0.170")
    shown = said(asked.get("/m/grey/chain/drive/"))

    assert "Which link is worn cannot be told yet." in shown
    assert "Next: hold the idler, and rock again (cover to case: 10 min to open" in shown
    next_hold = shown[shown.index("To part them further") : shown.index("Link by link")]
    assert 'href="/m/grey/reading/rim-held/?stage=as+found"' in next_hold


def test_held_apart_the_worn_link_is_named(asked):
    # 0.170 in at the rim; 0.150 in of it with the idler held: 0.150/5 = 0.030 in in the second
    # mesh, (0.170 − 0.150)/2 = 0.010 in in the first (by hand, from the ratios).
    read("rim", "0.170")
    read("rim-held", "0.150")
    shown = said(asked.get("/m/grey/chain/drive/"))

    assert "Worn out: idler to rim." in shown
    assert '<li class="worn"> <h3>idler to rim</h3>' in shown
    assert "0.0300 in" in shown[shown.index('<li class="worn">') :]
    assert "a loose key" in shown
    assert "Held: idler: 0.150" in shown


def test_each_link_shows_its_likely_play_with_its_bar_and_chance(asked):
    read("rim", "0.170")
    read("rim-held", "0.150")
    shown = said(asked.get("/m/grey/chain/drive/"))
    first, second = shown.split("<h3>")[1:]

    # by hand, from the ratios: 0.150/5 = 0.030 in, (0.170 − 0.150)/2 = 0.010 in
    assert "Likely 0.03" in second and "in 9 of 10 cases" in second
    assert "Over its limit of 0.0100 in; chance to be over: over 99 %" in second
    assert "may be over its limit of 0.0100 in" in first or "probably" in first
    assert 'class="play over"' in second and 'class="play unsure"' in first
    assert 'aria-label="idler to rim: likely' in second
    assert "k_2 = 5" in second and "Rabiner" in second  # its working can be opened


def test_a_reading_on_the_link_itself_counts(asked):
    read("rim", "0.170")
    before = said(asked.get("/m/grey/chain/drive/"))
    read("second-lash", "0.030")
    after = said(asked.get("/m/grey/chain/drive/"))

    assert "not parted from the others yet" in before
    assert "not parted from the others yet" not in after
    assert "Too much: idler to rim." in after


def test_what_is_open_already_costs_nothing(asked):
    from shimstock.workshop import acts

    read("rim", "0.170")
    before = said(asked.get("/m/grey/chain/drive/"))
    acts.open_joint(machine="grey", joint="cover", who="Ann")
    after = said(asked.get("/m/grey/chain/drive/"))

    assert "10 min to open, 15 min to close); About" in before.replace(
        '.</p> <p class="soft">', "; "
    )
    assert "About 30 min in all" in before
    assert "hold the idler, and rock again (nothing to open)" in after
    assert "About 5 min in all" in after


def test_readings_that_contradict_each_other_are_told(asked):
    read("rim", "0.050")
    read("rim-held", "0.300")

    assert "does not fit the other readings" in said(asked.get("/m/grey/chain/drive/"))


def test_before_and_after_the_work_are_apart(asked):
    read("rim", "0.170")
    read("rim-held", "0.150")
    read("rim", "0.030", stage="as finished")
    read("rim-held", "0.015", stage="as finished")

    after = said(asked.get("/m/grey/chain/drive/?stage=as+finished"))
    assert "No link is proven worn out." in after
    assert "Worn out: idler to rim." in said(asked.get("/m/grey/chain/drive/"))


def test_an_unknown_train_is_not_there(asked):
    assert asked.get("/m/grey/chain/driv/").status_code == 404


def test_it_asks_little(asked, django_assert_max_num_queries):
    with django_assert_max_num_queries(12):
        asked.get("/m/grey/chain/drive/")


def test_the_chains_of_a_machine_are_listed(asked):
    from shimstock.workshop.looking import see

    ways = chains_of(see("grey"))

    assert [(way.name, way.address) for way in ways.chains] == [
        ("Drive, crank to rim", "/m/grey/chain/drive/")
    ]
    assert ways.shims == ()


def test_the_whole_over_its_limit_is_too_much_in_all_and_leads_to_its_chain(asked):
    read("rim", "0.170")
    read("rim-held", "0.150")
    whole = said(asked.get("/m/grey/reading/rim/"))

    assert "Too much in all" in whole
    assert "Borderline" not in whole
    assert "Hold one shaft after another" not in whole
    assert 'href="/m/grey/chain/drive/">Drive, crank to rim, place by place' in whole
    listed = said(asked.get("/m/grey/joint/J1/"))
    assert "too much in all" in listed
    assert "borderline" not in listed
    machine = said(asked.get("/m/grey/"))
    assert 'href="/m/grey/chain/drive/"' in machine
    assert "Put right what is worn in Drive, crank to rim" in machine
    assert "Settle rim play" not in machine
