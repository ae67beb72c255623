from pathlib import Path

from shimstock.faces.cli.commands_page import helps, page
from shimstock.faces.cli.program import MADE

PAGE = Path(__file__).parents[3] / "docs/commands.md"


def test_the_page_of_commands_is_up_to_date():
    assert PAGE.read_text(encoding="utf-8") == page(), (
        "write it anew: python -m shimstock.faces.cli.commands_page > docs/commands.md"
    )


def test_every_command_is_on_the_page():
    written = PAGE.read_text(encoding="utf-8")

    assert [path for path in MADE if f"\n## shimstock {path}\n" not in written] == []


def test_every_command_of_the_program_was_made_with_an_example_and_keys():
    assert {path for path, _ in helps()} == {f"shimstock {path}" for path in MADE}
    assert [made.path for made in MADE.values() if not (made.example and made.keys)] == []


def test_the_page_fits_80_columns_of_help():
    inside = page().split("```")[1::2]

    assert [line for block in inside for line in block.splitlines() if len(line) > 80] == []
