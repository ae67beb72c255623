from published.check import Check

FLOYD = "T. L. Floyd, Electric Circuit Fundamentals, American wire gauge"
ARMY = "US Army TM 10-3930-671-24, F-303"
MAKER = "a battery maker's table at 80 °F"
ACID = "three sources on the hydrometer's temperature correction"
COPPER = "copper of 10.371 ohm for a circular mil-foot at 20 °C"
FUSES = "a quarter above the current, next size"
PLACES = dict(within="0.1 %", why="the table rounds its resistivity otherwise")

WIRES = (
    ("4/0", ".4600", ".049"), ("2/0", ".3648", ".0780"), ("1/0", ".32485", ".0983"),
    ("1", ".2893", ".1240"), ("2", ".25763", ".1563"), ("4", ".20431", ".2485"),
    ("6", ".16202", ".3951"), ("8", ".12849", ".6282"), ("10", ".10189", ".9989"),
    ("12", ".0808", "1.588"), ("14", ".06408", "2.525"), ("16", ".05082", "4.016"),
    ("18", ".0403", "6.385"),
)  # fmt: skip
BATTERY = (
    ("1.265", "100", "12.65", "-59"), ("1.225", "75", "12.45", "-48"),
    ("1.190", "50", "12.24", "-37"), ("1.155", "25", "12.06", "-27"),
    ("1.120", "0", "11.89", "-23"),
)  # fmt: skip


def run(current: str, gauge: str, system: str) -> dict[str, str]:
    return {"current": current, "gauge": gauge, "out": "6 ft", "back": "4 ft", "system": system}


CHECKS = (
    *(Check("wire-size", {"gauge": gauge}, "diameter", across, "in", FLOYD, "read", "0.02 %",
            "the table cuts digits off") for gauge, across, _ in WIRES),
    *(Check("wire-resistance", {"gauge": gauge}, "for each length", ohms, "ohm/kft", FLOYD, "read",
            **PLACES) for gauge, _, ohms in WIRES),
    *(Check("wire-gauge", {"diameter": f"{across} in"}, "nearest gauge", gauge, "", FLOYD, "read")
      for gauge, across, _ in WIRES),
    Check("joint-drop", {"current": "200 A", "resistance": "0.01 ohm"}, "drop", "2", "V",
          "page on testing starters", "read"),
    Check("starter-drop-limit", {"current": "100 A"}, "limit", "0.20", "V", ARMY, "read"),
    Check("starter-drop-limit", {"current": "300 A"}, "limit", "0.60", "V", ARMY, "worked out"),
    Check("starter-drop-limit", {"current": "300 A", "where": "positive cable"}, "limit", "0.4",
          "V", ARMY, "read"),
    Check("starter-drop-limit",
          {"current": "300 A", "where": "positive cable", "measured": "0.41 V"},
          "within the limit", "no: clean and remake its joints", "", ARMY, "read"),
    Check("voltage-drop", run("300 A", "2/0", "6 V"), "drop", "0.2338", "V", COPPER, "worked out"),
    Check("voltage-drop", run("300 A", "2/0", "6 V"), "share", "3.90", "%", COPPER, "worked out"),
    Check("voltage-drop", run("300 A", "1", "6 V"), "drop", "0.3718", "V", COPPER, "worked out"),
    Check("voltage-drop", run("200 A", "2", "12 V"), "drop", "0.3125", "V", COPPER, "worked out"),
    Check("voltage-drop", run("200 A", "2", "12 V"), "share", "2.60", "%", COPPER, "worked out"),
    Check("starter-cable",
          {"current": "300 A", "out": "6 ft", "back": "4 ft", "system": "6 V", "share": "3.90 %"},
          "gauge", "2/0", "", COPPER, "worked out"),
    *(Check("battery-charge", {"reading": acid}, "charge", charge, "%", MAKER, "read")
      for acid, charge, _, _ in BATTERY),
    *(Check("battery-charge", {"reading": acid, "cells": "6"}, "voltage at rest", volts, "V",
            MAKER, "read") for acid, _, volts, _ in BATTERY),
    *(Check("charge-from-voltage", {"volts": f"{volts} V", "cells": "6"}, "charge", charge, "%",
            MAKER, "read") for _, charge, volts, _ in BATTERY),
    *(Check("battery-freezing", {"reading": acid}, "freezing point", frost, "degC",
            f"{MAKER}; others contradict it", "read") for acid, _, _, frost in BATTERY),
    *(Check("battery-charge", {"reading": "1.225", "temperature": f"{warmth} F"}, "correction",
            by, "", ACID, "read")
      for warmth, by in (("0", "-0.032"), ("60", "-0.008"), ("80", "0.000"), ("100", "0.008"),
                         ("160", "0.032"))),
    Check("battery-charge", {"reading": "1.225", "temperature": "36.6667 degC"}, "correction",
          "0.0072", "", ACID, "read"),
    Check("battery-voltage", {"acid": "1.265", "cells": "6"}, "voltage", "12.63", "V",
          "battery page, cell voltage = specific gravity + 0.84", "read"),
    Check("battery-voltage", {"acid": "1.265", "cells": "6"}, "voltage", "12.65", "V", MAKER,
          "read",
          "0.3 %", "the rule of 0.84 only comes near the table"),
    Check("ballast-voltage", {"supply": "12 V", "coil": "1.5 ohm", "ballast": "1.5 ohm"},
          "current", "4.0", "A", "Ohm's law", "worked out"),
    Check("ballast-voltage", {"supply": "12 V", "coil": "1.5 ohm", "ballast": "1.5 ohm"},
          "voltage", "6.0", "V", "Ohm's law", "worked out"),
    Check("ballast-resistor", {"supply": "12 V", "coil": "1.5 ohm", "wanted": "6 V"},
          "resistor", "1.5", "ohm", "Ohm's law", "worked out"),
    Check("lamp-current", {"power": "36 W", "voltage": "6 V", "lamps": "2"}, "current", "12.0",
          "A", "definition of electrical power", "worked out"),
    Check("fuse-size", {"currents": "12 A"}, "fuse", "15.0", "A", FUSES,
          "common practice, no source"),
)  # fmt: skip
