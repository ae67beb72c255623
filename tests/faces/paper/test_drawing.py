"""The drawing of parts and joints."""

import re
from collections import Counter
from datetime import date
from xml.etree import ElementTree

import pytest

from faces.paper.club_book import TEXT
from shimstock.faces.paper.drawing import drawing, legend, sign_alone
from shimstock.faces.paper.signs import JOINT_SIGNS, PART_SIGNS
from shimstock.faces.paper.tree import panels
from shimstock.trade.machine.book import Book, Part
from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.sides import on_their_sides
from shimstock.trade.machine.starters import starter_names
from shimstock.trade.machine.state import JointNow, MachineNow, PieceNow
from shimstock.trade.machine.words import JointWord, PartWord

DAY = date(2026, 5, 3)
SHEET = {"width": 500.0, "height": 620.0}
BOOKS = {
    "club": TEXT,
    **{name: f"book: b\ntitle: B\nextends: {name}\n" for name in starter_names()},
}


def now_of(text: str, joints=None, pieces=None) -> MachineNow:
    return MachineNow(read_book(text), DAY, joints or {}, pieces or {})


def drawn(pages, what: str) -> Counter:
    return Counter(
        element.attrib[what]
        for page in pages
        for element in ElementTree.fromstring(page).iter()
        if what in element.attrib
    )


@pytest.mark.parametrize("text", BOOKS.values(), ids=BOOKS)
def test_every_part_and_joint_is_drawn_once(text):
    """A part whose pieces sit on their own sides is drawn once a piece."""
    now = now_of(text)
    pages = drawing(now, **SHEET)

    sides = {key: len(on_their_sides(now.book, key)) for key in now.book.parts}
    assert drawn(pages, "data-part") == sides
    assert drawn(pages, "data-joint") == dict.fromkeys(now.book.joints, 1)


@pytest.mark.parametrize("text", BOOKS.values(), ids=BOOKS)
def test_a_whole_machine_takes_at_most_two_pages(text):
    assert len(drawing(now_of(text), **SHEET)) <= 2


@pytest.mark.parametrize("text", BOOKS.values(), ids=BOOKS)
def test_nothing_is_drawn_outside_the_page(text):
    for page in drawing(now_of(text), **SHEET):
        sheet = ElementTree.fromstring(page)
        assert float(sheet.attrib["height"]) <= SHEET["height"]
        for element in sheet.iter():
            assert 0 <= float(element.attrib.get("x", 0)) < SHEET["width"]
            assert 0 <= float(element.attrib.get("y", 0)) <= SHEET["height"]


def test_a_joint_hangs_its_part_and_a_second_one_has_a_row_of_its_own():
    rows = {row.joint: row for panel in panels(read_book(TEXT)) for row in panel.rows if row.joint}

    assert rows["cover-joint"].part == "cover"
    assert rows["cover-tap"].part is None
    assert rows["pipe-joint"].part is None, "the pipe sits on the pump, not on the head"
    assert rows["pump-joint"].on == "case", "which stands in another panel"


def rows_of(book):
    """Each row by part and piece: its joint, and the part and piece it hangs under."""
    found, path = {}, []
    for panel in panels(book):
        for row in panel.rows:
            path[len(row.rails) :] = [(row.part, row.piece)]
            under = path[len(row.rails) - 1] if row.rails else None
            found[row.joint or (row.part, row.piece)] = (row.part, row.piece, under)
    return found


def test_left_and_right_hang_each_on_its_own_side():
    """From memory: each axle shaft runs in the housing of its own side, each brake in its own."""
    rows = rows_of(read_book(BOOKS["two-cylinder-diesel"]))

    for side in ("left", "right"):
        shaft = ("axle-shaft", side)
        assert rows[f"{side}-wheel"] == (*shaft, (f"{side}-axle-housing", ""))
        assert rows[f"{side}-axle-seal"] == (None, "", shaft)
        for part in ("brake-shoes", "brake-drum"):
            assert rows[part, side][2] == (f"{side}-brake-housing", "")


def test_a_joint_whose_name_says_no_side_hangs_where_it_meets_its_part():
    book = read_book("""\
book: axle
title: Axle
parts:
  case: {name: Case}
  left-tube: {name: Left tube, sits-on: case}
  right-tube: {name: Right tube, sits-on: case}
  shaft: {name: Shaft, sits-on: left-tube, each: [left, right]}
joints:
  near: {name: One, between: [shaft, left-tube], seals: nothing, open: 5, close: 5}
  far: {name: Other, between: [shaft, right-tube], seals: nothing, open: 5, close: 5}
""")
    rows = rows_of(book)

    assert rows["near"] == ("shaft", "left", ("left-tube", ""))
    assert rows["far"] == ("shaft", "right", ("right-tube", ""))


def test_what_sits_on_a_piece_of_one_side_hangs_there_too():
    """From memory: a crawler's sprocket is on the bull gear's shaft, in the case of its side."""
    rows = rows_of(read_book(BOOKS["petrol-crawler"]))

    for side in ("left", "right"):
        assert rows["bull-gear", side][2] == (f"{side}-drive-case", "")
        assert rows[f"{side}-sprocket"] == ("sprocket", side, ("bull-gear", side))
        assert rows["drive-seals", side][2] == ("sprocket", side)


def test_each_state_has_a_shape_and_a_letter_of_its_own():
    joints = [(sign.shape, sign.letter) for sign in JOINT_SIGNS.values()]
    parts = {sign.letter for sign in PART_SIGNS.values()}

    assert set(JOINT_SIGNS) == set(JointWord)
    assert set(PART_SIGNS) == set(PartWord)
    assert len(set(joints)) == len(joints)
    assert len(parts) == len(set(PART_SIGNS.values()))


def test_open_sealed_dry_and_wet_differ_in_shape_on_grey_paper():
    stages = (JointWord.OPEN, JointWord.SEALED, JointWord.LEAK_CHECKED, JointWord.LEAKING)

    assert len({JOINT_SIGNS[word].shape for word in stages}) == len(stages)


def lightness(colour: str) -> float:
    """Relative luminance. Source: WCAG 2.1, definition of relative luminance."""
    channels = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (
        c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


@pytest.mark.parametrize(
    "sign", dict.fromkeys((*JOINT_SIGNS.values(), *PART_SIGNS.values())), ids=str
)
def test_a_letter_can_be_read_on_its_sign(sign):
    # WCAG 2.1, success criterion 1.4.3: contrast of at least 4.5 to 1
    light, dark = sorted((lightness(sign.fill), lightness(sign.ink)), reverse=True)

    assert (light + 0.05) / (dark + 0.05) >= 4.5


def test_the_states_stand_in_words_too():
    now = now_of(
        TEXT,
        {"head-joint": JointNow(JointWord.LEAKING)},
        {("pump", "left"): PieceNow(PartWord.REJECTED)},
    )
    page = "".join(drawing(now, **SHEET))
    words = re.sub(r"<[^>]+>", "", page)

    assert "Pump, left rejected, right fitted (on Main case)" in words
    assert "Pipe &lt;thin&gt; &amp; long" in words
    assert "1 leaking" in legend(now, width=500)
    assert "1 rejected or scrapped" in legend(now, width=500)


@pytest.mark.parametrize("odd", ["<&>\"'", "a\x0bb", "W" * 200, ""])
def test_a_name_with_odd_characters_is_still_a_drawing(odd):
    book = Book(book="b", title="B", parts={"case": Part(name=odd)})

    for page in drawing(MachineNow(book, DAY), **SHEET):
        ElementTree.fromstring(page)


def test_a_sign_alone_is_a_picture_by_itself():
    for sign in (*JOINT_SIGNS.values(), *PART_SIGNS.values()):
        assert sign.letter in "".join(ElementTree.fromstring(sign_alone(sign)).itertext())
