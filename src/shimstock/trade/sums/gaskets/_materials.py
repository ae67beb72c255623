"""Gasket factor m and seating stress y in psi of common gaskets.

ASME Boiler and Pressure Vessel Code, section VIII division 1, appendix 2, table 2-5.1.
"""

from typing import Literal, NamedTuple

Material = Literal[
    "soft rubber",
    "hard rubber",
    "fabric in rubber",
    "vegetable fibre",
    "compressed sheet 1/8 in",
    "compressed sheet 1/16 in",
    "compressed sheet 1/32 in",
    "spiral wound steel",
    "flat aluminium",
    "flat copper",
    "flat iron",
]


class Gasket(NamedTuple):
    """Gasket factor, seating stress in psi, and what the material is."""

    m: float
    y: float
    words: str


GASKETS: dict[str, Gasket] = {
    "soft rubber": Gasket(0.5, 0, "elastomer below 75 Shore A"),
    "hard rubber": Gasket(1.0, 200, "elastomer of 75 Shore A or more"),
    "fabric in rubber": Gasket(1.25, 400, "elastomer with cotton fabric"),
    "vegetable fibre": Gasket(1.75, 1100, "vegetable fibre, the common gasket paper"),
    "compressed sheet 1/8 in": Gasket(2.0, 1600, "compressed fibre sheet 1/8 in thick"),
    "compressed sheet 1/16 in": Gasket(2.75, 3700, "compressed fibre sheet 1/16 in thick"),
    "compressed sheet 1/32 in": Gasket(3.5, 6500, "compressed fibre sheet 1/32 in thick"),
    "spiral wound steel": Gasket(3.0, 10000, "spiral wound steel with filler"),
    "flat aluminium": Gasket(4.0, 8800, "soft aluminium, flat"),
    "flat copper": Gasket(4.75, 13000, "soft copper, flat"),
    "flat iron": Gasket(5.5, 18000, "iron or soft steel, flat"),
}
