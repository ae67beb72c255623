from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOLT, OLD_BOLT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fasteners._amounts import Area, Force, Length, Stress, above_nothing
from shimstock.trade.sums.fasteners._grades import GradeText
from shimstock.trade.sums.fasteners._lines import Pull, area_once, pitch_line, thread_lines
from shimstock.trade.sums.fasteners._threads import ThreadText

STEEL = {"in": 30e6, "mm": 205_000.0}  # modulus in psi and MPa


@dataclass(frozen=True)
class Turn:
    """How far the nut turns, in deg, and how much the bolt stretches, in its thread's unit."""

    turn: float
    stretch: float


@a_sum(
    example="--thread '3/4-10 UNC' --grip '5 in' --grade 'SAE J429 5' --share 0.85",
    cautions=(BOLT, OLD_BOLT),
)
def turn_of_nut(
    *,
    thread: ThreadText,
    grip: Length,
    grade: GradeText | None = None,
    share: Annotated[float, Of("", above=0, most=1, known=(0.3, 0.9))] = 0.75,
    area: Area | None = None,
    proof: Stress | None = None,
    preload: Force | None = None,
    modulus: Stress | None = None,
) -> Worked[Turn]:
    """Turn of a nut from snug that stretches the bolt to a pull, and the stretch itself.

    Only the bolt's own stretch counts. Parts, gasket and paint between them give way too, so that
    a nut turned by this angle pulls less; stretch measured with a micrometer does not mislead so.
    The whole grip is taken at the stress area: a plain shank is thicker, stretches less and is
    pulled too hard, by up to 40 per cent where all of the grip is plain. Type its area then.

    thread: the thread, such as 3/4-10 UNC.
    grip: length that stretches, from under the head to the nut, with its unit.
    grade: grade of SAE J429 or class of ISO 898-1.
    share: share of the proof load to pull to, no unit.
    area: stress area, where a table's own is to be used, with its unit.
    proof: proof stress, where no grade is known, with its unit.
    preload: pull that is wanted, with its unit.
    modulus: modulus of elasticity, with its unit; 30e6 psi or 205 GPa where nothing is typed.
    Raises NotPossible where neither grade, proof nor preload is given.
    Source: T. H. Wentzell, Machine Design, example 6.2: δ = F·L/(A·E), one turn moves one pitch.

    >>> from shimstock.trade.sums.fasteners._amounts import parse_length
    >>> from shimstock.trade.sums.fasteners._grades import parse_grade
    >>> from shimstock.trade.sums.fasteners._threads import parse_thread
    >>> got = turn_of_nut(thread=parse_thread("3/4-10"), grip=parse_length("5 in"),
    ...     grade=parse_grade("SAE J429 5"), share=0.85)
    >>> round(got.value.turn, 2)
    43.35
    """
    w, units = Working(), thread.units
    thread_lines(w, thread)
    pull = Pull(thread, grade, share, area, proof, preload).lines(w)
    a = area_once(w, thread, area)
    length = w.given("L", above_nothing("grip", grip, thread.unit), thread.unit, meaning="grip")
    e = STEEL[thread.unit] if modulus is None else above_nothing("modulus", modulus, units.pressure)
    w.given("E", e, units.pressure, meaning="modulus of elasticity")
    stretch = w.step("δ", "F·L/(A·E)", pull * length / (a * e), thread.unit,
                     meaning="stretch of the bolt", answer="stretch")  # fmt: skip
    pitch = pitch_line(w, thread)
    turn = w.step("θ", "360·δ/P", 360 * stretch / pitch, "deg", meaning="from snug", answer="turn")
    return Worked(Turn(turn, stretch), w)
