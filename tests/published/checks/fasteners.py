"""Fasteners: areas, loads, torques, threads and tap drills, as printed."""

from collections.abc import Iterator

from published.check import Check, Misprint

SHIGLEY = "J. E. Shigley, Mechanical Engineering Design, 9th edition"
WENTZELL = "T. H. Wentzell, Machine Design"
JINDAL = "U. C. Jindal, Machine Design"
MOTT = "R. L. Mott, Machine Elements in Mechanical Design, example 19-1"
HANDBOOK = "Machinery's Handbook, 31st edition"

# Stress areas in in2: size, threads an inch and area, coarse and then fine.
UNIFIED = """
1/4 20 0.0318 28 0.0364
5/16 18 0.0524 24 0.0580
3/8 16 0.0775 24 0.0878
7/16 14 0.1063 20 0.1187
1/2 13 0.1419 20 0.1599
9/16 12 0.182 18 0.203
5/8 11 0.226 18 0.256
3/4 10 0.334 16 0.373
7/8 9 0.462 14 0.509
1 8 0.606 12 0.663
"""

CUT_OFF = ("5/16-24 UNF", "1/2-20 UNF")

# Proof and tensile load in lbf by grade 2, 5 and 8.
J429 = """
1/4-20 1750 2350 2700 3800 3800 4750
3/8-16 4250 5750 6600 9300 9300 11600
3/4-10 18400 24700 28400 40100 40100 50100
7/8-9 15200 27700 39300 55400 55400 69300
1-8 20000 36400 - 72700 72700 90900
"""

# Stress area in mm2; proof load of 8.8, 10.9, 12.9 and tensile load of 8.8 in N.
ISO_898 = """
M6 20.1 11600 16700 19500 16100
M8 36.6 21200 30400 35500 29200
M10 58.0 33700 48100 56300 46400
M12 84.3 48900 70000 81800 67400
M14 115 66700 95500 112000 92000
M16 157 91000 130000 152000 125000
M20 245 147000 203000 238000 203000
M24 353 212000 293000 342000 293000
"""

# Assembly preload in kN and torque in N.m of class 8.8 at friction 0.10, 0.12, 0.14.
ASSEMBLY = """
M8x1 20.7 22.8 20.2 26.1 19.7 29.2
M10x1.25 32.4 44 31.6 51 30.8 57
M12x1.25 49.1 79 48.0 90 46.8 101
M14x1.5 66.4 124 64.8 142 63.2 159
M16x1.5 89.6 189 87.6 218 - -
M20x1.5 151 392 148 454 144 511
M24x2 213 666 209 769 204 865
"""

# Size, coarse threads an inch, core, effective, fine threads an inch, core; in in.
WHITWORTH = """
1/4 20 0.1860 0.2180 26 0.2007
5/16 18 0.2414 0.2769 22 0.2543
3/8 16 0.2950 0.3350 20 0.3110
7/16 14 0.3460 0.3918 18 0.3664
1/2 12 0.3933 0.4466 16 0.4200
9/16 12 0.4558 0.5091 16 0.4825
5/8 11 0.5086 0.5668 14 0.5335
3/4 10 0.6219 0.6860 12 0.6433
7/8 9 0.7327 0.8039 11 0.7586
1 8 0.8399 0.9200 10 0.8719
"""

# Thread, drill of the charts, and per cent of a full thread worked out from it.
CHART_DRILLS = """
1/4-20 No._7 75.4
5/16-18 F 76.9
3/8-16 5/16 77.0
1/2-13 27/64 78.2
5/8-11 17/32 79.4
3/4-10 21/32 72.2
"""

# BS 1157 drills of Whitworth threads that lie nearest to 80 % of a full thread.
WHITWORTH_DRILLS = """
5/16 metric 6.5_mm
3/8 inch 5/16
7/16 metric 9.25_mm
1/2 metric 10.5_mm
5/8 metric 13.5_mm
"""

METRIC_HOLES = """
M6 5.0
M8 6.75
M10 8.5
M12 10.25
M16 14
"""

# For 1-64: drill in in, per cent as printed, and how far off that is.
HANDBOOK_DRILLS = (
    ("0.0625", "51", "1"), ("0.0610", "59", ""), ("0.0595", "66", "1"), ("0.0590", "69", ""),
    ("0.0571", "77", "1.5"),
)  # fmt: skip

# Area in in2, pull in lbf at 75 % of proof, grade 2, and torque in lbf.ft with K 0.20.
DRY_TABLE = """
3/8-16 0.0775 3197 20
1/2-13 0.1419 5853 48.8
3/4-10 0.334 13778 172
7/8-9 0.462 11435 167
1/2-20 0.1599 6600 55
"""


def _rows(table: str) -> list[list[str]]:
    return [line.split() for line in table.strip().splitlines()]


def _unified() -> Iterator[Check]:
    source = f"{SHIGLEY}, table 8-2; {HANDBOOK}, thread table 4a"
    for size, coarse, area, fine, fine_area in _rows(UNIFIED):
        for text, printed in ((f"{size}-{coarse} UNC", area), (f"{size}-{fine} UNF", fine_area)):
            cut = ("0.0001", "the table cuts this row off") if text in CUT_OFF else ("", "")
            yield Check("stress-area", {"thread": text}, "area", printed, "in2", source, "read",
                        *cut)  # fmt: skip


def _j429() -> Iterator[Check]:
    why = "the table rounds to 50 or 100 lbf"
    for thread, *loads in _rows(J429):
        for at, grade in enumerate(("2", "5", "8")):
            for load, printed in zip(("proof load", "tensile load"), loads[2 * at :], strict=False):
                if printed != "-":
                    given = {"thread": thread, "grade": f"SAE J429 {grade}"}
                    yield Check("bolt-strength", given, load, printed, "lbf",
                                "SAE J429 load table of a purchasing document", "read",
                                "0.5 %", why)  # fmt: skip


def _iso_898() -> Iterator[Check]:
    source, why = "ISO 898-1 load tables", "the table rounds its loads to three digits"
    for thread, area, *loads in _rows(ISO_898):
        yield Check("stress-area", {"thread": thread}, "area", area, "mm2", source, "read")
        kinds = (("8.8", "proof load"), ("10.9", "proof load"), ("12.9", "proof load"),
                 ("8.8", "tensile load"))  # fmt: skip
        for (grade, load), printed in zip(kinds, loads, strict=True):
            given = {"thread": thread, "grade": f"ISO 898-1 {grade}", "area": f"{area} mm2"}
            yield Check("bolt-strength", given, load, printed, "N", source, "read", "0.5 %", why)


def _assembly() -> Iterator[Check]:
    source = "VDI 2230 table of 2001, fine threads, class 8.8, 90 % of yield, a supplier's copy"
    why = "the table was worked out with unrounded thread and head sizes"
    for thread, *values in _rows(ASSEMBLY):
        for at, friction in enumerate(("0.10", "0.12", "0.14")):
            pull, torque = values[2 * at : 2 * at + 2]
            given = {"thread": thread, "grade": "8.8", "thread_friction": friction,
                     "head_friction": friction}  # fmt: skip
            for answer, printed, unit in (("preload", pull, "kN"), ("torque", torque, "N.m")):
                if printed != "-":
                    yield Check("assembly-torque", given, answer, printed, unit, source, "read",
                                "1.2 %", why)  # fmt: skip
    for thread, printed in (("M8", "24.6"), ("M10", "48"), ("M12", "84"), ("M16", "206")):
        given = {"thread": thread, "grade": "8.8"}
        yield Check("assembly-torque", given, "torque", printed, "N.m",
                    "VDI 2230 table, coarse threads, class 8.8, friction 0.12", "from memory",
                    "1.2 %", why)  # fmt: skip


def _whitworth() -> Iterator[Check]:
    source = "BS 84 tables of Whitworth threads"
    for size, coarse, core, effective, fine, fine_core in _rows(WHITWORTH):
        for text, answer, printed in (
            (f"{size}-{coarse} BSW", "core", core),
            (f"{size}-{coarse} BSW", "effective", effective),
            (f"{size}-{fine} BSF", "core", fine_core),
        ):
            yield Check("whitworth-thread", {"thread": text}, answer, printed, "in", source, "read")


def _drills() -> Iterator[Check]:
    charts, page = "tap drill charts", f"{HANDBOOK}, page 2155"
    for thread, drill, percent in _rows(CHART_DRILLS):
        named = drill.replace("_", " ")
        given = {"thread": thread, "drill": named}
        yield Check("tap-drill", {"thread": thread}, "drill", named, "", charts, "read")
        yield Check("thread-percent", given, "full thread", percent, "%", page, "worked out")
    for size, drills, drill in _rows(WHITWORTH_DRILLS):
        given = {"thread": f"{size} BSW", "drills": drills}
        named, source = drill.replace("_", " "), "BS 1157 tap drills of BSW threads"
        yield Check("tap-drill", given, "drill", named, "", source, "read")
    for thread, printed in _rows(METRIC_HOLES):
        source = "ISO 2306, d − P"
        yield Check("tap-drill", {"thread": thread}, "hole", printed, "mm", source, "read")
    for drill, printed, within in HANDBOOK_DRILLS:
        why = "the handbook cuts decimals off, and its last row is low" if within else ""
        given = {"thread": "#1-64", "drill": f"{drill} in"}
        yield Check("thread-percent", given, "full thread", printed, "%", page, "read", within, why)


def _dry_table() -> Iterator[Check]:
    source = "published torque table, grade 2 dry, 75 % of proof, K 0.20"
    for thread, area, pull, torque in _rows(DRY_TABLE):
        given = {
            "thread": thread,
            "grade": "SAE J429 2",
            "film": "plain dry",
            "area": f"{area} in2",
        }
        rounded = ("0.5 %", "the table rounds this row to 100 lbf") if pull == "6600" else ("", "")
        yield Check("torque", given, "preload", pull, "lbf", source, "read", *rounded)
        yield Check("torque", given, "torque", torque, "lbf.ft", source, "read")


STUD = {"thread": "1 1/4-12 UNF", "grade": "SAE J429 8", "share": "0.9", "area": "1.073 in2",
        "factor": "0.15"}  # fmt: skip
TIGHT = {"preload": "120 kN", "external": "30 kN", "share": "0.35", "area": "245 mm2",
         "proof": "600 MPa"}  # fmt: skip
RATES = {"preload": "25000 lbf", "external": "6000 lbf", "bolt_rate": "6.5e6 lbf/in",
         "parts_rate": "13.8e6 lbf/in", "area": "0.373 in2", "unit": "in"}  # fmt: skip
BIG = {"thread": "3/4-10", "grade": "SAE J429 5", "share": "0.85", "area": "0.334 in2"}
SCREW = {"thread": "3/4-16 UNF", "preload": "25000 lbf", "thread_friction": "0.15",
         "collar_friction": "0.15"}  # fmt: skip
SHORT = {"thread": "1/2-13", "proof": "150 ksi", "share": "0.55", "friction": "0.15"}
TEN = "30.3; 32.5; 32.5; 32.9; 32.9; 33.8; 34.3; 34.7; 37.4; 40.5"
PULLS = {"pulls": "; ".join(f"{each} kN" for each in TEN.split("; "))}


def _preloads() -> Iterator[Check]:
    """The torques of worked examples, back to the pull they were worked out from."""
    for given, printed, unit, source, known in (
        ({"thread": "3/8-16", "torque": "225 lbf.in", "factor": "0.15"}, "4000", "lbf", MOTT,
         "read"),
        ({"thread": "1 1/4-12", "torque": "21728.25 lbf.in", "factor": "0.15",
          "area": "1.073 in2"}, "115884", "lbf",
         f"{WENTZELL}, example 6.4, page 124: 90 % of 120 ksi on 1.073 in²", "worked out"),
        ({"thread": "M14", "torque": "156.97 N.m", "factor": "0.2", "area": "115 mm2"}, "56.06",
         "kN", f"{JINDAL}, example 9-5, page 268: 75 % of 650 MPa on 115 mm²", "worked out"),
    ):  # fmt: skip
        yield Check("preload-from-torque", given, "preload", printed, unit, source, known)
    given = {"thread": "3/4-10", "grade": "SAE J429 5", "torque": "3619.73 lbf.in",
             "factor": "0.2", "area": "0.334 in2"}  # fmt: skip
    source = f"{WENTZELL}, example 6.1, 85 % of the proof load"
    yield Check("preload-from-torque", given, "share", "0.85", "", source, "read")


def _films() -> Iterator[Check]:
    """A torque of 30 N.m on a black bolt, K = 0.30, is a hundred times K on another film."""
    for film, printed in (
        ("zinc", "20.0"), ("lubricated", "18.0"), ("cadmium", "16.0"), ("anti-seize", "12.0"),
        ("grip nuts", "9.0"),
    ):  # fmt: skip
        given = {"torque": "30 N.m", "book": "black", "now": film}
        yield Check("torque-for-film", given, "torque", printed, "N.m",
                    f"ratio of the K of {SHIGLEY}, table 8-15", "worked out")  # fmt: skip


def _which_threads() -> Iterator[Check]:
    """Sizes that coarse threads of both systems share, and those that only one has."""
    source = "tables of ASME B1.1 and BS 84 side by side"
    for size, tpi in (
        ("1/4", "20"), ("5/16", "18"), ("3/8", "16"), ("7/16", "14"), ("9/16", "12"),
        ("5/8", "11"), ("3/4", "10"), ("7/8", "9"), ("1", "8"),
    ):  # fmt: skip
        both = f"{size}-{tpi} UNC; {size}-{tpi} BSW"
        given = {"diameter": f"{size} in", "tpi": tpi}
        yield Check("which-thread", given, "candidates", both, "", source, "read")
    for size, tpi, only in (
        ("1/2", "12", "1/2-12 BSW"), ("1/2", "13", "1/2-13 UNC"), ("1/4", "28", "1/4-28 UNF"),
        ("1/4", "26", "1/4-26 BSF; 1/4-26 BSC"),
    ):  # fmt: skip
        given = {"diameter": f"{size} in", "tpi": tpi}
        yield Check("which-thread", given, "candidates", only, "", source, "read")


CHECKS = (
    *_unified(),
    *_j429(),
    *_iso_898(),
    *_assembly(),
    *_whitworth(),
    *_drills(),
    *_dry_table(),
    Check("stress-area", {"thread": "M16"}, "area", "156.7", "mm2", f"{JINDAL}, example 9-1",
          "read"),
    Check("stress-area", {"thread": "M16x1.5"}, "area", "167.2", "mm2", f"{JINDAL}, example 9-1",
          "read"),
    Check("torque", BIG | {"factor": "0.2"}, "torque", "3619.73", "lbf.in",
          f"{WENTZELL}, example 6.1", "read"),
    Check("turn-of-nut", BIG | {"grip": "5 in"}, "turn", "43.35", "deg",
          f"{WENTZELL}, example 6.2, page 121", "read"),
    Check("turn-of-nut", BIG | {"grip": "5 in"}, "stretch", "0.01204", "in",
          f"{WENTZELL}, example 6.2, page 121", "read"),
    Check("bolt-heating", {"stretch": "0.01204 in", "grip": "5 in",
                           "expansion": "6.5 uin/in.F"}, "warming", "370.46", "Fdeg",
          f"{WENTZELL}, example 6.3, page 122", "read"),
    Check("torque", STUD, "torque", "21728.25", "lbf.in", f"{WENTZELL}, example 6.4, page 124",
          "read"),
    Check("torque", {"thread": "M14", "area": "115 mm2", "proof": "650 MPa", "factor": "0.2"},
          "torque", "156.97", "N.m", f"{JINDAL}, example 9-5, page 268", "read"),
    Check("torque", {"thread": "M20", "preload": "120 kN", "factor": "0.18"}, "torque", "432",
          "N.m", f"{JINDAL}, example 9-6, page 269", "read"),
    Check("bolt-stress", TIGHT, "final stress", "532.65", "MPa",
          f"{JINDAL}, example 9-6, page 269", "read"),
    Check("bolt-stress", TIGHT, "final over proof", "0.888", "",
          f"{JINDAL}, example 9-6, page 269", "read"),
    Check("bolt-stress", TIGHT, "initial stress", "489.80", "MPa",
          f"{JINDAL}, example 9-6, 120 kN over 245 mm²", "worked out"),
    Check("bolt-stress", TIGHT, "initial over proof", "0.816", "",
          f"{JINDAL}, example 9-6, 120 kN over 245 mm² and 600 MPa", "worked out"),
    Check("bolt-for-load", {"load": "4000 lbf", "grade": "SAE J429 5"}, "least area", "0.0627",
          "in2", MOTT, "read"),
    Check("bolt-for-load", {"load": "4000 lbf", "grade": "SAE J429 5"}, "thread", "3/8-16 UNC", "",
          MOTT, "read"),
    Check("torque", {"thread": "3/8-16", "preload": "4000 lbf", "factor": "0.15"}, "torque", "225",
          "lbf.in", MOTT, "read"),
    Check("bolt-stress", RATES, "initial stress", "67.02", "ksi", f"{SHIGLEY}, example 8-3(a)",
          "read"),
    Check("bolt-stress", RATES, "share", "0.320", "", f"{SHIGLEY}, example 8-3(a)", "read"),
    Check("bolt-stress", RATES, "final stress", "72.17", "ksi", f"{SHIGLEY}, example 8-3(a)",
          "read"),
    Check("torque", {"thread": "3/4-16 UNF", "preload": "25000 lbf", "factor": "0.2"}, "torque",
          "3750", "lbf.in", f"{SHIGLEY}, example 8-3(b)", "from memory"),
    Check("torque-by-friction", SCREW, "torque", "3551", "lbf.in", f"{SHIGLEY}, example 8-3(c)",
          "from memory"),
    Check("torque-by-friction", SCREW, "nut factor", "0.189", "", f"{SHIGLEY}, example 8-3(c)",
          "from memory"),
    Check("torque-one-friction", SHORT, "preload", "11707", "lbf", f"{HANDBOOK}, page 1665",
          "read"),
    Check("torque-one-friction", SHORT, "torque", "1158", "lbf.in", f"{HANDBOOK}, page 1665",
          "read"),
    Check("torque-one-friction", SHORT, "torque", "96.5", "lbf.ft", f"{HANDBOOK}, page 1665",
          "read"),
    Check("torque-by-friction", {"thread": "M18", "preload": "10 kN", "thread_friction": "0.15",
                                 "collar_friction": "0.13"}, "nut factor", "0.18343", "",
          f"{JINDAL}, example 9-3, page 267", "read"),
    Check("assembly-torque", {"thread": "M12", "grade": "8.8", "thread_friction": "0.14",
                              "head_friction": "0.14"}, "preload", "41.9", "kN",
          "VDI 2230 table of 2001, coarse threads, class 8.8", "read", "1.2 %",
          "the table was worked out with unrounded thread sizes"),
    Check("preload-scatter", PULLS, "mean", "34.18", "kN", f"{SHIGLEY}, table 8-14, its ten pulls",
          "worked out"),
    Check("preload-scatter", PULLS, "standard deviation", "2.881", "kN",
          f"{SHIGLEY}, table 8-14, its ten pulls", "worked out"),
    *_preloads(),
    *_films(),
    *_which_threads(),
    *(Check("tightening-order", {"count": count}, "order", order, "",
            "ASME PCC-1, legacy crosswise pattern", "from memory")
      for count, order in (("4", "1, 3, 2, 4"), ("8", "1, 5, 3, 7, 2, 6, 4, 8"))),
    Check("tap-drill", {"thread": "M8"}, "drill", "6.75 mm", "", "ISO 2306, d − P", "read"),
)  # fmt: skip

MISPRINTS = (
    Misprint("bolt-stress", TIGHT, "initial stress", "489.0", "489.80", "MPa",
             f"{JINDAL}, companion to example 9-6", "divides whole numbers and drops the rest"),
    Misprint("bolt-stress", TIGHT, "initial over proof", "0", "0.816", "",
             f"{JINDAL}, companion to example 9-6", "divides whole numbers and drops the rest"),
    Misprint("bolt-strength", {"thread": "3/8-16", "grade": "SAE J429 2", "area": "1 in2"},
             "tensile load", "72000", "74000", "lbf", "a load table for grade 2",
             "takes 72 ksi for the 74 ksi of SAE J429"),
    Misprint("bolt-strength", {"thread": "M10", "grade": "8.8", "area": "58.0 mm2"}, "proof load",
             "33700", "33640", "N", "ISO 898-1 load table",
             "580 MPa on 58.0 mm² gives 33 640 N; the print is rounded up"),
)  # fmt: skip
