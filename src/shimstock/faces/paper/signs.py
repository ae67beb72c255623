"""Signs for states: a shape, a colour and a letter each, so that none of them is needed alone.

The colours keep apart for colour-blind eyes (after M. Okabe and K. Ito, Color Universal Design);
shape and letter keep apart on grey paper.
"""

from dataclasses import dataclass

from shimstock.trade.machine.words import JointWord, PartWord, Verdict

INK, PAPER = "#1a1a1a", "#ffffff"
ORANGE, SKY, GREEN, YELLOW = "#e69f00", "#56b4e9", "#00785a", "#f0e442"
BLUE, RED, PURPLE, GREY = "#0072b2", "#c44e00", "#cc79a7", "#d4d4d4"


@dataclass(frozen=True)
class Sign:
    """How a state is drawn, and its word."""

    word: str
    shape: str
    fill: str
    ink: str
    letter: str


def _joint(word: JointWord, shape: str, fill: str, ink: str, letter: str) -> Sign:
    return Sign(word.value, shape, fill, ink, letter)


JOINT_SIGNS = {
    word: _joint(word, shape, fill, ink, letter)
    for word, shape, fill, ink, letter in (
        (JointWord.UNDISTURBED, "circle", PAPER, INK, "U"),
        (JointWord.TO_BE_OPENED, "circle", PAPER, INK, "N"),
        (JointWord.OPEN, "square", ORANGE, INK, "O"),
        (JointWord.PARKED_OPEN, "square", ORANGE, INK, "P"),
        (JointWord.FACES_CLEAN, "square", ORANGE, INK, "C"),
        (JointWord.GASKET_READY, "square", ORANGE, INK, "G"),
        (JointWord.DRY_FITTED, "square", ORANGE, INK, "D"),
        (JointWord.SEALED, "diamond", BLUE, PAPER, "S"),
        (JointWord.TORQUED, "diamond", BLUE, PAPER, "T"),
        (JointWord.LEAK_CHECKED, "circle", GREEN, PAPER, "✓"),
        (JointWord.WEEPING, "triangle", RED, PAPER, "W"),
        (JointWord.LEAKING, "triangle", RED, PAPER, "L"),
    )
}
"""One sign for each state of a joint; the shape tells the stage, the letter the exact state."""

_FITTED = Sign("fitted, never disturbed", "box", PAPER, INK, "F")
_OFF = Sign("off, in work", "box", YELLOW, INK, "O")
_READY = Sign("passed or in hand", "box", SKY, INK, "R")
_BUILT_IN = Sign("built in", "box", GREEN, PAPER, "B")
_AWAY = Sign("away: machinist, bench, lent", "box", PURPLE, INK, "A")
_WANTED = Sign("wanted, ordered, to be made", "box", ORANGE, INK, "W")
_REJECTED = Sign("rejected or scrapped", "box", RED, PAPER, "X")
_PARKED = Sign("parked", "box", GREY, INK, "P")

PART_SIGNS = {
    PartWord.FITTED: _FITTED,
    PartWord.OFF: _OFF,
    PartWord.BAGGED: _OFF,
    PartWord.WASHED: _OFF,
    PartWord.MEASURED: _OFF,
    PartWord.DRY_FITTED: _OFF,
    PartWord.PASSED: _READY,
    PartWord.PASSED_WITH_NOTE: _READY,
    PartWord.IN_HAND: _READY,
    PartWord.BACK_AND_CHECKED: _READY,
    PartWord.BUILT_IN: _BUILT_IN,
    PartWord.PAINTED: _BUILT_IN,
    PartWord.AT_MACHINIST: _AWAY,
    PartWord.AT_BENCH: _AWAY,
    PartWord.LENT: _AWAY,
    PartWord.TO_BE_MADE: _WANTED,
    PartWord.WANTED: _WANTED,
    PartWord.QUOTED: _WANTED,
    PartWord.ON_ORDER: _WANTED,
    PartWord.IN_THE_POST: _WANTED,
    PartWord.REJECTED: _REJECTED,
    PartWord.SCRAPPED: _REJECTED,
    PartWord.PARKED: _PARKED,
}
"""A sign for each state of a part; states that mean the same to the eye share one."""

VERDICT_SIGNS = {
    Verdict.GOOD: "●",
    Verdict.SERVICEABLE: "◐",
    Verdict.BORDERLINE: "◇",
    Verdict.WORN_OUT: "▲",
    Verdict.NOT_MEASURED: "○",
}
"""A shape beside each verdict word, so that the word is not told by colour."""
