"""The job card as somebody at the bench has it: read back from the PDF."""

from __future__ import annotations

import io

import pytest
from pypdf import PdfReader

from faces.paper.conftest import add, plain
from shimstock.faces.paper.job_card import card_of, job_card
from shimstock.workshop import acts
from shimstock.workshop.at_joint import at_joint
from shimstock.workshop.demo.books import demo_book
from shimstock.workshop.looking import DEFERS, see
from workshop.shed_book import TEXT

pytestmark = pytest.mark.django_db


@pytest.fixture
def grey(db):
    add("grey", "The grey one", TEXT)


@pytest.fixture
def tractor(db):
    add("tractor", "Tractor", demo_book("brackwater-40"))


def card(machine: str, joint: str):
    at = at_joint(see(machine), joint)
    return card_of(at, at.seen.now.today)


def text_of(machine: str, joint: str, **more) -> str:
    pdf = PdfReader(io.BytesIO(job_card(at_joint(see(machine), joint), **more)))
    return plain(" ".join(page.extract_text() for page in pdf.pages))


def test_cautions_stand_before_the_work_and_defer(tractor):
    text = text_of("tractor", "J56")
    due = at_joint(see("tractor"), "J56").cautions

    assert due
    for each in due:
        assert each.caution.name in text
        assert each.caution.never in text
        assert text.index(each.caution.name) < text.index("Way in")
    assert text.index(DEFERS) < text.index("Way in")


def test_the_deference_stands_there_without_any_caution(grey):
    assert DEFERS in text_of("grey", "J1")


def test_the_way_in_is_in_order_with_its_minutes(grey):
    text = text_of("grey", "J2")

    assert text.index("1. J1 Hood to case 10 min") < text.index("2. J2 Side cover to case 25 min")
    assert "open 35 min, close 65 min by the book" in text


def test_an_open_joint_has_no_way_in(grey):
    acts.open_joint(machine="grey", joint="J2", path=True, who="Ann")
    text = text_of("grey", "J2")

    assert "open since" in text and "not covered" in text
    assert "Way in" not in text
    assert "It stands open. Closing it takes 50 min by the book." in text


def test_a_torque_is_marked_as_a_stand_in_figure(grey):
    text = text_of("grey", "J2")

    assert "12 × bolt 3/8-16 UNC: 24 lbf.ft stand-in" in text
    assert "The maker's figure goes before it." in text.replace("’", "'")


def test_what_is_used_up_and_ticked_before_closing(grey):
    text = text_of("grey", "J2")

    assert "side gasket, 0.015 in" in text
    for said in ("Both faces clean", "Ready: side gasket", "of 12", "Done by", "Date", "Notes"):
        assert said in text, said


def test_fastenings_that_came_off_are_counted_not_those_of_the_book(grey):
    acts.open_joint(machine="grey", joint="J2", path=True, bolts_out=11, who="Ann")

    assert card("grey", "J2").bolts == 11
    assert "of 11" in text_of("grey", "J2")


def test_boxes_have_the_shape_of_the_measurement(grey):
    (bore,) = (each for each in card("grey", "J3").figures if each.mark == "F1")

    assert bore.columns == ("top", "middle", "bottom")
    assert [row.name for row in bore.rows] == ["1 thrust", "1 pin", "2 thrust", "2 pin"]
    assert bore.allowed == "New 5.7500 to 5.7510 in. Limit at most 5.7600 in."
    assert bore.stand_in
    assert (bore.unit, bore.with_) == ("in", "bore gauge")


def test_a_figure_of_one_number_has_one_box_a_piece(grey):
    boxes = {each.mark: each for each in card("grey", "J2").figures}

    assert boxes["F4"].columns == ("",)
    assert [row.name for row in boxes["F4"].rows] == ["left", "right"]


def test_what_follows_from_others_is_not_read(grey):
    assert "F2" not in {each.mark for each in card("grey", "J3").figures}


def test_the_verdict_on_each_piece_stands_beside_its_boxes(grey):
    acts.take_reading(machine="grey", figure="delivery", piece="left", typed="17", who="Ann")
    (delivery,) = [each for each in card("grey", "J2").figures if each.mark == "F4"]

    assert [row.known for row in delivery.rows] == ["worn out", ""]


def test_a_figure_for_which_the_book_gives_nothing_is_no_stand_in(tractor):
    boxes = [each for each in card("tractor", "J31").figures if "gives no limit" in each.allowed]

    assert boxes
    assert not any(each.stand_in for each in boxes)


@pytest.mark.parametrize(("paper", "wide"), [("a4", 595), ("letter", 612)])
def test_it_is_one_sheet_of_the_paper_that_is_asked_for(paper, wide, tractor):
    made = job_card(at_joint(see("tractor"), "J47"), base="http://192.168.1.20:8140", paper=paper)
    pdf = PdfReader(io.BytesIO(made))

    assert len(pdf.pages) == 1
    assert round(pdf.pages[0].mediabox.width) == wide


def test_a_paper_that_is_none_is_refused(grey):
    with pytest.raises(ValueError, match="a4 or letter would do"):
        job_card(at_joint(see("grey"), "J1"), paper="a0")


def test_the_code_to_scan_is_there_only_with_an_address(grey):
    with_code = text_of("grey", "J1", base="http://192.168.1.20:8140")

    assert "Its page: notes, photos" in with_code
    assert "Its page" not in text_of("grey", "J1")


def test_what_a_person_typed_is_printed_as_typed(db):
    add("odd", "#machine *x*", TEXT.replace("hood to case", "hood $1$ a#to _case_"))

    text = text_of("odd", "J1")
    assert "#machine *x*" in text
    assert "Hood $1$ a#to _case_" in text


def test_every_joint_of_the_demo_has_a_card(tractor):
    seen = see("tractor")

    for key in seen.book.joints:
        told = card_of(at_joint(seen, key), seen.now.today)
        assert told.name and told.printed
