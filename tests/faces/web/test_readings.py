"""The list of readings: worn first, narrowed by word and text, small however much was read."""

import gzip
import html
import re

from shimstock.workshop import acts
from workshop.shed_book import LINER_1, TEXT

LIST = "/m/grey/readings/"


def said(answer):
    """The words of a page, without its marks."""
    bare = re.sub(r"<[^>]+>", " ", answer.content.decode())
    return " ".join(html.unescape(bare).split())


def take(figure, typed, machine="grey", **more):
    return acts.take_reading(machine=machine, figure=figure, typed=typed, who="Ann", **more)


def read_some():
    take("bore", LINER_1, piece="1")
    take("end-float", "0.020")


def names(answer):
    """The figures in the list, in its order."""
    return re.findall(r'class="what">([^<]+)<', answer.content.decode())


def test_worn_stands_first(pages):
    read_some()

    assert names(pages.get(LIST))[0] == "liner taper, 1"  # 0.0060 in of at most 0.0050 in
    assert names(pages.get(LIST))[-1] == "liner bore, 1"


def test_what_was_put_right_is_not_worn_any_more(pages):
    take("end-float", "0.020")
    take("end-float", "0.006", stage="as finished")

    assert names(pages.get(f"{LIST}?word=worn out")) == []
    page = said(pages.get(f"{LIST}?word=good"))
    assert "As found: 0.0200 in: worn out" in page
    assert "As finished: 0.0060 in: good" in page


def test_a_word_and_a_text_narrow_the_list(pages):
    read_some()

    assert names(pages.get(f"{LIST}?word=serviceable")) == ["liner bore, 1"]
    assert names(pages.get(f"{LIST}?q=F3")) == ["end float"]
    assert names(pages.get(f"{LIST}?q=nothing so called")) == []


def test_what_was_not_measured_is_named_by_part(pages):
    read_some()
    page = said(pages.get(f"{LIST}?word=not measured"))

    assert "Pump 1 delivery (F4) left, right" in page
    assert "liner bore (F1) 2" in page
    assert "end float" not in page


def test_what_to_do_stands_on_top(pages):
    take("end-float", "0.020")
    page = said(pages.get(LIST))

    assert page.index("What to do") < page.index("Read, worn first")
    assert "Put right or replace" in page


def test_what_is_accepted_says_so(pages):
    take("end-float", "0.020")
    acts.accept_verdict(machine="grey", figure="end-float", reason="in the post", who="Ann")

    assert "worn out, accepted" in said(pages.get(LIST))


def test_two_thousand_readings_make_a_small_page(pages, django_assert_max_num_queries):
    many = TEXT.replace("liner: {name: Liner, mark: P6, sits-on: case, count: 2", (
        "liner: {name: Liner, mark: P6, sits-on: case, count: 400"
    ))  # fmt: skip
    acts.add_machine(slug="big", name="The big one", book_text=many, who="Ann")
    _lay_out_readings("big", 400)

    pages.get("/m/big/readings/")
    with django_assert_max_num_queries(10):
        answer = pages.get("/m/big/readings/")
    assert len(names(answer)) == 100
    assert len(gzip.compress(answer.content)) < 50_000
    assert "More: 101 to 200 of 800" in said(answer)
    assert len(names(pages.get("/m/big/readings/?page=8"))) == 100


def _lay_out_readings(slug, count):
    """As many bores as told, each read five times over, as the acts would have stored them."""
    from django.utils import timezone

    from shimstock.workshop.models import Machine, ReadingRow, VerdictRow

    took = take("bore", LINER_1, machine=slug, piece="1")
    machine, at, row = Machine.objects.get(slug=slug), timezone.now(), took.reading
    rows = [
        ReadingRow(
            machine=machine, figure="bore", piece=str(piece), stage="as found", typed=row.typed,
            values=row.values, unit=row.unit, instrument=row.instrument, by="Ann", at=at,
            superseded=time < 4,
        )
        for piece in range(2, count + 1)
        for time in range(5)
    ]  # fmt: skip
    ReadingRow.objects.bulk_create(rows)
    verdicts = [
        VerdictRow(
            machine=machine, figure=one.figure, piece=str(piece), stage="as found",
            verdict=one.verdict, value=one.value, unit=one.unit, says=one.says, p=one.p,
            data=one.data, at=at, code_version=one.code_version,
        )
        for one in took.verdicts
        for piece in range(2, count + 1)
    ]  # fmt: skip
    VerdictRow.objects.bulk_create(verdicts)
    acts.write_note(machine=slug, about="machine", text="Many were read.", who="Ann")
