"""The list of the trade's sums, how one is found, and how one is asked."""

import gzip
import re

import pytest

from shimstock.trade.sums.find import all_sums

SUMS = {each.name for sums in all_sums().values() for each in sums}


@pytest.fixture
def asked(client, settings, db):
    from dataclasses import replace

    settings.SERVING = replace(settings.SERVING, who="Ann")
    return client


@pytest.fixture(scope="module")
def laid_out(django_db_setup, django_db_blocker):
    """The demo's shed, laid out once for all that only look at it."""
    from django.db import transaction

    from shimstock.workshop.demo.lay_out import lay_out

    with django_db_blocker.unblock(), transaction.atomic():
        lay_out()
        yield
        transaction.set_rollback(True)


@pytest.fixture
def demo(laid_out, client, settings, django_db_blocker):
    from dataclasses import replace

    settings.SERVING = replace(settings.SERVING, who="Ida")
    with django_db_blocker.unblock():
        yield client


def said(answer) -> str:
    return " ".join(answer.content.decode().split())


def named(answer) -> list[str]:
    return re.findall(r'href="/sums/([\w-]+)/"', answer.content.decode())


def test_every_sum_is_listed_under_its_family_with_its_sentence(asked):
    told = asked.get("/sums/")

    assert sorted(named(told)) == sorted(SUMS)
    assert said(told).count("<details") == len(all_sums()) == 20
    assert "Turns of the last shaft for one turn of the first" in said(told)
    assert len(gzip.compress(told.content)) < 50_000


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("ring gap", ["ring-gap"]),
        ("RING-GAP", ["ring-gap"]),
        ("swept volume", ["displacement"]),  # a word of its sentence
        ("torque", ["torque", "torque-for-film"]),
    ],
)
def test_sums_are_found_by_their_words(typed, found, asked):
    told = asked.get("/sums/", {"q": typed})

    assert set(found) <= set(named(told))
    assert len(named(told)) < 20
    assert f'value="{typed}"' in said(told)


def test_what_is_spelled_badly_is_offered_as_it_is_spelled_well(asked):
    told = asked.get("/sums/", {"q": "displacemnt"})

    assert "displacement" in named(told)
    assert "Much like them" in said(told)


def test_words_of_no_sum_say_so(asked):
    told = asked.get("/sums/", {"q": "zzzz qqqq"})

    assert (told.status_code, named(told)) == (200, [])
    assert "No sum has these words: zzzz qqqq" in said(told)


def test_an_unknown_sum_is_not_there_and_offers_its_neighbours(asked):
    told = asked.get("/sums/ring-gapp/")

    assert told.status_code == 404
    assert "ring-gap" in named(told)


def test_the_address_of_a_family_opens_it(asked):
    assert '<details class="family" id="gears" open>' in said(asked.get("/sums/?family=gears"))


def test_the_result_comes_first_with_the_other_system_beside_and_its_own_words_below(asked):
    told = said(asked.get("/sums/displacement/?bore=4+1/4+in&stroke=5+1/4+in&in=in3"))

    assert told.index("74.48 in3") < told.index("1220 cc") < told.index("<h2>Given</h2>")
    assert told.index("<h2>Given</h2>") < told.index("<h2>Working</h2>") < told.index("Source:")
    assert (
        '<td>bore</td><td>4 1/4 in <span class="soft">= 4.25 in</span></td>' in told
        and "typed now" in told
    )
    assert 'value="4 1/4 in"' in told  # and stands in its field again


def test_cautions_and_whom_to_defer_to_come_before_the_result(asked):
    told = said(asked.get("/sums/torque/?thread=3/8-16&grade=SAE+5"))
    shown = told[told.index('id="answer"') :]

    assert shown.index("A bolt that has yielded") < shown.index("go before everything said here")
    assert shown.index("go before everything said here") < shown.index("<h2>Result</h2>")


@pytest.mark.parametrize(
    ("query", "field", "wrong"),
    [
        ("bore=88+psi&stroke=5+in", "bore", "88 psi is a pressure; bore is a length"),
        ("bore=-3+in&stroke=5+in", "bore", "bore −3 in must be above 0"),
        ("bore=4+in", "stroke", "Needed."),
        ("bore=108&stroke=5+in", "bore", "108 says no unit."),
        ("bore=4+in&stroke=5+in&cylinders=2.5", "cylinders", "2.5 is no whole number"),
    ],
)
def test_what_is_wrong_stands_beside_its_field_and_nothing_typed_is_lost(
    query, field, wrong, asked
):
    told = asked.get(f"/sums/displacement/?{query}")
    help_of = re.search(rf'id="{field}-help">(.*?)</p>', said(told))

    assert told.status_code == 422
    assert wrong in help_of[1]
    assert said(told).count('aria-invalid="true"') == 1
    assert re.search(rf'id="{field}"[^>]*aria-invalid="true"', said(told))
    for typed in query.split("&"):
        name, value = typed.split("=")
        assert f'name="{name}" value="{value.replace("+", " ")}"' in said(told)
    assert "--" not in re.search(r'role="alert">(.*?)</div>', said(told))[1]
    assert "<h2>Result</h2>" not in said(told)


def test_a_bare_number_is_offered_with_both_units(asked):
    told = said(asked.get("/sums/displacement/?bore=108&stroke=133+mm"))
    assert "for bore 108 mm or 108 in" in told


def test_while_typing_what_is_not_there_yet_is_said_quietly(asked):
    told = asked.get("/sums/displacement/?bore=4+in", headers={"HX-Request": "true"})

    assert told.status_code == 200
    assert 'role="alert"' not in said(told)
    assert "Not yet: displacement still needs “stroke”" in said(told)


def test_a_machine_fills_what_is_left_empty_and_each_value_says_where_it_is_from(
    demo, django_assert_max_num_queries
):
    with django_assert_max_num_queries(12):
        told = demo.get("/sums/torque-for-film/?machine=brackwater&where=J36&now=anti-seize")

    assert told.status_code == 200
    assert "14.4 lbf.ft" in said(told)
    assert "Found: 24 lbf.ft, book, page 61." in said(told)
    assert '<option value="brackwater" selected>' in said(told)
    assert 'name="where" value="J36"' in said(told)
    assert '<option value="J36">' in said(told)  # in the list of what can be named


def test_what_is_typed_goes_before_what_the_machine_holds(demo):
    told = said(demo.get("/sums/displacement/?machine=brackwater&bore=5+in"))

    assert '<td>5 in</td><td class="soft">typed now</td>' in told
    assert "book, page 9" in told


def test_which_of_several_follows_after_a_semicolon(demo):
    told = said(demo.get("/sums/lash-from-end/?machine=brackwater&where=fan-drive;+2"))
    assert "fan-drive has 3 meshes" not in told


def test_what_the_machine_does_not_hold_is_named_by_its_field(demo):
    told = demo.get("/sums/torque/?machine=brackwater&where=J29")

    assert told.status_code == 422
    assert "gives no grade for J29; type “grade”" in said(told)
    assert "Needed." in re.search(r'id="grade-help">(.*?)</p>', said(told))[1]


@pytest.mark.parametrize("query", ["machine=nowhere", "machine=brackwater&where=nowhere"])
def test_a_machine_or_place_that_is_not_there_is_said(query, demo):
    told = demo.get(f"/sums/torque/?{query}")

    assert told.status_code == 422
    assert "nowhere" in said(told)


def test_a_field_of_the_sums_own_that_is_called_like_one_of_the_page_stays_apart(asked):
    told = said(asked.get("/sums/starter-drop-limit/"))
    assert 'name="where-value"' in told


def test_a_link_with_a_machine_alone_is_no_error_yet(pages):
    """Whoever comes from a joint has typed nothing: the form says what is still to be given."""
    answer = pages.get("/sums/torque-for-film/", {"machine": "grey", "where": "J2"})

    assert answer.status_code == 200
    assert "Not done" not in answer.content.decode()
    wrong = pages.get("/sums/torque-for-film/", {"machine": "grey", "where": "J2", "torque": "x"})
    assert wrong.status_code == 422
