from collections.abc import Sequence
from math import prod

from shimstock.trade.numbers.units import Teeth
from shimstock.trade.numbers.working import Worked, Working


def train_ratio(*, meshes: Sequence[tuple[Teeth, Teeth]]) -> Worked[float]:
    """Turns of the last shaft for one turn of the first; above 1 the train speeds up.

    meshes: each mesh as (teeth of the driving gear, teeth of the driven gear), first to last.
    Raises ValueError without a mesh or with a gear without teeth.
    Source: geometry; each mesh passes on as many teeth as it receives.

    >>> got = train_ratio(meshes=[(Teeth(20), Teeth(50)), (Teeth(25), Teeth(75))])
    >>> round(got.value, 4)
    0.1333
    """
    if not meshes or any(count <= 0 for mesh in meshes for count in mesh):
        raise ValueError(f"each mesh needs two gears with teeth; given {list(meshes)}")
    w = Working(source="geometry: each mesh passes on as many teeth as it receives")
    for i, (driving, driven) in enumerate(meshes, 1):
        w.given(f"a_{i}", driving, "teeth", meaning=f"mesh {i}, driving gear")
        w.given(f"b_{i}", driven, "teeth", meaning=f"mesh {i}, driven gear")
    ratio = prod(driving / driven for driving, driven in meshes)
    shown = "·".join(f"(a_{i}/b_{i})" for i in range(1, len(meshes) + 1))
    w.step("i", shown, ratio, "", meaning="turns of the last shaft for one of the first")
    way = "the same way as" if len(meshes) % 2 == 0 else "against"
    w.note(f"With outside teeth only, the last shaft turns {way} the first.")
    return Worked(ratio, w)
