"""Writes docs/checks.md: `python tests/published/page.py > docs/checks.md`."""

import sys
from itertools import groupby
from pathlib import Path

if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).parent.parent))

from published.check import Check, Misprint
from published.every import all_checks, all_misprints, computed
from shimstock.trade.numbers.digits import written
from shimstock.trade.sums.find import find_sum

HEAD = """\
# Checks against print

Each row is a value that a source prints, beside what the sum comes to. A computed value must lie
within half of the last digit printed, or within the bound that is named with its reason. `make
test` works every row out again.

How it is known: *read* is a number read in a stored copy of the source; *from memory* was not read
again; *worked out* is a published formula worked out with other numbers, so the number itself is
not in print and only guards against change; *library* is a general-purpose reference library's.
"""


def page() -> str:
    """The whole page."""
    checks = all_checks()
    counts = [
        f"{len(checks)} checks of {len({check.sum for check in checks})} sums: "
        + ", ".join(
            f"{sum(check.known == known for check in checks)} {known}"
            for known in sorted({check.known for check in checks})
        )
        + "."
    ]
    return "\n".join([HEAD, *counts, "", *_tables(checks), _misprints()])


def _tables(checks: list[Check]) -> list[str]:
    out = []
    for family, rows in groupby(checks, lambda check: find_sum(check.sum).family):
        out.append(f"## {family}\n")
        out.append("| sum | given | result | printed | computed | bound | source | known |")
        out.append("| --- | --- | --- | --- | --- | --- | --- | --- |")
        out += [_row(check) for check in rows]
        out.append("")
    return out


def _row(check: Check) -> str:
    value = computed(check.sum, check.given, check.answer, check.unit)
    shown = value if isinstance(value, str) else written(value, 7)
    bound = f"{check.within}: {check.why}" if check.within else "half of the last digit"
    if isinstance(value, str):
        bound = "the same words"
    cells = (
        check.sum, _given(check), check.answer, f"{check.printed} {check.unit}".strip(),
        str(shown), bound, check.source, check.known,
    )  # fmt: skip
    return _line(cells)


def _misprints() -> str:
    rows = [
        _line((
            each.sum, _given(each), each.answer, f"{each.wrong} {each.unit}".strip(),
            f"{each.right} {each.unit}".strip(), each.because, each.source,
        ))
        for each in all_misprints()
    ]  # fmt: skip
    head = [
        "## Wrong in print\n",
        "Numbers that stand in print and that the sums must not come to.\n",
        "| sum | given | result | printed | right | what is wrong | source |",
        "| --- | --- | --- | --- | --- | --- | --- |",
    ]
    return "\n".join([*head, *rows, ""])


def _given(each: Check | Misprint) -> str:
    return "; ".join(f"{name} {text}" for name, text in each.given.items())


def _line(cells: tuple[str, ...]) -> str:
    return "| " + " | ".join(cell.replace("|", "\\|") for cell in cells) + " |"


if __name__ == "__main__":
    print(page(), end="")
