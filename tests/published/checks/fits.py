"""Limits and fits, press fits and shrinking on, as printed."""

from published.check import Check, Known, Misprint

BH = "V. B. Bhandari, Design of Machine Elements"
JI = "U. C. Jindal, Machine Design"
SH9 = "Shigley, Mechanical Engineering Design, 9th edition"
SHA = "P. C. Sharma, Production Engineering"
BHV = "S. S. Bhavikatti, Strength of Materials"
ISO = "ISO 286-1:2010, tables 1 to 3"
B41 = "ANSI B4.1, in Machinery's Handbook, 27th edition, page 663 and on"
LECTURE = "lecture slides on press fits after Ugural, steel shaft in an iron disc"
WEB = "a worked example on press fits, on the web"
RING = "a textbook's page on shrinking a ring on"
EXPANSION = "a worked example on heat expansion, on the web"


def _iso(
    designation: str, hole: str, shaft: str, kind: str, fit: str, source: str, known: Known = "read"
) -> list[Check]:
    """Limits of both parts and the fit of one designation; texts hold smallest and largest."""
    given = {"designation": designation}
    rows = [
        (name, printed)
        for what, text in (("hole", hole), ("shaft", shaft))
        if text
        for name, printed in zip((f"smallest {what}", f"largest {what}"), text.split(), strict=True)
    ]
    rows += list(zip((f"least {kind}", f"most {kind}"), fit.split(), strict=True))
    return [Check("iso-fit", given, name, printed, "mm", source, known) for name, printed in rows]


def _ansi(
    fit_class: str, size: str, hole: str, shaft: tuple[str, str], kind: str, fit: tuple[str, str]
) -> list[Check]:
    """One row of the table, in thou above the nominal size, which is a whole one there."""
    given = {"class_": fit_class, "size": size}
    nominal = float(size.split()[0]) * 1000
    rows = [("largest hole", hole), ("smallest shaft", shaft[0]), ("largest shaft", shaft[1])]
    out = [
        Check("ansi-fit", given, name, f"{nominal + float(off):.1f}", "thou", B41, "read")
        for name, off in rows
    ]
    return out + [
        Check("ansi-fit", given, f"{which} {kind}", printed, "thou", B41, "read")
        for which, printed in zip(("least", "most"), fit, strict=True)
    ]


TUBES_20 = {
    "bore": "300 mm", "diameter": "400 mm", "hub": "500 mm", "interference": "0.2 mm",
    "hub_modulus": "200 GPa", "shaft_modulus": "200 GPa",
}  # fmt: skip
TUBES_21 = {
    "bore": "200 mm", "diameter": "250 mm", "hub": "300 mm", "pressure": "30 MPa",
    "hub_modulus": "200 GPa", "shaft_modulus": "200 GPa",
}  # fmt: skip
TUBES_22 = {
    "bore": "20 mm", "diameter": "40 mm", "hub": "60 mm", "interference": "0.031711 mm",
    "hub_modulus": "207 GPa", "shaft_modulus": "207 GPa",
}  # fmt: skip
IRON_DISC = {
    "bore": "50 mm", "diameter": "100 mm", "hub": "250 mm",
    "shaft_modulus": "210 GPa", "shaft_poisson": "0.3", "hub_modulus": "70 GPa",
    "hub_poisson": "0.25",
}  # fmt: skip
DISC_BY_HOOP = IRON_DISC | {"hub_hoop": "30 MPa"}
DISC_PRESSED = IRON_DISC | {
    "interference": "0.0324 mm", "on": "radius", "length": "100 mm", "friction": "0.15",
}  # fmt: skip
HUB_24 = {
    "diameter": "50 mm", "hub": "80 mm", "length": "40 mm", "interference": "0.04 mm",
    "friction": "0.15", "hub_modulus": "200 GPa", "shaft_modulus": "200 GPa",
}  # fmt: skip
HUB_25 = HUB_24 | {"friction": "0.12", "hub_modulus": "210 GPa", "shaft_modulus": "210 GPa"}
HUB_26 = {"diameter": "50 mm", "hub": "100 mm", "length": "50 mm", "friction": "0.12"}
LOOSEST, TIGHTEST = HUB_26 | {"interference": "0.018 mm"}, HUB_26 | {"interference": "0.059 mm"}
FROM_TABLES = f"Lamé's formula with 50 H7/s6 of {BH}, example 3.3"

RING_75 = {"interference": "0.05 mm", "diameter": "75.00 mm", "metal": "12 um/m.K"}
RING_2_5 = {"interference": "0.0020 in", "diameter": "2.5000 in", "metal": "12 um/m.K"}
RING_438 = {
    "interference": "2 mm", "diameter": "438 mm", "metal": "23 um/m.K", "clearance": "0.5 mm",
}  # fmt: skip
ROD_2 = {
    "interference": "0.0046 in", "diameter": "2.0000 in", "metal": "12 um/m.K",
    "way": "cool the shaft",
}  # fmt: skip
SLEEVE_400 = {"interference": "0.2 mm", "diameter": "400 mm", "metal": "12 um/m.K"}

SHARMA_1 = {"hole": "37.50 .. 37.52 mm", "shaft": "37.45 .. 37.47 mm"}
SHARMA_2 = {"hole": "75 .. 75.075 mm", "clearance": "0.10 mm"}
SHARMA_3 = {"hole": "75 .. 75.225 mm", "interference": "0.0375 mm"}
SHARMA_5 = {"hole": "30 +0.020/0 mm", "shaft": "30 -0.005/-0.018 mm"}
SHARMA_6 = {"size": "25 mm", "least": "0.01 mm", "most": "0.02 mm", "share": "1.5"}
SHARMA_9 = {"size": "100 mm", "least": "-0.12 mm", "most": "-0.05 mm"}
SHARMA_10 = {"size": "100 mm", "least": "0.028 mm", "most": "0.052 mm", "share": "2"}
ON_SHAFT = {"basis": "shaft"}
INCH_2 = {"hole": "2.0000 .. 2.0010 in", "shaft": "2.0017 .. 2.0023 in"}


def _both(
    given: dict[str, str], source: str, hole: str, shaft: str, known: Known = "read"
) -> list[Check]:
    """Limits of hole and shaft of one example on limits that a fit leaves."""
    rows = [
        (name, printed)
        for what, text in (("hole", hole), ("shaft", shaft))
        for name, printed in zip((f"smallest {what}", f"largest {what}"), text.split(), strict=True)
    ]
    return [Check("hole-and-shaft", given, n, p, "mm", source, known) for n, p in rows]


def _one_part(size: str, zone: str, smallest: str, largest: str, source: str) -> list[Check]:
    """Limits of one part of a printed fit."""
    given = {"size": f"{size} mm", "zone": zone}
    return [
        Check("iso-limits", given, which, printed, "mm", source, "read")
        for which, printed in (("smallest", smallest), ("largest", largest))
    ]


CHECKS = (
    *_one_part("20", "H6", "20.000", "20.013", f"{BH}, example 3.1"),
    *_one_part("20", "e7", "19.939", "19.960", f"{BH}, example 3.1"),
    *_one_part("20", "H7", "20.000", "20.021", f"{BH}, example 3.2"),
    *_one_part("20", "s6", "20.035", "20.048", f"{BH}, example 3.2"),
    *_one_part("50", "H7", "50.000", "50.025", f"{BH}, example 3.3"),
    *_one_part("50", "s6", "50.043", "50.059", f"{BH}, example 3.3"),
    *_one_part("12", "H11", "12.000", "12.110", f"{BH}, example 3.4"),
    *_one_part("12", "d11", "11.840", "11.950", f"{BH}, example 3.4"),
    *_one_part("25", "H7", "25.000", "25.021", f"{JI}, example 4-2"),
    *_one_part("25", "r6", "25.028", "25.041", f"{JI}, example 4-2"),
    *_one_part("50", "H8", "50.000", "50.039", f"{JI}, example 4-3"),
    *_one_part("50", "g7", "49.966", "49.991", f"{JI}, example 4-3"),
    *_one_part("34", "H11", "34.000", "34.160", f"{SH9}, example 7-7"),
    *_one_part("34", "c11", "33.720", "33.880", f"{SH9}, example 7-7"),
    *_iso("20 H6/e7", "20.000 20.013", "19.939 19.960", "clearance", "0.040 0.074",
          f"{BH}, example 3.1"),
    *_iso("20 H7/s6", "20.000 20.021", "20.035 20.048", "interference", "0.014 0.048",
          f"{BH}, example 3.2"),
    *_iso("50 H7/s6", "50.000 50.025", "50.043 50.059", "interference", "0.018 0.059",
          f"{BH}, example 3.3"),
    *_iso("12 H11/d11", "12.000 12.110", "11.840 11.950", "clearance", "0.050 0.270",
          f"{BH}, example 3.4"),
    *_iso("25 H7/r6", "25.000 25.021", "25.028 25.041", "interference", "0.007 0.041",
          f"{JI}, example 4-2"),
    *_iso("50 H8/g7", "50.000 50.039", "49.966 49.991", "clearance", "0.009 0.073",
          f"{JI}, example 4-3"),
    *_iso("34 H11/c11", "34.000 34.160", "33.720 33.880", "clearance", "0.120 0.440",
          f"{SH9}, example 7-7"),
    *_iso("25 H7/p6", "", "", "interference", "0.001 0.035", ISO, "worked out"),
    *_iso("80 H7/p6", "", "", "interference", "0.002 0.051", ISO, "worked out"),
    *_iso("50 H8/f7", "", "", "clearance", "0.025 0.089", ISO, "worked out"),
    *_iso("60 H8/f7", "60.000 60.046", "59.940 59.970", "clearance", "0.030 0.106",
          f"{SHA}, example 9.4, put right", "worked out"),
    *_iso("100 G7/e8", "100.012 100.047", "99.874 99.928", "clearance", "0.084 0.173",
          f"{SHA}, example 9.7, put right", "worked out"),
    Check("fit", INCH_2, "least interference", "0.0007", "in", f"{SH9}, example 7-8", "read"),
    Check("fit", INCH_2, "most interference", "0.0023", "in", f"{SH9}, example 7-8", "read"),
    Check("fit", SHARMA_1, "hole tolerance", "0.02", "mm", f"{SHA}, example 9.1", "read"),
    Check("fit", SHARMA_1, "shaft tolerance", "0.02", "mm", f"{SHA}, example 9.1", "read"),
    Check("fit", SHARMA_1, "least clearance", "0.03", "mm", f"{SHA}, example 9.1", "read"),
    Check("shaft-for-hole", SHARMA_2, "largest shaft", "74.90", "mm", f"{SHA}, example 9.2",
          "read"),
    Check("shaft-for-hole", SHARMA_2, "smallest shaft", "74.825", "mm", f"{SHA}, example 9.2",
          "read"),
    Check("shaft-for-hole", SHARMA_3, "smallest shaft", "75.2625", "mm", f"{SHA}, example 9.3",
          "read"),
    Check("shaft-for-hole", SHARMA_3, "largest shaft", "75.4875", "mm", f"{SHA}, example 9.3",
          "read"),
    Check("fit", SHARMA_5, "shaft tolerance", "0.013", "mm", f"{SHA}, example 9.5", "read"),
    Check("fit", SHARMA_5, "least clearance", "0.005", "mm", f"{SHA}, example 9.5", "read"),
    Check("fit", SHARMA_5, "most clearance", "0.038", "mm", f"{SHA}, example 9.5", "read"),
    *_both(SHARMA_6, f"{SHA}, example 9.6", "25.000 25.006", "24.986 24.990"),
    *_both(SHARMA_6 | ON_SHAFT, f"limits of {SHA}, example 9.6, on the shaft", "25.010 25.016",
           "24.996 25.000", "worked out"),
    *_both(SHARMA_9, f"{SHA}, example 9.9", "100.000 100.035", "100.085 100.120"),
    *_both(SHARMA_9 | ON_SHAFT, f"limits of {SHA}, example 9.9, on the shaft", "99.880 99.915",
           "99.965 100.000", "worked out"),
    *_both(SHARMA_10, f"plain limit arithmetic after {SHA}, example 9.10", "100 100.016",
           "99.964 99.972", "worked out"),
    *_ansi("FN 2", "1 in", "0.8", ("1.4", "1.9"), "interference", ("0.6", "1.9")),
    *_ansi("FN 2", "1.25 in", "1.0", ("1.8", "2.4"), "interference", ("0.8", "2.4")),
    *_ansi("FN 2", "1.75 in", "1.0", ("1.8", "2.4"), "interference", ("0.8", "2.4")),
    *_ansi("FN 2", "2 in", "1.2", ("2.0", "2.7"), "interference", ("0.8", "2.7")),
    *_ansi("FN 2", "3 in", "1.2", ("2.2", "2.9"), "interference", ("1.0", "2.9")),
    *_ansi("FN 2", "3.5 in", "1.4", ("2.8", "3.7"), "interference", ("1.4", "3.7")),
    *_ansi("FN 1", "1.75 in", "0.6", ("1.0", "1.4"), "interference", ("0.4", "1.4")),
    *_ansi("RC 2", "1.5 in", "0.6", ("-0.8", "-0.4"), "clearance", ("0.4", "1.4")),
    *_ansi("RC 4", "1 in", "1.2", ("-1.6", "-0.8"), "clearance", ("0.8", "2.8")),
    *_ansi("RC 4", "1.5 in", "1.6", ("-2.0", "-1.0"), "clearance", ("1.0", "3.6")),
    Check("press-fit", TUBES_20, "pressure", "12.30", "MPa", f"{BHV}, example 8.8.17, page 350",
          "read"),
    Check("press-fit", TUBES_20, "hub hoop", "56.05", "MPa",
          f"Lamé's formula with {BHV}, example 8.8.17", "worked out"),
    Check("press-fit", TUBES_20, "shaft hoop", "-43.95", "MPa",
          f"Lamé's formula with {BHV}, example 8.8.17", "worked out"),
    Check("interference-for-pressure", TUBES_21, "on the radius", "0.1894", "mm",
          f"{BHV}, example 8.8.16", "read"),
    Check("interference-for-pressure", TUBES_21, "hub hoop", "166.36", "MPa",
          f"Lamé's formula with {BHV}, example 8.8.16", "worked out"),
    Check("interference-for-pressure", TUBES_21, "shaft hoop", "-136.67", "MPa",
          f"Lamé's formula with {BHV}, example 8.8.16", "worked out"),
    Check("press-fit", TUBES_22, "pressure", "38.46", "MPa", f"{BH}, example 22.6", "read"),
    Check("press-fit", TUBES_22, "hub hoop", "100.0", "MPa", f"{BH}, example 22.6", "read"),
    Check("interference-for-pressure", DISC_BY_HOOP, "pressure", "21.72", "MPa", LECTURE,
          "worked out"),
    Check("interference-for-pressure", DISC_BY_HOOP, "on the radius", "0.0324", "mm", LECTURE,
          "worked out"),
    Check("press-fit", DISC_PRESSED, "press force", "102.4", "kN", LECTURE, "worked out"),
    Check("press-fit", DISC_PRESSED, "torque", "5.12", "kN.m", LECTURE, "worked out"),
    Check("press-fit", HUB_24, "pressure", "48.75", "MPa", WEB, "read"),
    Check("press-fit", HUB_24, "press force", "45.9", "kN", WEB, "read"),
    Check("press-fit", HUB_24, "torque", "1149", "N.m", WEB, "read"),
    Check("press-fit", HUB_24, "hub hoop", "111.3", "MPa", WEB, "read"),
    Check("press-fit", HUB_25, "pressure", "51.19", "MPa", WEB, "read"),
    Check("press-fit", HUB_25, "press force", "38.6", "kN", WEB, "read"),
    Check("press-fit", HUB_25, "torque", "965", "N.m", WEB, "read"),
    Check("press-fit", HUB_25, "hub hoop", "116.8", "MPa", WEB, "read"),
    Check("press-fit", LOOSEST, "pressure", "27.95", "MPa", FROM_TABLES, "worked out"),
    Check("press-fit", LOOSEST, "torque", "658", "N.m", FROM_TABLES, "worked out"),
    Check("press-fit", TIGHTEST, "pressure", "91.60", "MPa", FROM_TABLES, "worked out"),
    Check("press-fit", TIGHTEST, "torque", "2158", "N.m", FROM_TABLES, "worked out"),
    Check("press-fit", TIGHTEST, "press force", "86.3", "kN", FROM_TABLES, "worked out"),
    Check("force-fit-rule", {"diameter": "9 in"}, "press", "150", "tonf",
          "Dooley, Applied Science for Metal Workers", "read"),
    Check("shrink-temperature", RING_75, "warming", "55.6", "K", RING, "read"),
    Check("shrink-temperature", RING_2_5, "temperature", "87", "degC", EXPANSION, "read"),
    Check("shrink-temperature", RING_438, "warming", "248", "K", EXPANSION, "read"),
    Check("shrink-temperature", ROD_2, "cooling", "191.67", "K", EXPANSION, "read"),
    Check("shrink-temperature", SLEEVE_400, "warming", "41.67", "K",
          f"{BHV}, example 8.8.17, put right", "worked out"),
    *(Check("iso-limits", {"size": f"{size} mm", "zone": zone}, which, printed, "mm",
            "ISO 286-2, limits of holes", "from memory")
      for size, zone, smallest, largest in (
          ("30", "K8", "29.977", "30.010"), ("50", "K8", "49.973", "50.012"),
          ("80", "K8", "79.968", "80.014"), ("30", "K7", "29.985", "30.006"),
          ("30", "N8", "29.964", "29.997"))
      for which, printed in (("smallest", smallest), ("largest", largest))),
)  # fmt: skip

MISPRINTS = (
    Misprint("iso-fit", {"designation": "60 H8/f7"}, "largest hole", "60.011", "60.046", "mm",
             f"{SHA}, example 9.4", "its root and cube root were taken as whole numbers"),
    Misprint("iso-fit", {"designation": "60 H8/f7"}, "largest shaft", "59.99", "59.97", "mm",
             f"{SHA}, example 9.4", "its root and cube root were taken as whole numbers"),
    Misprint("iso-fit", {"designation": "100 G7/e8"}, "largest hole", "100.010", "100.047", "mm",
             f"{SHA}, example 9.7", "its root and cube root were taken as whole numbers"),
    Misprint("iso-fit", {"designation": "100 G7/e8"}, "largest shaft", "99.989", "99.928", "mm",
             f"{SHA}, example 9.7", "its root was taken whole; letter e has .41, not .11"),
    Misprint("iso-limits", {"size": "70 mm", "zone": "H8"}, "largest", "70.013", "70.046", "mm",
             f"{JI}, example 4-1", "its cube root was taken as a whole number"),
    Misprint("iso-limits", {"size": "30 mm", "zone": "H7"}, "largest", "30.025", "30.021", "mm",
             f"{JI}, example 4-4", "30 mm belongs to the range 18 to 30, not 30 to 50"),
    Misprint("shrink-temperature", SLEEVE_400, "warming", "66.67", "41.67", "K",
             f"{BHV}, example 8.8.17", "it divides by a diameter of 250 where 400 is meant"),
    Misprint("press-fit", TUBES_22, "shaft bore hoop", "-100.0", "-102.6", "MPa",
             f"{BH}, example 22.6", "it holds the jacket to 100; the tube inside goes beyond"),
    Misprint("interference-for-pressure", TUBES_21, "on the diameter", "0.1894", "0.3788", "mm",
             f"{BHV}, example 8.8.16", "its shrinkage is on the radius"),
)  # fmt: skip
