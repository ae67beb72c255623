from collections.abc import Iterator
from itertools import chain

from published.check import Check

PAGE = "public page on the physics of ignition"
GERMAN = "encyclopaedia on dwell"
ROUNDED = "the page rounds to whole per cent or milliseconds"


def sparks() -> Iterator[Check]:
    four = {"speed": "5000", "cylinders": "4"}
    yield Check("spark-rate", four, "sparks", "167", "per.s", PAGE, "read")
    yield Check("spark-rate", four, "a minute", "10000", "per.min", PAGE, "read")
    yield Check("spark-rate", four, "period", "6", "ms", PAGE, "read")
    six = {"speed": "5000", "cylinders": "6"}
    yield Check("spark-rate", six, "sparks", "250", "per.s", PAGE, "read")
    yield Check("spark-rate", six, "a minute", "15000", "per.min", PAGE, "read")
    yield Check("spark-rate", six, "period", "4", "ms", PAGE, "read")
    yield Check(
        "spark-rate",
        {"speed": "975", "cylinders": "2"},
        "sparks",
        "16.25",
        "per.s",
        "geometry, two cylinders",
        "worked out",
    )


def dwells() -> Iterator[Check]:
    given = {"angle": "60", "cylinders": "4", "speed": "5000"}
    yield Check("dwell", given, "closed", "4", "ms", PAGE, "read")
    yield Check("dwell", given, "share", "66.67", "%", PAGE, "read")
    given = {"angle": "35", "cylinders": "6", "speed": "5000"}
    yield Check("dwell", given, "share", "58", "%", PAGE, "read")
    yield Check("dwell", {"angle": "45", "cylinders": "4"}, "share", "50", "%", GERMAN, "read")
    yield Check("dwell", {"angle": "50", "cylinders": "4"}, "share", "56", "%", GERMAN, "read")
    yield Check(
        "dwell", {"angle": "52", "cylinders": "4"}, "share", "57.8", "%", GERMAN, "worked out"
    )
    yield Check("dwell", {"angle": "52", "cylinders": "4"}, "open", "38", "deg", GERMAN, "read")
    yield Check(
        "dwell-angle", {"share": "50", "cylinders": "4"}, "angle", "45", "deg", GERMAN, "read"
    )


def gaps() -> Iterator[Check]:
    given = {"gap": "0.015 in", "lift": "0.040 in", "cylinders": "4"}
    guides = "three repair guides: gap and dwell move oppositely"
    yield Check("dwell-from-gap", given, "wider gap", "less dwell", "", guides, "read")


def coils() -> Iterator[Check]:
    yield Check(
        "coil-time-constant",
        {"share": "90", "after": "4.4 ms"},
        "time constant",
        "1.9109",
        "ms",
        PAGE,
        "worked out",
    )
    coil = {"voltage": "12", "resistance": "3", "time_constant": "1.9109", "closed": "4"}
    yield Check("coil-current", coil, "share", "87", "%", PAGE, "read", "1 %", ROUNDED)
    yield Check(
        "magneto-advance",
        {"lag": "14", "turns": "0.5"},
        "running advance",
        "28",
        "deg",
        "common talk of tractor mechanics",
        "read",
    )
    yield Check(
        "magneto-lag",
        {"running": "28", "turns": "0.5"},
        "lag",
        "14",
        "deg",
        "common talk of tractor mechanics",
        "read",
    )
    yield Check(
        "degrees-in-time",
        {"time": "0.39934 ms", "speed": "1000"},
        "angle",
        "2.396",
        "deg",
        "geometry, α = 6·n·t",
        "worked out",
    )


CHECKS = tuple(chain(sparks(), dwells(), gaps(), coils()))
