"""A figure of the book seen, looked at and corrected from the terminal; the book written out."""

import json
from pathlib import Path


def told(run, line):
    ran = run(f"{line} --json")
    assert ran.code == 0, ran.err
    return json.loads(ran.out)


def test_a_figure_is_seen_in_words(in_demo, run):
    ran = run("shimstock book figure brackwater F001")

    assert "New: 5.7500 .. 5.7512 in" in ran.out
    assert "Page: 41" in ran.out


def test_looking_writes_nothing(in_demo, run):
    line = "shimstock book figure brackwater F001 --limit 'max 5.7580 in'"

    looked = told(run, f"{line} --look")

    assert {(each["was"], each["then"]) for each in looked["would_change"]} & {
        ("serviceable", "worn out"), ("borderline", "worn out"), ("good", "worn out"),
    }  # fmt: skip
    assert looked["entry"] is None
    assert told(run, "shimstock book figure brackwater F001")["limit"] == "max 5.7600 in"


def test_a_corrected_figure_is_no_stand_in_and_can_be_undone(in_demo, run):
    done = told(run, "shimstock book figure brackwater F004 --page 43 --note 'second printing'")

    assert done["page"] == "43"
    assert "(second printing)" in done["entry"]["says"]
    run(f"shimstock undo {done['entry']['entry']}")
    assert told(run, "shimstock book figure brackwater F004")["page"] == ""


def test_what_no_book_can_say_is_refused(in_demo, run):
    ran = run("shimstock book figure brackwater F001 --limit 'about six'")

    assert ran.code == 2
    assert "max or min" in " ".join(ran.err.split())


def test_the_book_is_written_to_the_letter_and_over_nothing(in_demo, run):
    from shimstock.workshop.models import Machine

    ran = run("shimstock book export brackwater out.yaml")
    again = run("shimstock book export brackwater out.yaml")

    assert ran.code == 0
    assert Path("out.yaml").read_text() == Machine.objects.get(slug="brackwater").book_text
    assert again.code != 0


def test_a_slipped_digit_is_asked_about_and_kept_where_it_is_meant(in_demo, run):
    line = "shimstock book figure brackwater F001 --new '57.500 .. 57.512' --limit 'max 57.6'"

    for asked in (run(line), run(f"{line} --look")):
        assert asked.code == 2
        assert "5.7500 .. 5.7512 in, max 5.7600 in" in " ".join(asked.err.split())
        assert "--meant keeps it" in asked.err
    assert run(f"{line} --look --meant").code == 0
    assert told(run, "shimstock book figure brackwater F001")["new"] == "5.7500 .. 5.7512 in"


def test_a_book_far_from_its_starter_is_told_at_its_line(in_demo, run):
    text = "book: mine\ntitle: Mine\nextends: two-cylinder-diesel\nfigures:\n  liner-bore:\n"
    Path("mine.yaml").write_text(f"{text}    new: 57.500 .. 57.512 in\n    limit: max 57.6 in\n")

    checked = run("shimstock book check mine.yaml")

    assert checked.code == 0
    assert "mine.yaml:6: figures > liner-bore > new ('57.500 .. 57.512 in')" in " ".join(
        checked.out.split()
    )
    assert [each["line"] for each in told(run, "shimstock book check mine.yaml")["doubts"]] == [
        6,
        7,
    ]
