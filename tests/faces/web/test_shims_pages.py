"""A shim pack as a page: the same answer as the terminal's, and why there is none."""

import pytest

from shimstock.faces.web.pages.chains import chains_of
from workshop.shed_book import MONDAY

TEXT = """\
book: shim-book
title: Shim book (invented)
prints: inch
parts:
  case: {name: Case, mark: P1}
  axle: {name: Axle, mark: P2, sits-on: case, each: [left, right]}
joints:
  cap:
    name: cap to case
    mark: J1
    between: [axle, case]
    seals: oil
    open: 10 min
    close: 15 min
    settles: [{figure: end-play, by: shims, piece: right}]
figures:
  end-play: {name: end play, mark: F1, of: axle, new: 0.001 .. 0.004 in, limit: max 0.008 in}
  lash: {name: lash, mark: F2, of: axle, new: 0.001 .. 0.004 in}
"""
PACK = "piece=right&fitted=0.024&offered=0.003,0.005,0.010"


@pytest.fixture
def asked(client, settings, db):
    from dataclasses import replace

    from shimstock.workshop import acts

    settings.SERVING = replace(settings.SERVING, who="Ann")
    acts.add_machine(slug="grey", name="Grey", book_text=TEXT, who="Ann", at=MONDAY)
    return client


def said(answer) -> str:
    return " ".join(answer.content.decode().split())


def test_the_pack_and_the_play_to_expect_with_the_working(asked, django_assert_max_num_queries):
    # 0.011 + 0.015 − 0.024 = 0.002 in, within 0.001 to 0.004 in (by hand)
    with django_assert_max_num_queries(12):
        shown = said(asked.get(f"/m/grey/shims/end-play/?{PACK}&play=0.011"))

    assert "1 × 0.010 in, 1 × 0.005 in" in shown
    assert "0.0020 in" in shown and "0.0150 in, in place of 0.0240 in" in shown
    assert "e_new = e + t − t_0 = 0.011 + 0.015 − 0.024 = 0.002 in" in shown
    assert "Measure the pack whole before it goes in" in shown
    assert 'value="0.003,0.005,0.010"' in shown


def test_the_latest_reading_counts_where_no_play_is_typed(asked):
    from shimstock.workshop import acts

    acts.take_reading(machine="grey", figure="end-play", piece="right", typed="0.011", who="Ann")
    assert "1 × 0.010 in, 1 × 0.005 in" in said(asked.get(f"/m/grey/shims/end-play/?{PACK}"))


def test_behind_a_bearing_a_thicker_pack_takes_up_play(asked):
    shown = said(asked.get(f"/m/grey/shims/end-play/?{PACK}&play=0.011&behind=yes"))

    assert "Behind the bearing: a thicker pack takes up play." in shown
    assert 'value="yes" checked' in shown


@pytest.mark.parametrize(
    ("query", "wrong"),
    [
        (PACK, "has not been read; read it, or type it here"),
        (f"{PACK}&play=long", "long"),
        (f"{PACK}&play=0.9", "even without shims 0.8760 in of play is left"),
        ("piece=right&fitted=0.024&offered=0.010&play=.011", "type in “Shims to be had”"),
    ],
)
def test_where_there_is_no_pack_it_says_why_and_keeps_what_was_typed(query, wrong, asked):
    told = asked.get(f"/m/grey/shims/end-play/?{query}")

    assert told.status_code == 422
    assert wrong in said(told)
    assert 'name="fitted" value="0.024"' in said(told)
    assert "--" not in said(told)[said(told).index('role="alert"') :][:400]


def test_first_it_only_asks_and_chooses_the_piece_that_shims_set(asked):
    told = asked.get("/m/grey/shims/end-play/")

    assert told.status_code == 200
    assert 'role="alert"' not in said(told)
    assert "<option selected>right</option>" in said(told)
    assert "<option>left" not in said(told)


def test_a_figure_that_no_pack_sets_says_so(asked):
    told = asked.get("/m/grey/shims/lash/")

    assert told.status_code == 422
    assert "is not set by shims" in said(told)


def test_the_figures_that_shims_set_are_listed(asked):
    from shimstock.workshop.looking import see

    ways = chains_of(see("grey"))

    assert ways.chains == ()
    assert [way.address for way in ways.shims] == ["/m/grey/shims/end-play/?piece=right"]
