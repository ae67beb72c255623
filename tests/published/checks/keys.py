"""Keys and bearings, as printed."""

from published.check import Check, Known

B171 = "ANSI B17.1, key size against shaft diameter"
DEPTHS = "ANSI B17.1, depth control values"
WE = "T. H. Wentzell, Machine Design, example 15.1, page 332"
CHART = "a printed chart of bearing sizes, which agrees with ISO 15"
ISO_15 = "ISO 15, boundary dimensions"
BORES = "ISO 15, bore numbers"

WENTZELL = {
    "power": "5 hp", "speed": "1750 rpm", "shaft": "1/2 in", "shear": "30500 psi",
    "crushing": "51000 psi", "safety": "2.5",
}  # fmt: skip


def _key(shaft: str, printed: str) -> list[Check]:
    given = {"shaft": f"{shaft} in"}
    return [Check("parallel-key", given, "key", f"{printed} × {printed} in", "", B171, "read")]


def _depth(shaft: str, s: str, t: str, form: str = "square") -> list[Check]:
    given = {"shaft": f"{shaft} in", "form": form}
    return [
        Check("key-seat-depth", given, "shaft", s, "in", DEPTHS, "read"),
        Check("key-seat-depth", given, "hub", t, "in", DEPTHS, "read"),
    ]


def _bearing(code: str, size: str, source: str = CHART, known: Known = "read") -> list[Check]:
    bore, outside, width = size.split("×")
    measured = {"bore": f"{bore} mm", "outside": f"{outside} mm", "width": f"{width} mm"}
    return [
        Check("bearing-size", {"code": code}, "bore", bore, "mm", source, known),
        Check("bearing-size", {"code": code}, "outside", outside, "mm", source, known),
        Check("bearing-size", {"code": code}, "width", width, "mm", source, known),
        Check("which-bearing", measured, "bearing", code, "", source, known),
    ]


READ = {
    "6000": "10×26×8", "6004": "20×42×12", "6005": "25×47×12", "6006": "30×55×13",
    "6007": "35×62×14", "6008": "40×68×15", "6200": "10×30×9", "6203": "17×40×12",
    "6204": "20×47×14", "6205": "25×52×15", "6206": "30×62×16", "6207": "35×72×17",
    "6208": "40×80×18", "6209": "45×85×19", "6210": "50×90×20", "6303": "17×47×14",
}  # fmt: skip
FROM_MEMORY = {"6305": "25×62×17", "6306": "30×72×19", "6307": "35×80×21", "6308": "40×90×23"}

CHECKS = (
    *_key("7/16", "3/32"), *_key("1/2", "1/8"), *_key("9/16", "1/8"), *_key("7/8", "3/16"),
    *_key("1 1/4", "1/4"), *_key("1 3/8", "5/16"), *_key("1 3/4", "3/8"), *_key("2 1/4", "1/2"),
    *_key("2 3/4", "5/8"), *_key("3 1/4", "3/4"), *_key("3 3/4", "7/8"), *_key("4 1/2", "1"),
    *_depth("1/2", ".430", ".560"), *_depth("5/8", ".517", ".709"),
    *_depth("3/4", ".644", ".837"), *_depth("1", ".859", "1.114"),
    *_depth("1 1/4", "1.112", "1.367"), *_depth("1 3/8", "1.201", "1.518"),
    *_depth("1 1/2", "1.289", "1.669"), *_depth("2", "1.718", "2.223"),
    *_depth("1", ".890", "1.083", "rectangular"),
    Check("key-length", WENTZELL, "torque", "180", "lbf.in", WE, "read"),
    Check("key-length", WENTZELL, "by shear", ".47", "in", WE, "read"),
    Check("key-length", WENTZELL, "by crushing", ".56", "in", WE, "read"),
    *(check for code, size in READ.items() for check in _bearing(code, size)),
    *(
        check
        for code, size in FROM_MEMORY.items()
        for check in _bearing(code, size, ISO_15, "from memory")
    ),
    Check("bearing-bore-code", {"code": "6200"}, "bore", "10", "mm", BORES, "from memory"),
    Check("bearing-bore-code", {"code": "6301"}, "bore", "12", "mm", BORES, "from memory"),
    Check("bearing-bore-code", {"code": "6202"}, "bore", "15", "mm", BORES, "from memory"),
    Check("bearing-bore-code", {"code": "6303"}, "bore", "17", "mm", BORES, "from memory"),
    Check("bearing-bore-code", {"code": "6204"}, "bore", "20", "mm", BORES, "from memory"),
    Check("bearing-bore-code", {"code": "30210"}, "bore", "50", "mm", BORES, "from memory"),
)  # fmt: skip
