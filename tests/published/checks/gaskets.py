"""Gaskets: bolt load, stiffness and squeeze, as printed."""

from published.check import Check

REPORT = "heat-exchanger design report after ASME VIII-1, appendix 2"
CODE = "open test suite of ASME VIII-1, appendix 2"
TABLE = "ASME VIII-1, appendix 2, table 2-5.1"
PCC = "ASME PCC-1, appendix D"
STEEL = "structural steel table of edge distances, an analogue"

SPIRAL = {"outside": "17.75 in", "contact": "0.75 in", "pressure": "100 psi", "m": "3",
          "y": "10000 psi"}  # fmt: skip
NARROW = {"outside": "2.875 in", "contact": "0.25 in", "pressure": "100 psi", "m": "2",
          "y": "2000 psi"}  # fmt: skip
JINDAL = {
    "outside": "30 mm", "inside": "15 mm", "thickness": "3 mm", "modulus": "480 MPa",
    "bolt": "15 mm", "grip": "24 mm", "bolt_modulus": "210 GPa",
}  # fmt: skip
# A ring of one inch mean diameter, seat and pressure so that the load is π·y/8.
UNIT_RING = {"outside": "1.25 in", "contact": "0.25 in", "pressure": "0 psi"}


def _seating(material: str, printed: str) -> Check:
    """The seating load of a ring whose seat is 1/8 in wide and 1 in across: π/8·y."""
    return Check("bolt-load", UNIT_RING | {"material": material}, "seating load", printed, "lbf",
                 TABLE, "worked out")  # fmt: skip


ROUND = {"circle": "10 in", "bolts": "12", "bolt": "5/8 in"}
SPACING = "J. E. Shigley, Mechanical Engineering Design, chapter 8: 3 ≤ π·D_b/(N·d) ≤ 6"

CHECKS = (
    Check("bolt-spacing", ROUND, "diameters", "4.1888", "", SPACING, "worked out"),
    Check("bolt-spacing", ROUND, "fewest bolts", "8.3776", "", SPACING, "worked out"),
    Check("bolt-spacing", ROUND, "most bolts", "16.7552", "", SPACING, "worked out"),
    Check("bolt-spacing", ROUND, "rule", "met", "", SPACING, "worked out"),
    Check("bolt-spacing", ROUND | {"bolts": "8"}, "rule",
          "too far apart: the cover bows between the bolts and the gasket leaks there", "",
          SPACING, "worked out"),
    Check("bolt-load", SPIRAL, "seat width", "0.3062", "in", REPORT, "read"),
    Check("bolt-load", SPIRAL, "gasket diameter", "17.138", "in", REPORT, "read"),
    Check("bolt-load", SPIRAL, "pressure force", "23067", "lbf", REPORT, "read"),
    Check("bolt-load", SPIRAL, "holding load", "32958", "lbf", REPORT, "read"),
    Check("bolt-load", SPIRAL, "seating load", "164849", "lbf", REPORT, "read"),
    Check("bolt-load", NARROW, "gasket diameter", "2.625", "in", CODE, "read"),
    Check("bolt-load", NARROW, "holding load", "953", "lbf", CODE, "read", "1",
          "the source takes π/4 as 0.785"),
    Check("bolt-load", NARROW, "seating load", "2062", "lbf", CODE, "read"),
    _seating("hard rubber", "78.54"),
    _seating("fabric in rubber", "157.08"),
    _seating("vegetable fibre", "431.97"),
    _seating("compressed sheet 1/8 in", "628.32"),
    _seating("compressed sheet 1/16 in", "1452.99"),
    _seating("compressed sheet 1/32 in", "2552.54"),
    _seating("spiral wound steel", "3926.99"),
    _seating("flat aluminium", "3455.75"),
    _seating("flat copper", "5105.09"),
    _seating("flat iron", "7068.58"),
    Check("gasket-stiffness", JINDAL, "bolt", "1546.25", "kN/mm",
          "U. C. Jindal, Machine Design, example 5-5, page 141 (labelled N/mm there)", "read"),
    Check("gasket-stiffness", JINDAL, "gasket", "84.82", "kN/mm",
          "U. C. Jindal, Machine Design, example 5-5, page 141", "read"),
    Check("gasket-compression", {"thickness": "4 mm", "after": "2.9 mm"}, "kind", "soft", "",
          f"{PCC}: soft is more than 1.0 mm of compression", "read"),
    Check("gasket-compression", {"thickness": "4 mm", "after": "3.1 mm"}, "kind", "hard", "",
          f"{PCC}: soft is more than 1.0 mm of compression", "read"),
    Check("gasket-compression", {"thickness": "4 mm", "after": "2.9 mm"}, "flatness", "0.25",
          "mm", PCC, "from memory"),
    Check("gasket-compression", {"thickness": "4 mm", "after": "3.1 mm"}, "flatness", "0.15",
          "mm", PCC, "from memory"),
    Check("edge-distance", {"hole": "10 mm"}, "edge", "15", "mm", STEEL, "read"),
    Check("edge-distance", {"hole": "10 mm"}, "end", "20", "mm", STEEL, "read"),
    Check("edge-distance", {"hole": "10 mm"}, "pitch", "30", "mm", STEEL, "read"),
)  # fmt: skip
