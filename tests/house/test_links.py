"""What the pages of the project point at is there."""

import re
from pathlib import Path

import pytest

HOUSE = Path(__file__).parents[2]
PAGES = sorted([*HOUSE.glob("*.md"), *HOUSE.glob("docs/**/*.md")])
LINK = re.compile(r"\]\(([^)#\s]+)")


def test_the_pages_are_found():
    assert {page.name for page in PAGES} >= {"README.md", "CONTRIBUTING.md", "book.md"}


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_every_link_leads_to_a_file_of_the_project(page):
    links = [link for link in LINK.findall(page.read_text(encoding="utf-8")) if "://" not in link]

    assert [link for link in links if not (page.parent / link).exists()] == []


def test_every_target_that_a_page_names_is_in_the_makefile():
    targets = set(re.findall(r"(?m)^([a-z]+):", (HOUSE / "Makefile").read_text()))
    named = {
        name
        for page in PAGES
        for name in re.findall(r"(?m)(?:^|`)make ([a-z]+)", page.read_text(encoding="utf-8"))
    }

    assert named >= {"demo", "test"}
    assert named - targets == set()
