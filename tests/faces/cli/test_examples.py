import json
import re
from pathlib import Path

import pytest

from shimstock.faces.cli.demo import NEXT
from shimstock.faces.cli.program import MADE

EXAMPLES = pytest.mark.parametrize("made", MADE.values(), ids=lambda made: made.path)
# These need a program of their own: one ends only when it is stopped, the others copy a database
# that no transaction of a test holds.
ALONE = {"serve": "test_serve.py", "archive": "test_archive.py", "restore": "test_archive.py"}
HERE = [made for made in MADE.values() if made.path not in ALONE]
RUN = pytest.mark.parametrize("made", HERE, ids=lambda made: made.path)


def test_what_is_left_out_here_is_tried_elsewhere():
    folder = Path(__file__).parent
    for path, file in ALONE.items():
        assert f'"{path}"' in (folder / file).read_text(), path


def line_of(made):
    """The example; where it names an entry, the same one in this database."""
    from shimstock.workshop.models import DiaryEntry

    first = DiaryEntry.objects.earliest("pk").pk
    return re.sub(r"undo (\d+)", lambda m: f"undo {first - 1 + int(m[1])}", made.example)


@RUN
def test_each_example_works_on_the_demo_shed(made, in_demo, run):
    ran = run(line_of(made))

    assert (ran.code, ran.err) == (0, "")
    assert ran.out.strip()


@RUN
def test_json_has_the_keys_that_the_help_names_and_nothing_else_is_printed(made, in_demo, run):
    ran = run(f"{line_of(made)} --json")

    assert ran.code == 0
    assert json.loads(ran.out).keys() == made.keys.keys()


@RUN
def test_output_is_plain_and_fits_80_columns_down_a_pipe(made, in_demo, run):
    ran = run(line_of(made))

    assert "\x1b" not in ran.out
    if made.path != "book schema":  # for an editor, not for a person
        assert [line for line in ran.out.splitlines() if len(line) > 80] == []
        assert [line for line in ran.out.splitlines() if line != line.rstrip()] == []


@EXAMPLES
def test_each_example_is_in_its_own_help(made, run):
    ran = run(f"shimstock {made.path} --help")

    assert ran.code == 0
    assert " ".join(made.example.split()) in " ".join(ran.out.split())


@pytest.mark.parametrize("line", NEXT)
def test_what_the_demo_says_to_type_next_works(line, in_demo, run):
    ran = run(line)

    assert (ran.code, ran.err) == (0, "")


def test_the_demo_says_six_things_to_type_next():
    assert len(NEXT) == 6


@pytest.mark.parametrize(("sheet", "wide"), [("letter", 612), ("a4", 595)])
def test_the_record_is_printed_on_the_sheet_that_is_asked_for(sheet, wide, in_demo, run):
    from pypdf import PdfReader

    assert run(f"shimstock record lowmere --paper {sheet} --out sheet.pdf").code == 0
    assert round(PdfReader("sheet.pdf").pages[0].mediabox.width) == wide


def test_a_sheet_that_is_none_is_refused(in_demo, run):
    ran = run("shimstock record lowmere --paper a0")

    assert ran.code == 2
    assert "letter" in ran.err
