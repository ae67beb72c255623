"""How much metals grow with heat, by name with its source, or as typed."""

from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import parse
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Read

SPREAD = 0.08
"""Share by which handbooks differ for one and the same name."""
SPREAD_SAID = "Handbooks differ by up to 8 % for the same name; a figure of its own can be typed."
MOST = 100  # um/m.K: no metal grows so much

DOOLEY = "Dooley, Applied Science for Metal Workers"
CALLISTER = "Callister, Materials Science and Engineering, appendix B"
TABLE = "a handbook's table of expansion"
MEMORY = "common handbook value, from memory"


@dataclass(frozen=True)
class Metal:
    """A metal: its name, how much it grows in um/m.K, who says so, and how sure the name is."""

    name: str
    growth: float
    source: str
    spread: float = SPREAD


METALS: dict[str, Metal] = {
    metal.name: metal
    for metal in (
        Metal("grey iron", 10.8, TABLE),
        Metal("ductile iron", 11.2, CALLISTER),
        Metal("wrought iron", 11.7, DOOLEY),
        Metal("steel", 11.7, MEMORY),
        Metal("soft steel", 10.9, DOOLEY),
        Metal("hardened steel", 12.4, DOOLEY),
        Metal("brass", 18.9, DOOLEY),
        Metal("cartridge brass", 19.9, CALLISTER),
        Metal("free-cutting brass", 20.5, CALLISTER),
        Metal("bronze", 18.0, TABLE),
        Metal("bearing bronze", 18.0, CALLISTER),
        Metal("copper", 16.0, DOOLEY),
        Metal("aluminium", 24.0, TABLE),
        Metal("aluminium 6061", 23.6, CALLISTER),
        Metal("cast aluminium", 21.5, f"{CALLISTER}, alloy 356"),
    )
}
ALSO = {
    "cast iron": "grey iron", "gray iron": "grey iron", "mild steel": "soft steel",
    "nodular iron": "ductile iron", "aluminum": "aluminium", "free cutting brass":
    "free-cutting brass", "cast aluminum": "cast aluminium",
}  # fmt: skip


def parse_metal(text: str) -> Metal:
    """Reads the name of a metal, or its growth with heat such as 11.7 um/m.K.

    Raises NotUnderstood.

    >>> parse_metal("cast iron").growth, parse_metal("6.5 uin/in.F").growth
    (10.8, 11.7)
    """
    plain = " ".join(text.lower().split())
    plain = ALSO.get(plain, plain)
    if plain in METALS:
        return METALS[plain]
    would = (*METALS, "12 um/m.K")
    if not plain[:1].isdigit() and not plain.startswith("."):
        raise NotUnderstood(text, "is no metal of this table", would)
    growth = parse(text, unit="um/m.K", what="growth with heat").value
    if not 0 < growth <= MOST:
        raise NotUnderstood(text, f"lies beyond 0 to {MOST} um/m.K", would)
    return Metal("as typed", growth, "as typed", 0.0)


MetalText = Annotated[Metal, Read(parse_metal, "grey iron")]


def metal_line(w: Working, symbol: str, metal: Metal, part: str) -> float:
    """Keeps what a part is of in the working, and hands its growth back, in um/m.K."""
    said = f"{part}, as typed" if not metal.spread else f"{part}: {metal.name}, {metal.source}"
    return w.given(symbol, metal.growth, "um/m.K", meaning=said)
