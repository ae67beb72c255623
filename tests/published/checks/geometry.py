from published.check import Check

SCIPY = "SciPy cookbook, least squares circle"
GANDER = "Gander, Golub and Strebel, least-squares fitting of circles and ellipses, 1994"
SIX = {"points": "9,34; 35,10; -13,6; 10,-14; 23,27; 0,-10", "unit": "mm"}
OTHER = {"points": "1,7; 2,6; 5,8; 7,7; 9,5; 3,7", "unit": "mm"}
FIELD = {"points": "11.88,.08; 10.34,8.59; 2.58,9.54; -.29,1.95", "unit": "mm"}

CHECKS = (
    *(Check("circle", SIX, answer, printed, "mm", SCIPY, "read")
      for answer, printed in (("x", "10.50009"), ("y", "9.65995"), ("radius", "23.33353"))),
    *(Check("circle", OTHER, answer, printed, "mm", GANDER, "from memory")
      for answer, printed in (("x", "4.7398"), ("y", "2.9835"), ("radius", "4.7142"))),
    *(Check("circle", FIELD, answer, printed, "mm", "points of a public survey, geometric circle",
            "worked out")
      for answer, printed in (("x", "6.08113"), ("y", "3.62995"), ("radius", "6.69873"))),
)  # fmt: skip
