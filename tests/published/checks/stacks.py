from published.check import Check

SHIGLEY = "Shigley, Mechanical Engineering Design, 9th edition, example 1-3"
CHASE = "Chase, tolerance analysis of assemblies, shaft and housing"
DRAKE = "Drake, Dimensioning and Tolerancing Handbook, chapter 9, motor assembly"
GAP = "1.750 ± .003; -0.750 ± .001; -0.120 ± .005; -0.875 ± .001"
HOUSING = (
    "8.000 ± .008; 0.400 ± .002; 0.400 ± .002; -0.0505 ± .0015; -0.5093 ± .0025; -7.711 ± .006; "
    "-0.5093 ± .0025"
)
MOTOR = (
    "-0.3595 ± .0155; 0.0320 ± .0020; 0.0600 ± .0030; 0.4305 ± .0075; 0.1200 ± .0050; "
    "1.5030 ± .0070; 0.1200 ± .0050; 0.4305 ± .0075; 0.4500 ± .0070; -3.0250 ± .0060; "
    "0.3000 ± .0300"
)
SCALED = {"bought": "0.0015, 0.0025, 0.0025 in", "chosen": "0.008, 0.002, 0.002, 0.006 in",
          "wanted": "0.015 in"}  # fmt: skip
TEN = "; ".join(["1 ± 0.1"] * 10)

CHECKS = (
    Check("stack", {"links": GAP}, "nominal", ".005", "in", SHIGLEY, "read"),
    Check("stack", {"links": GAP}, "worst", ".010", "in", SHIGLEY, "read"),
    Check("stack", {"links": GAP}, "likely", ".006", "in", SHIGLEY, "worked out"),
    Check("stack", {"links": HOUSING}, "nominal", ".0199", "in", CHASE, "from memory"),
    Check("stack", {"links": HOUSING}, "worst", ".0245", "in", CHASE, "from memory"),
    Check("stack", {"links": HOUSING}, "likely", ".01108", "in", CHASE, "from memory"),
    Check("stack", {"links": MOTOR}, "nominal", "0.0615", "in", DRAKE, "from memory"),
    Check("stack", {"links": MOTOR}, "worst", "0.0955", "in", DRAKE, "from memory"),
    Check("stack", {"links": MOTOR}, "likely", "0.0381", "in", DRAKE, "from memory"),
    Check("tolerance-scale", SCALED, "worst", ".47222", "", CHASE, "from memory"),
    Check("tolerance-scale", SCALED, "likely", "1.39526", "", CHASE, "from memory", "0.00002",
          "the last digit differs by one from the paper's own inputs"),
    Check("stack", {"links": TEN}, "worst", "1.0", "in", "ten parts ± 0.1, public page", "read"),
    Check("stack", {"links": TEN}, "likely", "0.316", "in", "ten parts ± 0.1, public page",
          "read"),
)  # fmt: skip
