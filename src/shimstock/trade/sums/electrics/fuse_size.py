from collections.abc import Sequence
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum

SIZES = (1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 80, 100)


@a_sum(
    example="--currents '5.8, 5.8, 0.8' --wire '25 A'",
    cautions=("A blown fuse is replaced by its own size; a larger one lets the wire burn.",),
)
def fuse_size(
    *,
    currents: Annotated[Sequence[float], Of("A", above=0)],
    margin: Annotated[float, Of("%", least=0, most=200)] = 25,
    wire: Annotated[float, Of("A", above=0)] | None = None,
) -> Worked[float]:
    """Next fuse above the current of what it feeds, that still guards the wire.

    currents: of everything on the fuse that runs at once, in A.
    margin: by how much the fuse is to lie above the current, in %.
    wire: current that the thinnest wire behind the fuse may carry, in A.
    Raises NotPossible where nothing is fed, no size is large enough, or the wire is too thin.
    Source: common practice, no source: a quarter above the current, sizes of 1 to 100 A.

    >>> fuse_size(currents=[5.8, 5.8, 0.8]).value
    20.0
    """
    if not currents:
        raise NotPossible("currents", "must hold one current at least", "type them as: 5.8, 0.8")
    w = Working()
    names = [f"I_{i}" for i in range(1, len(currents) + 1)]
    for name, one in zip(names, currents, strict=True):
        w.given(name, one, "A", meaning="on this fuse")
    total = w.step("I", " + ".join(names), sum(currents), "A", meaning="in all", answer="current")
    w.given("x", margin, "%", meaning="margin")
    least = w.step("I_m", "I·(1 + x/100)", total * (1 + margin / 100), "A", meaning="least size")
    # A current of exactly a size takes that size, whatever binary fractions make of it.
    size = next((float(size) for size in SIZES if size >= least * (1 - 1e-9)), None)
    if size is None:
        rule = "needs more than the largest fuse here, 100 A"
        raise NotPossible(f"{total:g} A", rule, "part the circuit, or ask an auto electrician")
    if wire is not None and wire < size:
        rule = f"must not be below the fuse, {size:g} A"
        raise NotPossible(f"wire {wire:g} A", rule, "lay a thicker wire, or part the circuit")
    w.note(f"The next size up from {least:.4g} A.")
    w.step("I_f", f"{size:g}", size, "A", meaning="fuse", answer="fuse")
    return Worked(size, w)
