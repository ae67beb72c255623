"""Figures for the tests of this room, as a book gives them."""

from shimstock.trade.machine.book import Figure


def figure(**fields) -> Figure:
    """A figure with the fields that a test is about."""
    return Figure.model_validate({"name": "Liner bore", "of": "liner", **fields})


BORE = figure(
    new="5.7500 .. 5.7515 in",
    limit="max 5.7600 in",
    at={"depths": ["top", "middle", "bottom"], "across": ["thrust", "pin"]},
    sizes=["+0.020 in", "+0.040 in", "+0.060 in"],
    nominal="5.7500 in",
    **{"with": "bore gauge set on a micrometer", "clean-up": "0.004 in"},
)
JOURNAL = figure(
    name="Rod journal",
    of="crankshaft",
    new="3.7490 .. 3.7500 in",
    limit="min 3.7460 in",
    sizes=["-0.010 in", "-0.020 in", "-0.030 in"],
    nominal="3.7500 in",
    **{"with": "outside micrometer"},
)
LASH = figure(name="Gear lash", new="0.0030 .. 0.0060 in", limit="max 0.0120 in")
PRESSURE = figure(name="Oil pressure", new="35 .. 45 psi", limit="min 25 psi")
