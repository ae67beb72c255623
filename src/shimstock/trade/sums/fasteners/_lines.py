"""Lines that several sums about a bolt share: its thread, its area, and its pull."""

from dataclasses import dataclass

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.quantity import Quantity
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.fasteners._amounts import above_nothing
from shimstock.trade.sums.fasteners._areas import stress_area_of
from shimstock.trade.sums.fasteners._grades import Grade, Strength
from shimstock.trade.sums.fasteners._threads import Thread


def thread_lines(w: Working, thread: Thread) -> None:
    """Diameter and pitch of the thread, and what was taken for granted."""
    w.given("d", thread.d, thread.unit, meaning=f"diameter of {thread.name}")
    if thread.n is None:
        w.given("P", thread.pitch, "mm", meaning="pitch")
    else:
        w.given("n", thread.n, "tpi", meaning="threads an inch")
    if thread.remark:
        w.note(thread.remark)


def pitch_line(w: Working, thread: Thread) -> float:
    """The pitch under the symbol P, worked out where threads are counted."""
    if thread.n is not None:
        w.step("P", "1/n", thread.pitch, thread.unit, meaning="pitch")
    return thread.pitch


def area_lines(w: Working, thread: Thread, area: Quantity | None, *, answer: str = "") -> float:
    """Stress area of the thread, as typed or by the formula of its form."""
    if area is not None:
        typed = above_nothing("area", area, thread.units.area)
        return w.given("A", typed, thread.units.area, meaning="stress area, as typed")
    by = thread.form.stress
    shown = f"d − {by:.7g}·P" if thread.n is None else f"d − {by:.7g}/n"
    under = thread.d - by * thread.pitch
    w.step("d_s", shown, under, thread.unit, meaning=thread.form.source)
    found = stress_area_of(thread.d, thread.pitch, by)
    return w.step("A", "π/4·d_s²", found, thread.units.area, meaning="stress area", answer=answer)


def area_once(w: Working, thread: Thread, area: Quantity | None) -> float:
    """The stress area, with its lines where they do not stand there yet."""
    try:
        return w.value("A")
    except KeyError:
        return area_lines(w, thread, area)


def strength_of(w: Working, thread: Thread, grade: Grade) -> Strength:
    """What the grade bears at this size; a size that the standard leaves out is named."""
    strength = grade.at(thread.d, thread.unit)
    if strength.beyond:
        w.caution(strength.beyond)
    w.note(f"{grade.name} for {strength.sizes}.")
    return strength


@dataclass(frozen=True)
class Pull:
    """How hard a bolt is to pull: one of preload, proof stress or grade says it.

    share: of the proof load, where that is known.
    """

    thread: Thread
    grade: Grade | None = None
    share: float = 0.75
    area: Quantity | None = None
    proof: Quantity | None = None
    preload: Quantity | None = None

    def lines(self, w: Working) -> float:
        """The preload with the lines that lead to it. Raises NotPossible where nothing says it."""
        force = self.thread.units.force
        full = self._proof_load(w)
        if self.preload is not None:
            pull = above_nothing("preload", self.preload, force)
            w.given("F", pull, force, meaning="preload, as typed")
            if full is not None:
                share_of_proof(w, pull, full)
            return pull
        if full is None:
            would = "name the grade, or type proof or preload"
            raise NotPossible("the pull", "is said by nothing here", would)
        w.given("s", self.share, "", meaning="share of the proof load")
        return w.step("F", "s·F_p", self.share * full, force, meaning="preload", answer="preload")

    def _proof_load(self, w: Working) -> float | None:
        """Proof load of the bolt; None where neither proof stress nor grade is known."""
        units = self.thread.units
        if self.proof is None and self.grade is None:
            return None
        area = area_lines(w, self.thread, self.area)
        if self.proof is not None:
            if self.grade is not None:
                w.note(f"The proof stress that is typed goes before that of {self.grade.name}.")
            stress = above_nothing("proof", self.proof, units.pressure)
            w.given("S_p", stress, units.pressure, meaning="proof stress, as typed")
        elif self.grade is not None:
            stress = strength_of(w, self.thread, self.grade).proof
            w.given("S_p", stress, units.pressure, meaning=f"proof stress of {self.grade.name}")
        return w.step("F_p", "S_p·A", stress * area, units.force, meaning="proof load")


def share_of_proof(w: Working, pull: float, full: float) -> None:
    """How much of the proof load a pull is, with a caution above all of it."""
    w.step("s", "F/F_p", pull / full, "", meaning="share of the proof load", answer="share")
    if pull > full:
        w.caution("The pull is above the proof load: the bolt stretches for good. Do not use it.")
