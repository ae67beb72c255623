"""The record as a reader has it: read back from the PDF."""

import socket

import pytest

from faces.paper.club_book import MONDAY, NAME, NOTES, PRINTED
from faces.paper.conftest import plain
from shimstock.faces.paper.record import record
from shimstock.trade.measure.judge import Judged

pytestmark = pytest.mark.django_db


def test_each_line_of_each_doubtful_working_stands_on_the_paper(worked_on, read):
    text = read(worked_on)
    rows = worked_on.verdicts.filter(current=True, figure__in=["taper", "end-float", "lift"])

    assert {row.verdict for row in rows} >= {"worn out", "borderline", "good"}
    for row in rows:
        working = Judged.from_data(row.data).working
        assert len(working.shown()) > 3
        for line in (*working.shown(), working.source):
            assert plain(line) in text, line


def test_found_and_finished_stand_on_one_line(worked_on, read):
    text = read(worked_on)

    assert "liner taper, 1 F2 put right" in text
    assert "0.000 to 0.001 in at most 0.0050 in 0.0060 in ▲ worn out 0.0001 in ● good" in text
    assert "valve lift F4 worked out on page" in text


def test_a_setting_is_out_of_setting_and_not_worn(worked_on, do, read):
    do.take_reading(figure="idle", typed="705")

    assert "idle speed F5 worked out on page" in read(worked_on)
    assert "580 to 620 rpm – 705 rpm ▲ out of setting" in read(worked_on)


def test_a_figure_with_its_page_is_not_called_a_stand_in(worked_on, read):
    text = read(worked_on)

    assert "4 of the 5 figures and settings used here are stand-in figures" in text
    assert "5.7592 in ◐ serviceable 5.7701 in" in text.replace("◇ borderline", "◐ serviceable")
    assert "page 41" in text


def test_the_paint_joints_are_counted(worked_on, read):
    assert "1 of 3 paint joints leak-checked or chalk-dry." in read(worked_on)


def test_a_joint_shows_when_it_was_closed(worked_on, read):
    from shimstock.faces.paper.wording import day
    from shimstock.workshop.now import machine_now

    today = day(machine_now(worked_on).joint("cover-joint").sealed_on)

    assert f"side cover to case (paint) oil leak-checked {' '.join([today] * 4)}" in sans(
        read(worked_on)
    )


def sans(text: str) -> str:
    """Text without the letters in the signs."""
    return text.replace("✓ ", "")


def test_open_joints_and_those_never_seen_behind_are_named(worked_on, read):
    text = read(worked_on)

    assert "Still open head to case (J1)." in text
    assert "pump to case (J3); pipe to head (J4)" in text


def test_parts_their_makers_and_the_sets(worked_on, read):
    text = read(worked_on)

    assert "Pump, left P5" in text
    assert "Halden *Works*" in text
    assert "not proved a pair: Halden *Works* and Norra proof: bench sheet" in text


def test_cautions_stay_until_they_are_answered(worked_on, do, read):
    before = read(worked_on)
    assert "Asbestos in old gaskets Wet it first. No air gun." in before
    assert "Are the gaskets proved? not answered" in before
    assert "No roll bar" in before
    assert "Battery acid No sparks." in before

    do.answer_point(point="linings", answer="tested", at=MONDAY)

    assert "Are the gaskets proved? tested (Béla, 2 Mar 2026)" in read(worked_on)


def test_what_the_cautions_stand_behind(worked_on, read):
    assert "the maker’s book, the codes that hold where you are, and the people licensed" in read(
        worked_on
    )


def test_what_a_person_typed_is_printed_as_typed(untouched, printed):
    first = plain(printed(untouched).pages[0].extract_text())

    assert NAME in first
    assert NOTES in first
    assert "A-1" in first


def test_a_word_without_end_is_broken_and_whole(untouched, do, read):
    word = "W" * 300
    do.move_piece(part="pipe", to="off", note=word)

    assert word in read(untouched).replace(" ", "")


def test_a_machine_of_which_nothing_is_known(bare, read):
    text = read(bare)

    for said in (
        "Nothing has been measured yet: there is no figure to show.",
        "No bore or shaft has been read at several depths.",
        "No joint has been opened.",
        "No part has been touched.",
        "The book names no parts that must stay together.",
        "The book names no cautions.",
        "No verdict is worn out, borderline or put right",
        "The book of this machine names no gates.",
    ):
        assert said in text


def test_every_page_says_which_of_how_many_and_of_which_machine(worked_on, printed):
    pages = printed(worked_on).pages

    assert len(pages) > 4
    for number, page in enumerate(pages, start=1):
        text = plain(page.extract_text())
        assert f"Page {number} of {len(pages)}" in text
        assert "Printed 3 May 2026" in text
        assert NAME in text


def test_a_long_table_has_its_head_on_each_page(untouched, do, read):
    for number in range(45):
        do.move_piece(part="pipe", to="off", note=f"note {number}")

    assert read(untouched).count("What was done") >= 2


def test_a_long_diary_says_how_much_is_left_out(untouched, do, read):
    for number in range(60):
        do.move_piece(part="pipe", to="off", note=f"note {number}")

    text = read(untouched)
    assert "11 entries between are left out here" in text
    assert "note 59" in text
    assert "note 15." not in text


@pytest.mark.parametrize(("paper", "size"), [("a4", (595, 842)), ("letter", (612, 792))])
def test_the_sheet(worked_on, printed, paper, size):
    for page in printed(worked_on, paper=paper).pages:
        assert (round(page.mediabox.width), round(page.mediabox.height)) == size


def test_a_sheet_that_is_not_known_is_refused(bare, tmp_path):
    with pytest.raises(ValueError, match="paper 'a0' is not known here; a4 or letter would do"):
        record(bare, tmp_path / "record.pdf", paper="a0")
    assert not (tmp_path / "record.pdf").exists()


def test_every_typeface_is_inside(worked_on, printed):
    faces = {}
    for page in printed(worked_on).pages:
        for font in page["/Resources"].get("/Font", {}).values():
            inner = font["/DescendantFonts"][0].get_object()
            faces[str(font["/BaseFont"])] = inner["/FontDescriptor"]

    assert any("Libertinus" in name for name in faces)
    assert any("DejaVu" in name for name in faces)
    for name, descriptor in faces.items():
        assert {"/FontFile2", "/FontFile3"} & set(descriptor), f"{name} is not inside"


def test_the_same_machine_and_day_give_the_same_file(worked_on, tmp_path):
    first = record(worked_on, tmp_path / "1.pdf", today=PRINTED).read_bytes()

    assert record(worked_on, tmp_path / "2.pdf", today=PRINTED).read_bytes() == first


def test_the_day_on_it_is_the_day_asked_for(worked_on, printed):
    made = printed(worked_on).metadata.creation_date

    assert made.date() == PRINTED


def test_it_does_not_matter_where_the_program_stands(bare, tmp_path, monkeypatch):
    gone = tmp_path / "gone"
    gone.mkdir()
    monkeypatch.chdir(gone)
    gone.rmdir()

    assert record(bare, tmp_path / "record.pdf", today=PRINTED).exists()


def test_nothing_is_fetched(worked_on, tmp_path, monkeypatch):
    def refused(*_):
        raise AssertionError("the record asked for the network")

    monkeypatch.setattr(socket, "socket", refused)

    assert record(worked_on, tmp_path / "record.pdf", today=PRINTED).exists()


def test_a_stop_halfway_leaves_the_last_record_and_nothing_beside_it(bare, tmp_path, monkeypatch):
    out = record(bare, tmp_path / "record.pdf", today=PRINTED)
    before = out.read_bytes()

    def stopped(*_):
        raise KeyboardInterrupt

    monkeypatch.setattr("os.replace", stopped)
    with pytest.raises(KeyboardInterrupt):
        record(bare, out, today=PRINTED, paper="letter")

    assert out.read_bytes() == before
    assert list(tmp_path.iterdir()) == [out]
