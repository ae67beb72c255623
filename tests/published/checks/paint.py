"""Paint and air: dew point, when to paint, films and spreading, as printed."""

from published.check import Check, Misprint

ASHRAE = "general psychrometric library after the ASHRAE Handbook"
PRACTICE = "practice after ISO 8502-4, as several public texts quote it"
GENERAL = "Spreading-rate general information"
NOTE = "spreading-rate technical note 5.3"
BETWEEN = ("0.05", "the library solves ASHRAE's vapour pressure; the Magnus formula is near it")


def _dew(air: str, humidity: str, printed: str) -> Check:
    return Check("dew-point", {"air": f"{air} degC", "humidity": humidity}, "dew point", printed,
          "degC",
                 ASHRAE, "library", *BETWEEN)  # fmt: skip


CHECKS = (
    _dew("20", "50", "9.27"),
    _dew("20", "60", "12.01"),
    _dew("15", "85", "12.50"),
    _dew("10", "80", "6.71"),
    _dew("25", "50", "13.86"),
    _dew("30", "70", "23.93"),
    _dew("5", "90", "3.50"),
    Check("may-i-paint", {"air": "20 degC", "humidity": "60", "metal": "14.9 degC"}, "paint now",
          "no", "",
          PRACTICE, "read"),
    Check("may-i-paint", {"air": "20 degC", "humidity": "60", "metal": "15.1 degC"}, "paint now",
          "yes", "",
          PRACTICE, "read"),
    Check("spreading-rate", {"solids": "65", "dry": "5 thou"}, "in theory", "208.52", "ft2/gal",
          GENERAL, "read", "0.02 %", "the source rounds 231/0.144 to 1604"),
    Check("spreading-rate", {"solids": "65", "dry": "125 um"}, "in theory", "5.2", "m2/l", GENERAL,
          "read"),
    Check("spreading-rate", {"solids": "71", "dry": "125 um"}, "in theory", "5.7", "m2/l", NOTE,
          "read"),
    Check("wet-film", {"dry": "125 um", "solids": "71"}, "wet film", "176", "um", NOTE, "read"),
    Check("paint-needed", {"area": "5.2 m2", "dry": "125 um", "solids": "65", "loss": "0"}, "paint",
          "1.00", "l", f"{GENERAL}: 5.2 m² a litre", "worked out"),
    Check("paint-needed", {"area": "208.52 ft2", "dry": "5 thou", "solids": "65", "loss": "0"},
          "paint", "1.000", "gal", f"{GENERAL}: 208.52 ft² a gallon", "worked out"),
    Check("recoat-window", {"earliest": "16 h", "sheet_at": "20 degC", "metal": "10 degC"},
          "earliest", "32", "h", "twice the time for 10 °C less", "common practice, no source"),
    Check("film-from-wet", {"wet": "100 um", "solids": "50"}, "dry film", "50", "um", NOTE, "read"),
)  # fmt: skip

MISPRINTS = (
    Misprint("spreading-rate", {"solids": "65", "dry": "125 um"}, "in theory", "0.52", "5.2",
          "m2/l",
             GENERAL, "its metric formula is printed with 100, its own example uses 1000"),
)  # fmt: skip
