"""Labels as a phone and a person see them: read back from the printed page."""

from __future__ import annotations

import io

import pytest
import typst
from PIL import Image
from pypdf import PdfReader

from faces.paper.conftest import add
from faces.paper.read_square import read_square
from shimstock.faces.paper.labels import SHEETS, Wanted, labels_of, labels_pdf
from shimstock.faces.paper.square import address_of, base_typed
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop.labels import Labelled
from shimstock.workshop.looking import see
from shimstock.workshop.refused import Refused
from workshop.shed_book import TEXT

pytestmark = pytest.mark.django_db
BASE = "http://192.168.1.20:8140"
DPI = 300
MM = DPI / 25.4
JOINTS = Wanted(joints=("cover-joint", "sump-joint"), parts=("pump",))


@pytest.fixture
def grey(db):
    add("grey", "The grey one", TEXT)
    return see("grey")


@pytest.fixture
def printed(monkeypatch):
    """The pages as pictures, by the same typesetter that makes the PDF."""
    compile_ = typst.compile

    def as_pictures(*args, **more):
        return compile_(*args, **more | {"format": "png", "ppi": DPI})

    def pages(*args, **more) -> list[Image.Image]:
        with monkeypatch.context() as patch:
            patch.setattr(typst, "compile", as_pictures)
            made = labels_pdf(*args, **more)
        return [Image.open(io.BytesIO(each)) for each in (made if type(made) is list else [made])]

    return pages


def cell(page: Image.Image, sheet: str, number: int) -> Image.Image:
    """The square's part of one label. number: from 0, along the rows."""
    on = SHEETS[sheet]
    row, column = divmod(number, on.across)
    left = column * on.label_width + (on.width - on.across * on.label_width) / 2
    top = row * on.label_height + (on.height - on.down * on.label_height) / 2
    inset = 0 if sheet == "roll" else 2
    left, right = left + inset, left + inset + on.square + inset / 5
    box = (left, top + 1.1, right, top + on.label_height - 1.1)
    return page.crop(tuple(round(edge * MM) for edge in box))


@pytest.mark.parametrize("sheet", SHEETS)
def test_a_phone_reads_from_each_label_the_address_of_its_thing(sheet, grey, printed):
    labels = labels_of(grey, JOINTS)
    pages = printed(grey, labels, base=BASE, sheet=sheet)
    each = SHEETS[sheet].each
    places = [divmod(number, each) for number in range(len(labels))]
    squares = [read_square(cell(pages[page], sheet, place)) for page, place in places]

    assert [square.text for square in squares] == [
        f"{BASE}/l/grey.j.cover-joint/",
        f"{BASE}/l/grey.j.sump-joint/",
        f"{BASE}/l/grey.p.pump/",
    ]
    for square in squares:
        assert square.level in "MQH"
        assert square.module / MM >= 0.4
        assert square.clear >= 3.8 * square.module, "the standard wants four modules of white"


def test_the_first_labels_of_a_part_used_sheet_stay_empty(grey, printed):
    (page,) = printed(grey, labels_of(grey, JOINTS), base=BASE, start=23)[:1]

    assert read_square(cell(page, "a4", 22)).text.endswith("grey.j.cover-joint/")
    assert read_square(cell(page, "a4", 23)).text.endswith("grey.j.sump-joint/")
    assert all(
        cell(page, "a4", place).convert("L").getextrema() == (255, 255) for place in range(22)
    )


def test_what_does_not_fit_on_a_part_used_sheet_goes_on_the_next(grey):
    pdf = PdfReader(io.BytesIO(labels_pdf(grey, labels_of(grey, JOINTS), base=BASE, start=23)))

    assert len(pdf.pages) == 2
    assert "pump" in pdf.pages[1].extract_text().lower()


@pytest.mark.parametrize(("sheet", "size"), [("a4", (210, 297)), ("letter", (215.9, 279.4)),
                                             ("roll", (50, 30))])  # fmt: skip
def test_a_page_is_as_large_as_its_sheet(sheet, size, grey):
    pdf = PdfReader(io.BytesIO(labels_pdf(grey, labels_of(grey, JOINTS), base=BASE, sheet=sheet)))
    box = pdf.pages[0].mediabox

    assert (float(box.width) / 72 * 25.4, float(box.height) / 72 * 25.4) == pytest.approx(
        size, 1e-3
    )
    assert len(pdf.pages) == (3 if sheet == "roll" else 1)


def test_a_label_says_machine_mark_name_bag_and_shelf(grey):
    from shimstock.workshop import acts

    acts.put_in_bag(
        machine="grey", number="12 a", about="cover-joint", shelf="B2", who="Ann", holds="bolts"
    )
    seen = see("grey")
    wanted = Wanted(bags=True, shelves=True, joints=("cover-joint",))
    pdf = PdfReader(io.BytesIO(labels_pdf(seen, labels_of(seen, wanted), base=BASE)))
    text = " ".join(pdf.pages[0].extract_text().split())

    assert text.count(grey.row.name.split()[0]) >= 3
    for said in ("Bag 12 a", "Shelf B2", "Bag 12 a, shelf B2", "Bags 12 a"):
        assert said in text, text
    assert [label.labelled.kind for label in labels_of(seen, wanted)] == ["bag", "shelf", "joint"]


def test_open_joints_are_those_that_stand_open_and_each_has_one_label(grey):
    from shimstock.workshop import acts

    acts.open_joint(machine="grey", joint="sump-joint", who="Ann")
    seen = see("grey")
    found = labels_of(seen, Wanted(open_joints=True, joints=("sump-joint",)))

    assert [label.labelled.which for label in found] == ["sump-joint"]


def test_signs_in_a_bags_number_are_quoted_in_its_address():
    address = address_of(BASE, Labelled("grey", "bag", "12/a ü#?"))

    assert address == f"{BASE}/l/grey.b.12%2Fa%20%C3%BC%23%3F/"


@pytest.mark.parametrize("start", [0, 25])
def test_a_start_beyond_the_sheet_is_refused(start, grey):
    with pytest.raises(NotUnderstood, match="24"):
        labels_pdf(grey, labels_of(grey, JOINTS), base=BASE, start=start)


def test_nothing_chosen_is_refused(grey):
    with pytest.raises(Refused, match="No label is chosen"):
        labels_pdf(grey, (), base=BASE)


def test_an_address_whose_squares_would_be_too_small_is_refused(grey):
    with pytest.raises(NotUnderstood, match="too long"):
        labels_pdf(grey, labels_of(grey, JOINTS), base=f"http://{'shed.' * 60}example")


@pytest.mark.parametrize(
    ("typed", "base"),
    [
        ("192.168.1.20:8140", "http://192.168.1.20:8140"),
        (" https://shed.example/ ", "https://shed.example"),
        ("http://[fd00::2]:8140", "http://[fd00::2]:8140"),
    ],
)
def test_an_address_may_be_typed_short(typed, base):
    assert base_typed(typed) == base


@pytest.mark.parametrize(
    "typed", ["", "http://", "http://a b", "ftp://shed", "http://shed:x", "http://shed/m/grey",
              "javascript:alert(1)", "http://shed?x"]
)  # fmt: skip
def test_what_is_no_address_is_refused(typed):
    with pytest.raises(NotUnderstood, match="no address"):
        base_typed(typed)


def test_words_that_are_too_long_are_cut_and_markup_is_printed_as_typed(grey):
    from dataclasses import replace

    (label, *_) = labels_of(grey, JOINTS)
    long = replace(label, name="#strong[x] " + "long " * 60, mark="$1$", where="*w* " * 40)
    pdf = PdfReader(io.BytesIO(labels_pdf(grey, [long], base=BASE, sheet="roll")))
    text = pdf.pages[0].extract_text()

    assert len(pdf.pages) == 1
    assert "#strong[x]" in text.replace("\u200b", "") and "$1$" in text and "…" in text
