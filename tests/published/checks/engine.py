from published.check import Check

CHECKS = (
    Check(
        "displacement", {"bore": "3.25 in", "stroke": "3.375 in"}, "displacement", "27.984", "in3",
        "school slide set on displacement", "read", "0.1 %", "the source takes π/4 as 0.785",
    ),
    Check(
        "ring-gap", {"bore": "3.5 in"}, "most", "0.014", "in",
        "trade rule", "common practice, no source",
    ),
)  # fmt: skip
