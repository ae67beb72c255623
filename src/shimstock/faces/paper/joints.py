"""What was opened and closed again: each joint with its dates, and how far the leak check is."""

from dataclasses import dataclass
from datetime import date

from shimstock.faces.paper.kept import Kept, day_of
from shimstock.faces.paper.tree import joint_label
from shimstock.faces.paper.wording import Under, day, under
from shimstock.trade.machine.book import Joint
from shimstock.trade.machine.words import OPEN_WORDS, JointWord, Seals
from shimstock.trade.reach.dry import chalk_dry

CLOSING = (JointWord.SEALED, JointWord.TORQUED, JointWord.LEAK_CHECKED)
UNTOUCHED = (JointWord.UNDISTURBED, JointWord.TO_BE_OPENED)


@dataclass(frozen=True)
class JointRow:
    """One joint that was opened, on one line."""

    label: str
    name: str
    seals: str
    on_paint: bool
    shape: str
    word: str
    opened: str
    sealed: str
    torqued: str
    leak_checked: str


@dataclass(frozen=True)
class JointsTold:
    """The joints that were opened, those that were not, and those that stand open."""

    opened: tuple[JointRow, ...]
    undisturbed: tuple[Under, ...]
    undisturbed_count: int
    still_open: tuple[str, ...]
    leaking: tuple[str, ...]
    on_paint: int
    on_paint_checked: int
    on_paint_chalked: int


def joints_told(kept: Kept) -> JointsTold:
    """Every joint of the book, in one of the lists."""
    now, joints = kept.now, kept.book.joints
    words = {key: now.joint(key).word for key in joints}
    paint = [now.joint(key) for key in kept.book.on_paint]
    undisturbed = [key for key in joints if words[key] in UNTOUCHED]
    leaking = [key for key in joints if words[key] in (JointWord.WEEPING, JointWord.LEAKING)]
    return JointsTold(
        opened=tuple(_row(kept, key) for key in joints if words[key] not in UNTOUCHED),
        undisturbed=under((_group(kept, key), _called(kept, [key])[0]) for key in undisturbed),
        undisturbed_count=len(undisturbed),
        still_open=_called(kept, [key for key in joints if now.joint(key).is_open]),
        leaking=_called(kept, leaking),
        on_paint=len(paint),
        on_paint_checked=sum(joint.word is JointWord.LEAK_CHECKED for joint in paint),
        on_paint_chalked=sum(chalk_dry(joint) for joint in paint),
    )


def _called(kept: Kept, keys: list[str]) -> tuple[str, ...]:
    return tuple(f"{kept.book.joints[key].name} ({joint_label(kept.book, key)})" for key in keys)


def _group(kept: Kept, key: str) -> str:
    """The group of the part that a joint moves."""
    return kept.book.parts[kept.book.joints[key].between[0]].group


def _row(kept: Kept, key: str) -> JointRow:
    joint, state = kept.book.joints[key], kept.now.joint(key)
    days = _days(kept, key)
    return JointRow(
        label=joint_label(kept.book, key),
        name=joint.name,
        seals=_seals(joint),
        on_paint=joint.on_paint,
        shape=state.word.name,
        word=state.word.value,
        opened=day(days.get(JointWord.OPEN)),
        sealed=day(state.sealed_on or days.get(JointWord.SEALED)),
        torqued=day(days.get(JointWord.TORQUED)),
        leak_checked=day(state.leak_checked_on or days.get(JointWord.LEAK_CHECKED)),
    )


def _seals(joint: Joint) -> str:
    return ", ".join(word.value for word in joint.seals if word is not Seals.NOTHING)


def _days(kept: Kept, key: str) -> dict[JointWord, date]:
    """When the joint last came into each state, by the diary."""
    days: dict[JointWord, date] = {}
    row = kept.joint_rows.get(key, "")
    for entry in kept.diary:
        word = entry.after.get(row, {}).get("word")
        if word is None:
            continue
        state = JointWord(word)
        for later in _not_yet(state):
            days.pop(later, None)
        if entry.undoes_id is None:
            days[state] = day_of(entry.at)
    state_now = kept.now.joint(key)
    if state_now.since is not None:
        days.setdefault(state_now.word, state_now.since)
    return days


def _not_yet(state: JointWord) -> tuple[JointWord, ...]:
    """What a joint in this state cannot have behind it any more."""
    if state in UNTOUCHED:
        return (JointWord.OPEN, *CLOSING)
    if state in OPEN_WORDS:
        return CLOSING
    return CLOSING[CLOSING.index(state) + 1 :] if state in CLOSING else CLOSING[-1:]
