from pathlib import Path

from shimstock.faces.cli.sums_page import page
from shimstock.trade.sums.find import families

PAGE = Path(__file__).parents[3] / "docs/sums.md"


def test_the_page_of_sums_is_up_to_date():
    assert PAGE.read_text(encoding="utf-8") == page(), "write it anew: make docs"


def test_every_sum_is_on_the_page_with_its_source():
    written = PAGE.read_text(encoding="utf-8")

    for name in (name for names in families().values() for name in names):
        section = written.partition(f"\n### {name}\n")[2].partition("\n### ")[0]
        assert "\nSource: " in section, name
        assert f"shimstock sum {name}" in section
