from pathlib import Path

from published.page import page

PAGE = Path(__file__).parents[2] / "docs/checks.md"


def test_the_page_of_checks_is_up_to_date():
    assert PAGE.read_text(encoding="utf-8") == page(), "write it anew: make docs"
