"""The pages on which paper and data are asked for, and what they send."""

from __future__ import annotations

import csv
import io
import zipfile
from dataclasses import replace

import pytest
from django.urls import resolve
from pypdf import PdfReader

from shimstock.faces.paper.square import address_of
from shimstock.workshop import acts
from shimstock.workshop.labels import Labelled
from workshop.shed_book import LINER_1

HERE = "/m/grey/"


def pdf_of(answer) -> PdfReader:
    assert answer.status_code == 200
    assert answer["Content-Type"] == "application/pdf"
    return PdfReader(io.BytesIO(answer.content))


def words(pdf: PdfReader) -> str:
    return " ".join(" ".join(page.extract_text() for page in pdf.pages).split())


def test_the_page_of_papers_leads_to_all_of_them(pages):
    acts.open_joint(machine="grey", joint="J1", who="Ann")
    shown = pages.get(f"{HERE}papers/?paper=letter").content.decode()

    for link in ("record.pdf?paper=letter", "job/hood-joint.pdf?paper=letter", "readings.csv",
                 "labels/?sheet=letter", "book-file/"):  # fmt: skip
        assert f'href="{HERE}{link}' in shown, link
    assert 'href="/archive/"' in shown


@pytest.mark.parametrize("address", ["papers/", "labels/"])
def test_pages_ask_little_of_the_database(address, pages, django_assert_max_num_queries):
    pages.get(f"{HERE}{address}")
    with django_assert_max_num_queries(12):
        assert pages.get(f"{HERE}{address}").status_code == 200


@pytest.mark.parametrize(("keep", "how"), [("", "inline"), ("?keep=yes", "attachment")])
def test_the_record_is_looked_at_or_kept(keep, how, pages):
    answer = pages.get(f"{HERE}record.pdf{keep}")

    assert "The grey one" in words(pdf_of(answer))
    assert answer["Content-Disposition"] == f'{how}; filename="grey.pdf"'


@pytest.mark.parametrize(("paper", "wide"), [("a4", 595), ("letter", 612), ("nonsense", 595)])
def test_a_job_card_comes_on_the_paper_that_is_asked_for(paper, wide, pages):
    pdf = pdf_of(pages.get(f"{HERE}job/J2.pdf?paper={paper}"))

    assert round(pdf.pages[0].mediabox.width) == wide
    assert "J2 Side cover to case" in words(pdf)


def test_a_joint_that_is_none_has_no_card(pages):
    assert pages.get(f"{HERE}job/none.pdf").status_code == 404


def test_labels_are_printed_of_what_is_ticked(pages):
    asked = {"joint": ["cover-joint"], "part": ["pump"], "address": "http://10.0.0.2:8140"}
    text = words(pdf_of(pages.get(f"{HERE}labels.pdf", asked)))

    assert "Side cover to case" in text and "Pump" in text
    assert "Hood" not in text


def test_the_label_of_a_joint_is_ticked_when_one_comes_from_its_page(pages):
    shown = pages.get(f"{HERE}labels/?joint=cover-joint").content.decode()

    assert 'name="joint" value="cover-joint" checked' in shown
    assert 'name="joint" value="hood-joint" checked' not in shown


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ({}, "No label is chosen"),
        ({"joint": "cover-joint", "start": "25"}, "which has 24"),
        ({"joint": "cover-joint", "start": "first"}, "is no place of a label"),
        ({"joint": "cover-joint", "address": "ftp://x"}, "is no address at which phones"),
    ],
)
def test_a_wrong_choice_is_shown_again_with_what_was_typed(asked, said, pages):
    answer = pages.get(f"{HERE}labels.pdf", {"sheet": "a4", **asked})
    shown = answer.content.decode()

    assert answer.status_code == 422
    assert said in shown
    for name, value in asked.items():
        assert f'name="{name}"' in shown and f'value="{value}"' in shown


def test_a_roll_has_one_label_so_a_start_of_two_is_refused(pages):
    answer = pages.get(f"{HERE}labels.pdf?sheet=roll&joint=cover-joint&start=2")

    assert answer.status_code == 422


def test_a_joint_that_the_book_lacks_has_no_label(pages):
    assert pages.get(f"{HERE}labels.pdf?joint=none").status_code == 404


def test_labels_bear_the_address_where_phones_find_the_shed(pages, settings):
    settings.SERVING = replace(settings.SERVING, address="http://192.168.1.20:8140")
    shown = pages.get(f"{HERE}labels/").content.decode()

    assert 'value="http://192.168.1.20:8140"' in shown
    assert "opens only on the computer itself" not in shown


def test_an_address_that_only_this_computer_knows_is_pointed_out(pages):
    shown = pages.get(f"{HERE}labels/", headers={"host": "localhost"}).content.decode()

    assert 'value="http://localhost"' in shown
    assert "opens only on the computer itself" in shown


@pytest.mark.parametrize("kind", ["joint", "part", "bag", "shelf"])
def test_what_a_label_says_is_an_address_of_ours(kind):
    labelled = Labelled("grey", kind, "12")
    found = resolve(address_of("", labelled))

    assert found.url_name == "label"


# --- data --------------------------------------------------------------------------------


def table(pages) -> list[dict[str, str]]:
    answer = pages.get(f"{HERE}readings.csv")
    assert answer["Content-Type"] == "text/csv; charset=utf-8"
    data = b"".join(answer.streaming_content)
    assert not data.startswith(b"\xef\xbb\xbf")
    assert data.count(b"\n") == data.count(b"\r\n")
    return list(csv.DictReader(io.StringIO(data.decode(), newline="")))


def test_each_reading_is_a_row(pages):
    acts.take_reading(machine="grey", figure="bore", piece="1", typed=LINER_1, who="Ann")
    acts.take_reading(machine="grey", figure="end-float", typed="0.0140 in", who='Béla, "B"')
    acts.take_reading(machine="grey", figure="end-float", typed="0.0141", who="Ann")
    bore, older, newer = table(pages)

    assert bore["values"] == "5.7592; 5.7554; 5.7532; 5.7568; 5.7546; 5.7528"
    assert (bore["figure"], bore["mark"], bore["name"], bore["piece"], bore["stage"]) == (
        "bore", "F1", "liner bore", "1", "as found",
    )  # fmt: skip
    assert (bore["unit"], bore["instrument"], bore["limit"]) == (
        "in", "bore gauge", "max 5.7600 in",
    )  # fmt: skip
    assert bore["stand-in"] == "yes"
    assert (older["typed"], older["values"], older["by"]) == ("0.0140 in", "0.014", 'Béla, "B"')
    assert (older["superseded"], older["verdict"]) == ("yes", "")
    assert (newer["superseded"], newer["verdict"]) == ("no", "worn out")
    assert "T" in newer["at"] and newer["at"][-6] in "+-"


def test_what_was_undone_is_no_row(pages):
    from shimstock.workshop.models import DiaryEntry

    acts.take_reading(machine="grey", figure="end-float", typed="0.0140", who="Ann")
    acts.undo(entry_id=DiaryEntry.objects.latest("pk").pk, who="Ann")

    assert table(pages) == []


def test_a_text_is_no_formula(pages):
    from shimstock.workshop.models import Machine

    acts.take_reading(machine="grey", figure="end-float", typed="0.0140", who="=cmd()|'!A1")
    Machine.objects.update(name="@grey")
    (row,) = table(pages)

    assert row["by"] == "'=cmd()|'!A1"
    assert row["machine"] == "'@grey"
    assert row["values"] == "0.014"


# --- the whole workshop ------------------------------------------------------------------


def test_looking_at_the_page_makes_no_archive(pages):
    shown = pages.get("/archive/").content.decode()

    assert "shimstock restore FILE --shed NEW-FOLDER" in shown
    assert "passwords" in shown.lower()


@pytest.mark.django_db(transaction=True)
def test_the_form_sends_the_workshop_as_a_file(pages):
    answer = pages.post("/archive/")
    data = b"".join(answer.streaming_content)
    answer.close()

    assert answer["Content-Disposition"].startswith('attachment; filename="')
    assert int(answer["Content-Length"]) == len(data)
    with zipfile.ZipFile(io.BytesIO(data)) as opened:
        assert {"workshop.sqlite3", "manifest.json"} <= set(opened.namelist())
        assert opened.testzip() is None


def test_a_full_disk_is_said_on_the_page(pages, monkeypatch):
    from shimstock.workshop.archive import make
    from shimstock.workshop.refused import Refused

    def full(_):
        raise Refused(["The disk has 1 kB free; make room first"])

    monkeypatch.setattr(make, "archive_open", full)
    answer = pages.post("/archive/")

    assert answer.status_code == 422
    assert "make room first" in answer.content.decode()


def test_the_form_comes_only_from_our_page(pages):
    from django.test import Client

    assert Client(enforce_csrf_checks=True).post("/archive/").status_code == 403
