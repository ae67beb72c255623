import io

import pytest
from rich.console import Console

from shimstock.faces.cli import shown
from shimstock.faces.cli.shown import Caution, Heading, Table, show


@pytest.fixture
def terminal(monkeypatch):
    paper = io.StringIO()
    console = Console(file=paper, force_terminal=True, width=80, color_system="standard")
    monkeypatch.setattr("rich.console.Console", lambda **_: console)
    return paper


def test_colour_stands_beside_the_word_and_only_on_a_terminal(terminal, capsys):
    table = Table(("figure", "as found"), [("taper", "0.0057 in: worn out")])

    show([table])
    assert "\x1b[1;31m0.0057 in: worn out" in terminal.getvalue()


def test_a_long_line_goes_on_a_little_further_in(capsys):
    show([f"  {'word ' * 30}"])

    first, second, *_ = capsys.readouterr().out.splitlines()
    assert first.startswith("  word")
    assert second.startswith("    word")


def test_a_caution_is_shown_whole_and_brackets_are_no_markup(capsys):
    show([Heading("Open [J36]"), Caution("Springs", ("Let them down.", "Never [ever] cut."))])

    out = capsys.readouterr().out
    assert out == "\nOpen [J36]\nCAUTION: Springs\n  Let them down.\n  Never [ever] cut.\n"


@pytest.mark.parametrize(
    ("cell", "style"),
    [("worn out", "bold red"), ("5.7 in: good", "green"), ("goodness", ""), ("", "")],
)
def test_a_cell_takes_the_colour_of_its_word(cell, style):
    assert shown.style_of(cell) == style
