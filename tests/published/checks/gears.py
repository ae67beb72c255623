from collections.abc import Iterator
from itertools import chain

from published.check import Check

AGMA = "AGMA recommended backlash ranges for coarse pitch gears"
NORTON = "Norton, Design of Machinery, gear example"
INVOLUTE = "geometry of the involute"
KHURMI = "Khurmi and Gupta, Theory of Machines"

# Centre distance that falls into the row, then diametral pitch: least and most, as printed.
TABLE = {
    "4": {"12": (".005", ".015")},
    "7": {"8": (".010", ".020"), "12": (".010", ".020")},
    "15": {"4": (".020", ".030"), "8": (".015", ".025"), "12": (".010", ".020")},
    "25": {"3": (".030", ".040"), "4": (".025", ".030"), "8": (".020", ".030")},
    "35": {"1": (".040", ".060"), "3": (".035", ".045"), "4": (".030", ".040"),
           "8": (".025", ".035")},
    "45": {"1": (".050", ".070"), "3": (".040", ".055"), "4": (".035", ".050"),
           "8": (".030", ".040")},
    "60": {"1": (".060", ".080"), "3": (".045", ".065"), "4": (".040", ".060")},
    "90": {"1": (".070", ".095"), "3": (".050", ".080")},
    "110": {"1": (".080", ".110")},
}  # fmt: skip


def table() -> Iterator[Check]:
    for centre, row in TABLE.items():
        for pitch, (least, most) in row.items():
            given = {"centre": f"{centre} in", "diametral_pitch": pitch}
            yield Check("recommended-backlash", given, "least", least, "in", AGMA, "read")
            yield Check("recommended-backlash", given, "most", most, "in", AGMA, "read")


def backlash() -> Iterator[Check]:
    norton = {"centre": "4.66667 in", "spread": "0.0933333 in", "pressure_angle": "20"}
    yield Check("exact-backlash", norton, "running angle", "22.89", "deg", NORTON, "from memory")
    yield Check("exact-backlash", norton, "backlash", ".07420", "in", INVOLUTE, "worked out")
    about = {"spread": "0.0933333 in", "pressure_angle": "20"}
    yield Check(
        "backlash-from-centre-distance", about, "backlash", ".06794", "in", INVOLUTE, "worked out"
    )
    running = {"spread": "0.0933333 in", "pressure_angle": "22.888"}
    yield Check(
        "backlash-from-centre-distance", running, "backlash", ".07880", "in", INVOLUTE, "worked out"
    )
    yield Check(
        "angular-play",
        {"lash": "0.0788037 in", "radius": "1.583333 in"},
        "angle",
        "171.1",
        "arcmin",
        NORTON,
        "from memory",
    )
    for spread, near, exact in (
        ("0.05", ".03640", ".03649"), ("0.1", ".07279", ".07318"), ("0.3", ".21838", ".22184"),
    ):  # fmt: skip
        given = {"spread": f"{spread} mm", "pressure_angle": "20"}
        yield Check(
            "backlash-from-centre-distance",
            given,
            "backlash",
            near,
            "mm",
            f"{INVOLUTE}, module 3, 20 and 40 teeth",
            "worked out",
        )
        yield Check(
            "exact-backlash",
            given | {"centre": "90 mm"},
            "backlash",
            exact,
            "mm",
            f"{INVOLUTE}, module 3, 20 and 40 teeth",
            "worked out",
        )
    yield Check(
        "angular-play",
        {"lash": "0.15 mm", "radius": "60 mm"},
        "angle",
        "0.14324",
        "deg",
        "geometry, θ = j/r",
        "worked out",
    )
    yield Check(
        "angular-play",
        {"lash": "0.15 mm", "radius": "60 mm"},
        "angle",
        "8.594",
        "arcmin",
        "geometry, θ = j/r",
        "worked out",
    )


def trains() -> Iterator[Check]:
    # 52 rpm of 975 is printed; the share of it is what the sum gives.
    yield Check(
        "train-ratio",
        {"meshes": "20/50, 25/75, 26/65"},
        "ratio",
        "0.0533",
        "",
        f"{KHURMI}, example 13.1, 975 to 52 rpm",
        "read",
    )
    yield Check(
        "train-ratio",
        {"meshes": "30/45, 45/75"},
        "ratio",
        "0.4",
        "",
        "Bhatt and Mehta, example 13.5, ratio 2.5 through an idler",
        "read",
    )
    wheels = {"driving": "38", "driven": "114", "circular_pitch": "25 mm"}
    source = f"{KHURMI}, example 13.2, page 433"
    yield Check("centre-distance", wheels, "centre distance", "604.79", "mm", source, "read")
    yield Check("centre-distance", wheels, "driving diameter", "302.39", "mm", source, "read")
    yield Check("centre-distance", wheels, "driven diameter", "907.2", "mm", source, "read")


def ends() -> Iterator[Check]:
    """A play of 0.15 mm at 60 mm is 0.0025 rad, and twice that at an end that turns twice."""
    geometry = "geometry, angle = arc over radius"
    train = {"radius": "60 mm", "ratio": "2", "end_radius": "500 mm"}
    yield Check("lash-at-end", train | {"lash": "0.15 mm"}, "movement", "2.50", "mm", geometry,
                "worked out")  # fmt: skip
    yield Check("lash-from-end", train | {"movement": "2.50 mm"}, "lash", "0.15", "mm", geometry,
                "worked out")  # fmt: skip
    for teeth, printed in (("19", "1.5833"), ("37", "3.0833")):
        yield Check("pitch-radius", {"teeth": teeth, "diametral_pitch": "6"}, "radius", printed,
                    "in", f"{NORTON}, centres 4.6667 in apart", "worked out")  # fmt: skip


CHECKS = tuple(chain(table(), backlash(), trains(), ends()))
