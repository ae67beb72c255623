from collections.abc import Sequence
from math import prod
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.units import Teeth
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Read, a_sum
from shimstock.trade.sums.gears._meshes import EXAMPLE, read_meshes


@a_sum(example="--meshes '20/50, 25/75, 26/65'")
def train_ratio(
    *, meshes: Annotated[Sequence[tuple[Teeth, Teeth]], Read(read_meshes, EXAMPLE, found="meshes")]
) -> Worked[float]:
    """Turns of the last shaft for one turn of the first; above 1 the train speeds up.

    meshes: each mesh as teeth of the driving gear / teeth of the driven gear, first to last.
    Raises NotPossible without a mesh or with a gear without teeth.
    Source: geometry; each mesh passes on as many teeth as it receives.

    >>> got = train_ratio(meshes=[(Teeth(20), Teeth(50)), (Teeth(25), Teeth(75))])
    >>> round(got.value, 4)
    0.1333
    """
    if not meshes or any(count <= 0 for mesh in meshes for count in mesh):
        shown = ", ".join(f"{driving}/{driven}" for driving, driven in meshes) or "no mesh"
        raise NotPossible(shown, "is no train", "each mesh needs two gears with teeth")
    w = Working()
    for i, (driving, driven) in enumerate(meshes, 1):
        w.given(f"a_{i}", driving, "teeth", meaning=f"mesh {i}, driving gear")
        w.given(f"b_{i}", driven, "teeth", meaning=f"mesh {i}, driven gear")
    ratio = prod(driving / driven for driving, driven in meshes)
    shown = "·".join(f"(a_{i}/b_{i})" for i in range(1, len(meshes) + 1))
    w.step("i", shown, ratio, "", meaning="turns of the last for one of the first", answer="ratio")
    way = "the same way as" if len(meshes) % 2 == 0 else "against"
    w.note(f"With outside teeth only, the last shaft turns {way} the first.")
    w.tell("turns", f"{way} the first, with outside teeth only")
    return Worked(ratio, w)
