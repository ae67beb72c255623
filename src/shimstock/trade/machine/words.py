"""The trade's fixed words: what a verdict, a part, a joint, a seal and a stage may be called."""

from enum import StrEnum


class Verdict(StrEnum):
    """What a reading means when it is held against the book's figure."""

    GOOD = "good"
    SERVICEABLE = "serviceable"
    BORDERLINE = "borderline"
    WORN_OUT = "worn out"
    NOT_MEASURED = "not measured"


TOO_MUCH = "too much in all"
"""Said of the play of a whole chain that is proven over its limit: no part of it is called worn."""

TOLD_APART = "each of its places is told from the others"
"""Said with it once holding or reading has parted every link: each then stands for itself."""


class Stage(StrEnum):
    """When a reading was taken: before the work, or after it."""

    FOUND = "as found"
    FINISHED = "as finished"


class PartWord(StrEnum):
    """The states a part can be in, in their usual order."""

    FITTED = "fitted"
    OFF = "off"
    BAGGED = "bagged"
    WASHED = "washed"
    MEASURED = "measured"
    PASSED = "passed"
    PASSED_WITH_NOTE = "passed with a note"
    REJECTED = "rejected"
    TO_BE_MADE = "to be made"
    WANTED = "wanted"
    QUOTED = "quoted"
    ON_ORDER = "on order"
    IN_THE_POST = "in the post"
    IN_HAND = "in hand"
    AT_MACHINIST = "out at the machinist"
    AT_BENCH = "out at the bench"
    BACK_AND_CHECKED = "back and checked"
    DRY_FITTED = "dry-fitted"
    BUILT_IN = "built in"
    PAINTED = "painted"
    LENT = "lent"
    PARKED = "parked"
    SCRAPPED = "scrapped"


class JointWord(StrEnum):
    """The states a joint can be in, in their usual order."""

    UNDISTURBED = "undisturbed"
    TO_BE_OPENED = "to be opened"
    OPEN = "open"
    FACES_CLEAN = "faces clean"
    GASKET_READY = "gasket ready"
    DRY_FITTED = "dry-fitted"
    SEALED = "sealed"
    TORQUED = "torqued"
    LEAK_CHECKED = "leak-checked"
    WEEPING = "weeping"
    LEAKING = "leaking"
    PARKED_OPEN = "parked open"


GONE_WORDS = frozenset(
    {
        PartWord.REJECTED,
        PartWord.TO_BE_MADE,
        PartWord.WANTED,
        PartWord.QUOTED,
        PartWord.ON_ORDER,
        PartWord.IN_THE_POST,
        PartWord.LENT,
        PartWord.SCRAPPED,
    }
)
"""States in which a piece is not in the shed, or not fit to go in."""

OPEN_WORDS = frozenset(
    {
        JointWord.OPEN,
        JointWord.FACES_CLEAN,
        JointWord.GASKET_READY,
        JointWord.DRY_FITTED,
        JointWord.PARKED_OPEN,
    }
)
"""Joint states in which the two faces are not yet sealed together."""

MAY_BE_CLOSED_OVER = frozenset(
    {
        PartWord.FITTED,
        PartWord.PASSED,
        PartWord.PASSED_WITH_NOTE,
        PartWord.BUILT_IN,
        PartWord.PAINTED,
    }
)
"""Part states over which a joint may be sealed: never touched, passed, or built in."""


def stands(word: JointWord | PartWord) -> str:
    """A state as the end of a sentence.

    >>> stands(JointWord.OPEN), stands(JointWord.FACES_CLEAN)
    ('is open', 'has its faces clean')
    """
    said = {
        JointWord.FACES_CLEAN: "has its faces clean",
        JointWord.GASKET_READY: "has its gasket ready",
    }
    return said.get(word, f"is {word}") if isinstance(word, JointWord) else f"is {word}"


class Seals(StrEnum):
    """What a joint keeps in or out."""

    OIL = "oil"
    OIL_UNDER_PRESSURE = "oil under pressure"
    GREASE = "grease"
    FUEL = "fuel"
    FUEL_UNDER_PRESSURE = "fuel under pressure"
    COOLANT = "coolant"
    COMBUSTION = "combustion"
    EXHAUST = "exhaust"
    AIR = "inlet air"
    DUST = "dust and damp"
    NOTHING = "nothing"
