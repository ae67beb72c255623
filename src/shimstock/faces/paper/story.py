"""Who did what, when: the diary on paper, and the machine in one paragraph."""

from collections.abc import Sequence
from dataclasses import dataclass

from shimstock.faces.paper import figures
from shimstock.faces.paper.figures import FigureGroup, FigureRow
from shimstock.faces.paper.joints import JointsTold
from shimstock.faces.paper.kept import Kept, day_of
from shimstock.faces.paper.parts import PartsTold
from shimstock.faces.paper.wording import NONE, Under, day, sentence, some
from shimstock.trade.machine.words import TOO_MUCH, Verdict
from shimstock.trade.reach.findings import findings
from shimstock.workshop.wording import listed

FIRST, LAST = 10, 40


@dataclass(frozen=True)
class DiaryLine:
    """One act, on one line."""

    on: str
    who: str
    says: str


@dataclass(frozen=True)
class DiaryTold:
    """The diary, or its beginning and its end where it is long."""

    first: tuple[DiaryLine, ...]
    left_out: int
    last: tuple[DiaryLine, ...]


def diary_told(kept: Kept) -> DiaryTold:
    """The diary in the order in which it was written."""
    lines = [DiaryLine(day(day_of(row.at)), row.who, row.says) for row in kept.diary]
    if len(lines) <= FIRST + LAST:
        return DiaryTold(tuple(lines), 0, ())
    left_out = len(lines) - FIRST - LAST
    return DiaryTold(tuple(lines[:FIRST]), left_out, tuple(lines[-LAST:]))


def workers(kept: Kept) -> tuple[str, ...]:
    """Everybody who wrote in the diary, in the order in which they first did."""
    return tuple(dict.fromkeys(row.who for row in kept.diary))


def worked_from(kept: Kept) -> tuple[str, str]:
    """The first and the last day in the diary; empty where it is."""
    days = [day_of(row.at) for row in kept.diary]
    return (day(min(days)), day(max(days))) if days else ("", "")


def summary(kept: Kept, groups: Sequence[FigureGroup], joints: JointsTold, parts: PartsTold) -> str:
    """The machine in one paragraph of plain words."""
    state = [_opened(kept, joints), *_measured(groups), _leaks(joints), _missing(parts)]
    said = [_made_to(kept), *state]
    return " ".join(sentence(text) for text in said if text)


def _made_to(kept: Kept) -> str:
    book = kept.book
    stand_in = sum(figure.stand_in for figure in book.measures.values())
    known = f"{kept.machine.name} is judged here by the book \u201c{book.title}\u201d"
    if not stand_in:
        return known
    whose = "all" if stand_in == len(book.measures) else f"{stand_in} of"
    return f"{known}; {whose} its {len(book.measures)} figures are stand-in figures"


def _opened(kept: Kept, joints: JointsTold) -> str:
    total = len(kept.book.joints)
    if not joints.opened:
        return f"None of its {some(total, 'joint')} has been opened"
    still = len(joints.still_open)
    now = f"{some(still, 'joint')} {'stands' if still == 1 else 'stand'} open today"
    return f"{len(joints.opened)} of its {some(total, 'joint')} were opened; {now}"


def _measured(groups: Sequence[FigureGroup]) -> list[str]:
    counts = figures.counts(groups)
    read = sum(counts.values())
    if not read:
        return ["Nothing has been measured yet"]
    told = [f"{count} {word}" for word, count in counts.items() if count]
    said = [f"{some(read, 'measurement')} {_have(read)} been judged: {listed(told)}"]
    if right := figures.put_right(groups):
        said.append(f"{some(right, 'figure')} found worn or doubtful {_are(right)} put right")
    return said


def _have(count: int) -> str:
    return "has" if count == 1 else "have"


def _are(count: int) -> str:
    return "is" if count == 1 else "are"


def _leaks(joints: JointsTold) -> str:
    seen = joints.on_paint_checked + joints.on_paint_chalked
    checked = f"{seen} of {some(joints.on_paint, 'paint joint')} leak-checked or chalk-dry"
    if not joints.leaking:
        return checked
    return f"{checked}; {some(len(joints.leaking), 'joint')} found wet: {listed(joints.leaking)}"


def _missing(parts: PartsTold) -> str:
    count = sum(len(each.items) for each in parts.not_in_place)
    if not count:
        return ""
    return f"{some(count, 'piece')} {_are(count)} not in the machine today"


def against(
    kept: Kept, groups: Sequence[FigureGroup], joints: JointsTold, parts: PartsTold
) -> tuple[Under, ...]:
    """What stands against the machine today, the worst first; what does not apply is left out."""
    rows = [row for group in groups for row in group.rows]
    words = (*figures.BAD, figures.OUT_OF_SETTING, TOO_MUCH)
    bad = {word: [row for row in rows if row.latest.word == word] for word in words}
    lists = (
        ("Worn out", [_held(row) for row in bad[Verdict.WORN_OUT]]),
        ("Out of setting", [_held(row) for row in bad[figures.OUT_OF_SETTING]]),
        ("Too much in all: its chain tells the place", [_held(row) for row in bad[TOO_MUCH]]),
        ("Borderline: to be measured again", [_held(row) for row in bad[Verdict.BORDERLINE]]),
        ("Weeping or leaking", list(joints.leaking)),
        ("Joints open", list(joints.still_open)),
        *((f"Parts {each.title}", list(each.items)) for each in parts.not_ready),
        ("Not as it should be", [finding.what for finding in findings(kept.now)]),
    )
    return tuple(Under(title, tuple(items)) for title, items in lists if items)


def _held(row: FigureRow) -> str:
    allowed = f" ({row.limit})" if row.limit != NONE else ""
    accepted = "; accepted" if row.accepted else ""
    return f"{row.name}: {row.latest.value}{allowed}{accepted}"
