from published.check import Check

SCIPY = "SciPy cookbook, least squares circle"
GANDER = "Gander, Golub and Strebel, least-squares fitting of circles and ellipses, 1994"
SIX = {"points": "9,34; 35,10; -13,6; 10,-14; 23,27; 0,-10", "unit": "mm"}
OTHER = {"points": "1,7; 2,6; 5,8; 7,7; 9,5; 3,7", "unit": "mm"}
HOLES = "worked example of trilateration, public page"
FAR = "the distances are rounded and the example gives the place it began from"
ROUND = "least squares circle of roundness, a = 2/N·Σ r·cos θ and b = 2/N·Σ r·sin θ"
FIELD = {"points": "11.88,.08; 10.34,8.59; 2.58,9.54; -.29,1.95", "unit": "mm"}

CHECKS = (
    *(Check("circle", SIX, answer, printed, "mm", SCIPY, "read")
      for answer, printed in (("x", "10.50009"), ("y", "9.65995"), ("radius", "23.33353"))),
    *(Check("circle", OTHER, answer, printed, "mm", GANDER, "from memory")
      for answer, printed in (("x", "4.7398"), ("y", "2.9835"), ("radius", "4.7142"))),
    *(Check("circle", FIELD, answer, printed, "mm", "points of a public survey, geometric circle",
            "worked out")
      for answer, printed in (("x", "6.08113"), ("y", "3.62995"), ("radius", "6.69873"))),
    *(Check("hole-by-distances", {"points": points, "distances": distances, "unit": "mm"}, answer,
            printed, "mm", HOLES, "read", within, FAR)
      for points, distances, within, places in (
          ("1,2; 1,1; 2,2", "1.414, 2.236, 1.0", "0.001", ("2", "3")),
          ("24.234,-13.902; 12.3242,234.12; 23.983,.321", "31.46, 229.953, 25.572", "0.01",
           ("-1.234", "4.567")),
          ("973.23,-123.221; -12.123,-98.001; -176.92,0", "1398.016, 990.537, 912.087", "0.01",
           ("12.345", "892.234")),
      )
      for answer, printed in zip(("x", "y"), places, strict=True)),
    *(Check("roundness", {"readings": readings, "unit": "thou"}, answer, printed, "thou", ROUND,
            "worked out")
      for readings, off_x, off_y, out in (
          ("3, 1, -3, -1", "3.000", "1.000", "0.000"),
          ("1, 0, -1, 0, 1, 0, -1, 0", "0.000", "0.000", "2.000"),
          ("3.5, 0.5, -2.5, -1.5", "3.000", "1.000", "1.000"),
      )
      for answer, printed in (("off x", off_x), ("off y", off_y), ("out of round", out))),
)  # fmt: skip
