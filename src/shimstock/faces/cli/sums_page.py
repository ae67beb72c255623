"""Writes docs/sums.md from the sums' own words: `python -m` this module > the file."""

from collections.abc import Iterator

from shimstock.faces.cli.sum_lines import typed_as
from shimstock.trade.sums.declare import Sum
from shimstock.trade.sums.find import all_sums
from shimstock.trade.sums.said import example_of, help_of, metavar_of, said

HEAD = """\
# Sums

Every sum of the trade that `shimstock sum` does, family by family: what it takes, its formula, its
source, its cautions, and an example as it is typed. `shimstock sum NAME --help` says the same;
`shimstock sum NAME MACHINE JOINT` takes what the machine's book and readings hold.

Values are typed as a shed writes them: `3/8 in`, `2-1/2"`, `24 lbf.ft`, `63,5 mm`. LENGTH, FORCE,
PRESSURE and the like follow the unit that is typed: whoever types inches gets pounds, psi and the
working in inches. A number that says no unit is refused where a shed has two of them.
`--in UNITS` asks for other units in the result. A sum says when a value lies
outside what its source covers. The maker's book, the local codes and licensed practice go before
all of them. How each is checked against print stands in [checks.md](checks.md).
"""


def page() -> str:
    """The whole page."""
    every = all_sums()
    index = [
        f"- **{family}**: " + ", ".join(f"[{each.name}](#{each.name})" for each in sums)
        for family, sums in every.items()
    ]
    return "\n".join([HEAD, *index, "", *_families(every)])


def _families(every: dict[str, list[Sum]]) -> Iterator[str]:
    for family, sums in every.items():
        yield f"## The family {family}\n"
        for each in sums:
            yield _section(each)


def _section(sum_: Sum) -> str:
    done = example_of(sum_)
    about = "\n\n".join(each for each in (sum_.sentence, sum_.remarks) if each)
    takes = "\n".join(f"- `{one.option} {metavar_of(one)}`: {help_of(one)}" for one in sum_.inputs)
    formula = "\n".join(done.worked.working.steps)
    answers = "\n".join(
        f"{name.replace('_', ' ')}: {said(result)}" for name, result in done.results.items()
    )
    parts = [
        f"### {sum_.name}\n",
        about,
        f"\n{takes}\n",
        *([f"```\n{formula}\n```\n"] if formula else []),
        f"Source: {sum_.source}\n",
        *(f"Caution: {text}\n" for text in sum_.cautions),
        f"```\n{typed_as(sum_)}\n\n{answers}\n```\n",
    ]
    return "\n".join(parts)


if __name__ == "__main__":
    print(page(), end="")
