"""Shims, as printed."""

from published.check import Check

GEARBOX = "a car gearbox manual's page: fitted 0.65, end play 0.30, preload 0.20"
OUTBOARD = "an outboard motor manual's page: 0.52 fitted and 0.22 too tight"
GEARBOX_GIVEN = {"fitted": "0.65 mm", "end_play": "0.30 mm", "preload": "0.20 mm"}
OUTBOARD_GIVEN = {"fitted": "0.52 mm", "end_play": "-0.22 mm"}
GEARBOX_PACK = {"target": "1.15 mm", "drawer": "0.10x4, 0.15x2, 0.50x3 mm"}
GEARBOX_AFTER = {"fitted": "0.65 mm", "end_play": "0.30 mm", "pack": "1.15 mm"}

CHECKS = (
    Check("shim-thickness", GEARBOX_GIVEN, "thickness", "1.15", "mm", GEARBOX, "read"),
    Check("shim-thickness", OUTBOARD_GIVEN, "thickness", "0.30", "mm", OUTBOARD, "read"),
    Check(
        "shim-pack",
        GEARBOX_PACK,
        "thickness",
        "1.15",
        "mm",
        "sum of whole numbers of shims: 0.15 + 2·0.50",
        "worked out",
    ),
    Check(
        "shim-pack",
        GEARBOX_PACK,
        "pieces",
        "3",
        "",
        "no two of these shims are 1.15 thick",
        "worked out",
    ),
    Check("end-play-after", GEARBOX_AFTER, "end play", "-0.20", "mm", GEARBOX, "read"),
    Check("end-play-after", GEARBOX_AFTER, "it is", "preload", "", GEARBOX, "read"),
)
