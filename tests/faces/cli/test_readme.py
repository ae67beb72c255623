"""What the README shows of commands is what a fresh demo shed answers, typed in its order."""

import re
from pathlib import Path

README = (Path(__file__).parents[3] / "README.md").read_text(encoding="utf-8")
SHOWN = re.compile(r"(?ms)^```\n(.*?)^```")
OPENING = re.compile(r"undo entry (\d+)")
UNDO, ENTRY = re.compile(r"undo (\d+)"), re.compile(r"\[entry\s+(\d+)\]")


def blocks() -> list[list[tuple[str, str]]]:
    """Each block of commands: a line without its `$` and comment, and what is shown below it."""
    found = []
    for block in SHOWN.findall(README):
        parts = re.split(r"(?m)^\$ " if "$ " in block else r"(?m)^", block)
        typed = [part.partition("\n") for part in parts if part.startswith("shimstock ")]
        found.append([(line.split("  #")[0].strip(), shown.strip()) for line, _, shown in typed])
    return [block for block in found if block]


def flat(text: str) -> str:
    return " ".join(text.split())


def test_each_command_works_in_order_and_answers_as_shown(in_demo, run):
    from shimstock.workshop.models import DiaryEntry

    before = DiaryEntry.objects.earliest("pk").pk - 1  # where this database began to number
    written = 0
    commands = [each for block in blocks() for each in block]
    assert len(commands) >= 20
    for line, shown in commands:
        if undone := UNDO.search(line):
            assert int(undone[1]) == written - before, f"{line}: the entry is {written - before}"
            line = f"shimstock undo {written}"
        ran = run(line)
        refused = shown.startswith("Wrong:")
        assert ran.code == (1 if refused else 0), f"{line}\n{ran.err}"
        shown = OPENING.sub(lambda entry: f"undo entry {before + int(entry[1])}", shown)
        for piece in flat(shown).split("…"):
            assert piece.strip() in flat(ran.err if refused else ran.out), line
        written = max([written, *map(int, ENTRY.findall(ran.out))])


def test_the_slip_that_is_shown_is_answered_so(in_demo, run):
    """Its readings are shortened in the README: the five others are those of the reading before."""
    typed = re.search(r"(?m)^Typed:    (shimstock read .*?) …\n(.*?)```", README, re.DOTALL)
    before = re.search(r"(?m)^\$ (shimstock read \S+ \S+ 1) \S+ (.*)$", README)
    assert typed and before

    ran = run(f"{typed[1]} {before[2]}")

    assert ran.code == 2
    assert flat(typed[2]) in flat(ran.err)


def test_the_counts_in_the_text_are_those_of_the_demo(in_demo, run):
    said = re.search(r"(\d+ of \d+) leak-checked or chalk-dry", README)
    assert said
    assert f"{said[1]} leak-checked or chalk-dry" in flat(
        run("shimstock gate brackwater paint").out
    )
