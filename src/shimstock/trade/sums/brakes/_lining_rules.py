"""Limits of lining thickness that are in print: formula shown, mm, and whose rule it is."""

LORRY = "49 CFR 393.47, road law for lorries and buses, no rule for a farm tractor: "

LIMITS: dict[str, tuple[str, float, str]] = {
    "shop rule": (
        "25.4/32", 25.4 / 32,
        "Shop rule: 1/32 in above the rivet heads. Common practice; the book goes before it.",
    ),
    "heavy vehicle manual": (
        "6.3", 6.3, "A heavy-vehicle manual: replace below 6.3 mm; an analogue for a farm tractor.",
    ),
    "steering air drum strip": (
        "25.4·3/16", 25.4 * 3 / 16, LORRY + "steering axle, air drum, one continuous strip.",
    ),
    "steering air drum pads": (
        "25.4/4", 25.4 / 4, LORRY + "steering axle, air drum, two pads on a shoe.",
    ),
    "steering air disc": ("25.4/8", 25.4 / 8, LORRY + "steering axle, air disc."),
    "steering hydraulic": (
        "25.4/16", 25.4 / 16, LORRY + "steering axle, hydraulic or electric.",
    ),
    "other air drum": ("25.4/4", 25.4 / 4, LORRY + "other axles, air drum."),
    "other air disc": ("25.4/8", 25.4 / 8, LORRY + "other axles, air disc."),
    "other hydraulic": ("25.4/16", 25.4 / 16, LORRY + "other axles, hydraulic or electric."),
}  # fmt: skip
