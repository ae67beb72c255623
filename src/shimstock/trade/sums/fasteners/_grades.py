"""What a bolt of each grade bears: proof, yield and tensile stress, with their steps in size."""

import re
from dataclasses import dataclass
from typing import Annotated, NamedTuple

from shimstock.trade.numbers.conversion import convert
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.declare import Read

EXAMPLES = ("SAE J429 grade 5", "ISO 898-1 8.8")
STANDARD = {"SAE J429": ("in", "ksi"), "ISO 898-1": ("mm", "MPa")}
SMALLEST = {"SAE J429": 0.25, "ISO 898-1": 1.6}


class Step(NamedTuple):
    """Stresses up to a diameter, in the standard's own units."""

    upto: float
    proof: float
    yields: float
    tensile: float


GRADES: dict[tuple[str, str], tuple[Step, ...]] = {
    ("SAE J429", "1"): (Step(1.5, 33, 36, 60),),
    ("SAE J429", "2"): (Step(0.75, 55, 57, 74), Step(1.5, 33, 36, 60)),
    ("SAE J429", "5"): (Step(1, 85, 92, 120), Step(1.5, 74, 81, 105)),
    ("SAE J429", "5.2"): (Step(1, 85, 92, 120),),
    ("SAE J429", "8"): (Step(1.5, 120, 130, 150),),
    ("SAE J429", "8.2"): (Step(1, 120, 130, 150),),
    ("ISO 898-1", "4.6"): (Step(39, 225, 240, 400),),
    ("ISO 898-1", "4.8"): (Step(39, 310, 340, 420),),
    ("ISO 898-1", "5.8"): (Step(39, 380, 420, 520),),
    ("ISO 898-1", "8.8"): (Step(16, 580, 640, 800), Step(39, 600, 660, 830)),
    ("ISO 898-1", "9.8"): (Step(16, 650, 720, 900),),
    ("ISO 898-1", "10.9"): (Step(39, 830, 940, 1040),),
    ("ISO 898-1", "12.9"): (Step(39, 970, 1100, 1220),),
}


@dataclass(frozen=True)
class Strength:
    """Stresses in the pressure unit that was asked for, and the sizes they hold for."""

    proof: float
    yields: float
    tensile: float
    sizes: str
    beyond: str


@dataclass(frozen=True)
class Grade:
    """A grade of a standard."""

    standard: str
    number: str

    @property
    def name(self) -> str:
        """As it is written in full."""
        between = " grade " if self.standard == "SAE J429" else " "
        return f"{self.standard}{between}{self.number}"

    def at(self, d: float, unit: str) -> Strength:
        """What a bolt of diameter `d` in `unit` (in or mm) bears, in psi or MPa."""
        length, pressure = STANDARD[self.standard]
        own = convert(d, unit, length)
        steps = GRADES[self.standard, self.number]
        step = next((each for each in steps if own <= each.upto), steps[-1])
        low = max([SMALLEST[self.standard], *(s.upto for s in steps if s.upto < step.upto)])
        over = "over " if step is not steps[0] else ""
        to = "psi" if unit == "in" else "MPa"
        proof, yields, tensile = (convert(each, pressure, to) for each in step[1:])
        held = SMALLEST[self.standard] <= own <= steps[-1].upto
        beyond = f"{self.name} is not given for {own:.4g} {length}: this extrapolates."
        sizes = f"{over}{low:g} to {step.upto:g} {length}"
        return Strength(proof, yields, tensile, sizes, "" if held else beyond)


def parse_grade(text: str) -> Grade:
    """Reads a grade of SAE J429 or a class of ISO 898-1. Raises NotUnderstood.

    >>> parse_grade("SAE J429 5").name, parse_grade("class 10.9").name
    ('SAE J429 grade 5', 'ISO 898-1 10.9')
    """
    plain = " ".join(re.sub(r"[,;:()]|\.(?!\d)", " ", text.lower()).split())
    said = [name for name, mark in (("SAE J429", "j ?429|sae"), ("ISO 898-1", "iso|898"))
            if re.search(mark, plain)]  # fmt: skip
    words = r"\b(sae|iso|property|class|grade|gr|bolt|screw)\b|j ?429|898(-1)?"
    bare = re.sub(words, " ", plain).strip(" -")
    found = [key for key in GRADES if key[1] == bare and said in ([], [key[0]])]
    if len(found) != 1:
        known = ", ".join(number for standard, number in GRADES if said in ([], [standard]))
        raise NotUnderstood(text, f"is no grade known here (known are {known})", EXAMPLES)
    return Grade(*found[0])


GradeText = Annotated[Grade, Read(parse_grade, "SAE J429 grade 5", found="grade")]
