"""Freeing by heat and cold, and the stress of heat, as printed."""

from published.check import Check, Known

BAN = "R. K. Bansal, Strength of Materials"
EACH_ALONE = "Δc = D·(α_h·ΔT_h − α_p·ΔT_p) with α of a printed table"
RING = "a textbook's page on shrinking a ring on"
WEB = "a worked example on heat expansion, on the web"

ROD_1 = {"length": "2 m", "metal": "12 um/m.K", "start": "10 degC", "end": "80 degC"}
ROD_1_HELD = ROD_1 | {"modulus": "100000 MPa"}
ROD_2 = {
    "length": "5 m", "metal": "12 um/m.K", "start": "95 degC", "end": "30 degC",
    "modulus": "200000 MPa", "diameter": "30 mm",
}  # fmt: skip
ROD_2_EASED = ROD_2 | {"yields": "1.2 mm"}
TUBE = {
    "rod": "20 mm", "inside": "40 mm", "outside": "50 mm", "rod_metal": "12 um/m.K",
    "tube_metal": "18 um/m.K", "rod_modulus": "200 GPa", "tube_modulus": "100 GPa",
    "start": "20 degC", "end": "70 degC",
}  # fmt: skip
PIN = {"diameter": "30 mm", "housing": "10.8 um/m.K", "pin": "11.7 um/m.K"}
SOAKED = PIN | {"housing_at": "170 degC", "pin_at": "170 degC"}
HEATED = PIN | {"housing_at": "170 degC"}
IN_ALUMINIUM = {
    "diameter": "30 mm", "housing": "23.6 um/m.K", "pin": "12 um/m.K",
    "housing_at": "120 degC", "pin_at": "120 degC",
}  # fmt: skip
IN_ALUMINIUM_BOTH = {
    "diameter": "30 mm", "housing": "23.6 um/m.K", "pin": "12 um/m.K", "wanted": "34.8 um",
    "way": "heat both",
}  # fmt: skip
BRASS_75 = {
    "shaft": "75.05 mm", "ring": "75.00 mm", "shaft_metal": "20 um/m.K", "ring_metal": "12 um/m.K",
}  # fmt: skip
BRASS_2_5 = {
    "shaft": "2.5020 in", "ring": "2.5000 in", "shaft_metal": "19 um/m.K",
    "ring_metal": "12 um/m.K", "start": "20 degC",
}  # fmt: skip
BRASS_20 = BRASS_2_5 | {"shaft_metal": "20 um/m.K"}


def _grows(metal: str, printed: str, source: str, known: Known) -> Check:
    """A metre warmed by one degree grows by the figure that the table prints."""
    given = {"length": "1 m", "metal": metal, "start": "20 degC", "end": "21 degC"}
    return Check("expansion", given, "growth", printed, "um", source, known)


DOOLEY = "Dooley, Applied Science for Metal Workers, table of expansion"
CALLISTER = "Callister, Materials Science and Engineering, appendix B"
TABLE = "a handbook's table of expansion"

CHECKS = (
    _grows("grey iron", "10.8", TABLE, "read"),
    _grows("5.56 uin/in.F", "10.0", DOOLEY, "read"),
    _grows("wrought iron", "11.7", DOOLEY, "read"),
    _grows("6.48 uin/in.F", "11.7", DOOLEY, "read"),
    _grows("soft steel", "10.9", DOOLEY, "read"),
    _grows("6.06 uin/in.F", "10.9", DOOLEY, "read"),
    _grows("hardened steel", "12.4", DOOLEY, "read"),
    _grows("6.89 uin/in.F", "12.4", DOOLEY, "read"),
    _grows("ductile iron", "11.2", CALLISTER, "read"),
    _grows("brass", "18.9", DOOLEY, "read"),
    _grows("10.52 uin/in.F", "18.9", DOOLEY, "read"),
    _grows("cartridge brass", "19.9", CALLISTER, "read"),
    _grows("free-cutting brass", "20.5", CALLISTER, "read"),
    _grows("bronze", "18", TABLE, "read"),
    _grows("bearing bronze", "18.0", CALLISTER, "read"),
    _grows("copper", "16.0", DOOLEY, "read"),
    _grows("8.87 uin/in.F", "16.0", DOOLEY, "read"),
    _grows("aluminium", "24", TABLE, "read"),
    _grows("aluminium 6061", "23.6", CALLISTER, "read"),
    _grows("cast aluminium", "21.5", CALLISTER, "read"),
    Check("expansion", ROD_1, "growth", "1.68", "mm", f"{BAN}, example 1.28, page 43", "read"),
    Check("restrained-rod", ROD_1_HELD, "growth", "1.68", "mm", f"{BAN}, example 1.28, page 43",
          "read"),
    Check("restrained-rod", ROD_1_HELD, "stress", "84", "MPa", f"{BAN}, example 1.28, page 43",
          "read"),
    Check("restrained-rod", ROD_2, "stress", "156", "MPa", f"{BAN}, example 1.29, page 43",
          "read"),
    Check("restrained-rod", ROD_2, "force", "110269.9", "N", f"{BAN}, example 1.29, page 43",
          "read"),
    Check("restrained-rod", ROD_2_EASED, "stress", "108", "MPa", f"{BAN}, example 1.29, page 43",
          "read"),
    Check("restrained-rod", ROD_2_EASED, "force", "76340.7", "N",
          f"{BAN}, example 1.29, page 43", "read"),
    Check("tube-and-rod", TUBE, "rod stress", "31.76", "MPa", f"{BAN}, example 1.30, page 45",
          "read"),
    Check("clearance-by-heat", SOAKED, "gained", "-4.05", "um", EACH_ALONE, "worked out"),
    Check("clearance-by-heat", SOAKED, "effect", "tightens", "", EACH_ALONE, "worked out"),
    Check("clearance-by-heat", HEATED, "gained", "48.6", "um", EACH_ALONE, "worked out"),
    Check("clearance-by-heat", HEATED, "effect", "loosens", "", EACH_ALONE, "worked out"),
    Check("clearance-by-heat", IN_ALUMINIUM, "gained", "34.8", "um", EACH_ALONE, "worked out"),
    Check("heat-to-free", PIN | {"wanted": "48.6 um"}, "temperature", "170", "degC", EACH_ALONE,
          "worked out"),
    Check("heat-to-free", IN_ALUMINIUM_BOTH, "temperature", "120", "degC", EACH_ALONE,
          "worked out"),
    Check("loosening-temperature", BRASS_75, "cooling", "83.1", "K", RING, "read", "0.2",
          "the source rounds on the way"),
    Check("loosening-temperature", BRASS_2_5, "temperature", "-94", "degC", WEB, "read"),
    Check("loosening-temperature", BRASS_20, "temperature", "-80", "degC",
          "a physics textbook, brass in steel", "from memory"),
)  # fmt: skip
