import re

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.units import Teeth

EXAMPLE = "20/50, 25/75"
MESH = re.compile(r"(\d{1,4})\s*[/:]\s*(\d{1,4})", re.ASCII)


def read_meshes(typed: str) -> list[tuple[Teeth, Teeth]]:
    """Meshes in order, each as teeth of the driving gear / teeth of the driven gear.

    Raises NotUnderstood.

    >>> read_meshes("20/50, 25/75")
    [(20, 50), (25, 75)]
    """
    found = [MESH.fullmatch(part.strip()) for part in re.split(r"[,;·x]", typed)]
    if not all(found):
        wrong = "is no row of meshes, driving teeth / driven teeth"
        raise NotUnderstood(typed, wrong, (EXAMPLE,))
    return [(Teeth(int(each[1])), Teeth(int(each[2]))) for each in found if each]
