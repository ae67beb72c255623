"""Oil and coolant: grades, viscosities and antifreeze, as printed."""

from published.check import Check, Known

ESPOSITO = "A. Esposito, Fluid Power with Applications, example"
ASHRAE = "ASHRAE data for aqueous ethylene glycol in a general property library"
J300 = "SAE J300, December 1999 and January 2015"
J306 = "SAE J306, February 2019, lubricant reference chart"


def _engine(edition: str, typed: str, grade: str, *limits: str) -> tuple[Check, ...]:
    """The grade that a viscosity falls into, and the limits it lies between."""
    given = {"viscosity": typed, "edition": edition}
    said = Check("engine-oil-grade", given, "grade", grade, "", J300, "read")
    return said, *(
        Check("engine-oil-grade", given, answer, printed, "mm2/s", J300, "read")
        for answer, printed in zip(("least", "below"), limits, strict=True)
    )


def _winter(
    grade: str, at: int, least: str, known: Known = "from memory", cranking: str = "",
) -> tuple[Check, ...]:  # fmt: skip
    given = {"cranking": "3000", "cranking_at": f"{at} degC", "viscosity": "14"}
    found = [Check("winter-oil-grade", given, "least", least, "mm2/s", J300, "read"),
             Check("winter-oil-grade", given, "grade", grade, "", J300, known)]  # fmt: skip
    if cranking:
        found += [
            Check("winter-oil-grade", given, "most cranking", cranking, "cP", J300, "read"),
            Check("winter-oil-grade", given, "pumping at", f"{at - 5}", "degC", J300, "read"),
            Check("winter-oil-grade", given, "most pumping", "60000", "cP", J300, "read"),
        ]
    return tuple(found)


def _gear(
    typed: str, grade: str, least: str, below: str, edition: str = "2019"
) -> tuple[Check, ...]:
    given = {"viscosity": typed, "edition": edition}
    known: Known = "read" if edition == "2019" else "from memory"
    source = J306 if edition == "2019" else "SAE J306 before 2005"
    found = [Check("gear-oil-grade", given, "grade", grade, "", source, known),
             Check("gear-oil-grade", given, "least", least, "mm2/s", source, known)]  # fmt: skip
    if below:
        found.append(Check("gear-oil-grade", given, "below", below, "mm2/s", source, known))
    return tuple(found)


def _freezing(share: str, printed: str) -> tuple[Check, Check]:
    return (
        Check("freezing-point", {"share": share}, "freezing point", printed, "degC", ASHRAE,
              "library"),
        Check("antifreeze-share", {"freezing": f"{printed} degC"}, "share", share, "%", ASHRAE,
              "library"),
    )  # fmt: skip


CHECKS = (
    *_engine("1999", "8", "20", "5.6", "9.3"),
    *_engine("2015", "8.5", "20", "6.9", "9.3"),
    *_engine("2015", "9.3", "30", "9.3", "12.5"),
    *_engine("1999", "12.5", "40", "12.5", "16.3"),
    *_engine("2015", "16.3", "50", "16.3", "21.9"),
    *_engine("1999", "21.9", "60", "21.9", "26.1"),
    *_winter("0W", -35, "3.8"),
    *_winter("5W", -30, "3.8"),
    *_winter("10W", -25, "4.1", "read", "7000"),
    *_winter("15W", -20, "5.6"),
    *_winter("20W", -15, "5.6", "read", "9500"),
    *_winter("25W", -10, "9.3"),
    *_gear("8.5", "80", "8.5", "11.0"),
    *_gear("11", "85", "11.0", "13.5"),
    *_gear("13.5", "90", "13.5", "18.5"),
    *_gear("18.5", "110", "18.5", "24.0"),
    *_gear("24", "140", "24.0", "32.5"),
    *_gear("32.5", "190", "32.5", "41.0"),
    *_gear("41", "250", "41.0", ""),
    *_gear("20", "90", "13.5", "24", "before 2005"),
    *_gear("35", "140", "24", "41", "before 2005"),
    Check("winter-gear-oil", {"thick_at": "-40 degC"}, "grade", "75W", "", J306, "read"),
    Check("winter-gear-oil", {"thick_at": "-26 degC"}, "grade", "80W", "", J306, "read"),
    Check("winter-gear-oil", {"thick_at": "-12 degC"}, "grade", "85W", "", J306, "read"),
    Check("viscosity-index", {"poor": "400", "good": "150", "index": "80"}, "viscosity", "200",
          "", f"{ESPOSITO} 2.14", "read"),
    Check("viscosity-index", {"poor": "400", "good": "150", "oil": "200"}, "index", "80",
          "", f"{ESPOSITO} 2.14", "read"),
    *(Check("oil-viscosity", {"cold": "100 mm2/s", "hot": "11.2 mm2/s", "at": at}, "viscosity",
            printed, "mm2/s", "ASTM D341, log log (ν + 0.7) = A − B·log T", "worked out")
      for at, printed in (("40 degC", "100.0"), ("60 degC", "39.86"), ("100 degC", "11.20"))),
    Check("antifreeze-top-up", {"system": "12 l", "have": "20", "want": "40"}, "drain", "3.00",
          "l", "balance of volumes: 9 l at 20 % and 3 l neat are 4.8 l in 12", "worked out"),
    Check("sus-to-cst", {"seconds": "230"}, "viscosity", "50", "mm2/s", f"{ESPOSITO} 2.12",
          "read"),
    Check("sus-to-cst", {"seconds": "230", "gravity": "0.9"}, "thickness", "45", "cP",
          f"{ESPOSITO} 2.12", "read"),
    Check("glycol-volume", {"system": "1000 gal", "by_weight": "30", "gravity": "1.1155"},
          "glycol", "277.6", "gal", "page that quotes the ASHRAE Handbook, Fundamentals, 1993",
          "read"),
    *_freezing("20", "-9.0"),
    *_freezing("30", "-15.7"),
    *_freezing("40", "-24.8"),
    *_freezing("50", "-37.1"),
    *_freezing("60", "-52.0"),
)  # fmt: skip
