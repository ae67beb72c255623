from collections.abc import Iterator
from itertools import chain

from published.check import Check

BEER = "Beer and Johnston, Statics, chapter 4"
COURSE = "course on tractor systems, weighing level and raised, by statics"
MANUALS = "formula of four implement makers' manuals"
MOMENTS = "statics, moments about where the rear wheels stand"
CHART = "sling maker's chart"
OPERATORS = "plant operators' reference page"


def axles() -> Iterator[Check]:
    given = {"weight": "2100 lb", "wheelbase": "60 in", "behind": "40 in", "load": "900 lb",
             "load_behind": "-50 in"}  # fmt: skip
    yield Check("axle-loads", given, "one rear wheel", "325", "lb", BEER, "from memory")
    yield Check("axle-loads", given, "one front wheel", "1175", "lb", BEER, "from memory")
    weighed = {"weight": "2500 kg", "front": "950 kg", "wheelbase": "2.2 m", "raised": "0.6 m",
               "front_raised": "900 kg"}  # fmt: skip
    yield Check("centre-of-gravity", weighed, "forward", ".8360", "m", COURSE, "worked out")
    yield Check("centre-of-gravity", weighed, "above", ".15522", "m", COURSE, "worked out")
    small = {"weight": "2500 kg", "front": "950 kg", "wheelbase": "2200 mm",
             "raised": "581.326 mm", "front_raised": "867.354 kg", "lower": "350 mm"}  # fmt: skip
    yield Check(
        "centre-of-gravity",
        small,
        "above",
        "150.0",
        "mm",
        "statics of a tractor made up with its centre 150 mm above the rear axle and "
        "small front wheels, tilted 15 degrees",
        "worked out",
    )
    ballast = {"weight": "2500 kg", "front": "950 kg", "implement": "1000 kg",
               "front_arm": "1.2 m", "wheelbase": "2.2 m", "hitch": "1.0 m",
               "overhang": "0.6 m"}  # fmt: skip
    yield Check("front-ballast", ballast, "least ballast", "179.41", "kg", MANUALS, "worked out")
    yield Check("front-ballast", ballast, "front axle", "500.0", "kg", MANUALS, "worked out")
    pulled = {"pull": "10 kN", "hitch_height": "0.5 m", "wheelbase": "2 m", "front": "9 kN"}
    for answer, printed in (("moved", "2.5"), ("front axle", "6.5"), ("lifting pull", "36.0")):
        yield Check("weight-transfer", pulled, answer, printed, "kN", MOMENTS, "worked out")
    light = ballast | {"implement": "600 kg"}
    yield Check("front-ballast", light, "needed", "no", "", MANUALS, "worked out")


def slings() -> Iterator[Check]:
    for angle, factor in (
        ("90", "1.000"), ("75", "1.035"), ("60", "1.155"), ("50", "1.305"), ("45", "1.414"),
        ("40", "1.555"), ("35", "1.742"), ("30", "2.000"),
    ):  # fmt: skip
        yield Check(
            "sling-tension",
            {"load": "1 t", "angle": angle},
            "factor",
            factor,
            "",
            CHART,
            "read",
            "0.1 %",
            "the chart rounds its factors",
        )
    for included, factor in (
        ("0", "1.00"), ("30", "1.04"), ("60", "1.16"), ("90", "1.41"), ("120", "2.00"),
    ):  # fmt: skip
        yield Check(
            "sling-tension",
            {"load": "1 t", "included": included},
            "factor",
            factor,
            "",
            OPERATORS,
            "read",
            "0.5 %",
            "the page rounds its factors up",
        )
    yield Check(
        "sling-by-length",
        {"load": "1200 lb", "leg": "120 in", "height": "96 in"},
        "leg",
        "1500",
        "lb",
        CHART,
        "read",
    )
    yield Check(
        "sling-by-length",
        {"load": "1 t", "leg": "16.25 in", "height": "10 in"},
        "factor",
        "1.625",
        "",
        "crane training page",
        "read",
    )
    leg = {"load": "1 t", "leg": "96 in", "height": "84 in", "rated": "8000 lb"}
    yield Check("sling-by-length", leg, "rated", "7000", "lb", CHART, "read")
    for angle, share in (
        ("75", ".966"), ("60", ".866"), ("50", ".766"), ("45", ".707"), ("40", ".643"),
        ("35", ".574"), ("30", ".500"),
    ):  # fmt: skip
        yield Check(
            "sling-tension",
            {"load": "1 t", "angle": angle},
            "rating share",
            share,
            "",
            CHART,
            "read",
        )


CHECKS = tuple(chain(axles(), slings()))
