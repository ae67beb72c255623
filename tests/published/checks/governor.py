from collections.abc import Iterator

from published.check import Check, Misprint

KHURMI = "Khurmi and Gupta, Theory of Machines, chapter on governors"
SARKAR = "B. K. Sarkar, Theory of Machines"
BEVAN = "Bevan, Theory of Machines"
SHEET = "laboratory sheet of an Indian institute on the spring governor"
ROUNDED = "the book rounds ω to 30.4 and 32.5"
PI = "the source takes π as 3.147"
FEET = "the book takes g as 32.2 ft/s²"


def hartnells() -> Iterator[Check]:
    given = {
        "mass": "2.5 kg", "inner_radius": "120 mm", "outer_radius": "142.5 mm",
        "inner_speed": "290", "outer_speed": "310", "ball_arm": "120 mm", "sleeve_arm": "80 mm",
    }  # fmt: skip
    for answer, printed, unit in (
        ("inner force", "831", "N"), ("outer force", "1128", "N"), ("rate", "19.8", "N/mm"),
    ):  # fmt: skip
        yield Check("hartnell-spring", given, answer, printed, unit, KHURMI, "from memory",
                    "0.3 %", ROUNDED)  # fmt: skip
    yield Check("hartnell-spring", given, "lift", "15", "mm", KHURMI, "from memory")
    lifted = {
        "mass": "3 kg", "radius": "120 mm", "speed": "320", "ball_arm": "120 mm",
        "sleeve_arm": "80 mm", "rate": "20 kN/m", "lift": "15 mm",
    }  # fmt: skip
    source = f"{SARKAR}, illustration 7.7, page 203"
    yield Check("hartnell-speed", lifted, "force", "1217.0", "N", source, "read", "0.4 %", PI)
    yield Check("hartnell-speed", lifted, "speed", "327.9", "rpm", source, "read", "0.05 %", PI)
    given = {
        "mass": "3 kg", "inner_radius": "200 mm", "outer_radius": "202.93333 mm",
        "inner_speed": "240", "outer_speed": "258", "ball_arm": "110 mm", "sleeve_arm": "150 mm",
    }  # fmt: skip
    source = f"{SARKAR}, illustration 7.8, page 204"
    yield Check("hartnell-spring", given, "inner force", "557.8", "N", source, "read", "0.6 %", PI)
    yield Check("hartnell-spring", given, "rate", "24.1", "N/mm", source, "read", "0.6 %", PI)
    given = {
        "mass": "1.5 kg", "inner_radius": "87.692308 mm", "outer_radius": "122.30769 mm",
        "inner_speed": "430", "outer_speed": "415", "ball_arm": "75 mm", "sleeve_arm": "65 mm",
    }  # fmt: skip
    yield Check("hartnell-spring", given, "rate", "6135", "N/m", SHEET, "read", "0.1 %",
                "the keyed answer is rounded on the way")  # fmt: skip
    yield Check("hartnell-spring", given, "lift", "30", "mm", SHEET, "read")
    given = {
        "mass": "5 lb", "inner_radius": "5 in", "outer_radius": "7 in", "inner_speed": "240",
        "outer_speed": "252", "ball_arm": "6 in", "sleeve_arm": "4 in", "helping": "3 lbf/in",
    }  # fmt: skip
    source = f"{BEVAN}, example 4, page 468, a pair of 1½ lb/in each between the balls"
    yield Check("hartnell-spring", given, "rate", "23", "lbf/in", source, "read", "0.5 %", FEET)


def weighted() -> Iterator[Check]:
    given = {"arm": "0.4 m", "angle": "30", "rise": "20 mm"}
    source = f"{SARKAR}, illustration 7.1, page 196"
    yield Check("watt-speed", given, "growth", "3.0", "%", source, "read")
    source = f"{SARKAR}, illustration 7.2, page 197"
    for radius, printed in (("0.20 m", "126.5"), ("0.25 m", "146.9")):
        given = {"arm": "0.3 m", "radius": radius, "mass": "6 kg", "sleeve": "18 kg"}
        yield Check("porter-speed", given, "speed", printed, "rpm", source, "read")
    speeds = {"least": "126.50", "most": "146.89"}
    yield Check("sensitiveness", speeds, "range", "20.4", "rpm", source, "read")
    source = f"{BEVAN}, example 1, page 459"
    for radius, printed in (("8 in", "176.2"), ("10 in", "201.7")):
        given = {
            "arm": "12 in", "radius": radius, "mass": "15 lb", "sleeve": "120 lb",
            "lower_offset": "1.5 in",
        }  # fmt: skip
        yield Check("porter-speed", given, "speed", printed, "rpm", source, "read", "0.05 %", FEET)
    given = {
        "arm": "0.25 m", "extension": "0.10 m", "radius": "0.15 m", "mass": "5 kg",
        "sleeve": "40 kg",
    }  # fmt: skip
    source = f"{SARKAR}, illustration 7.10, page 206"
    yield Check("proell-speed", given, "speed", "163.9", "rpm", source, "read", "0.1 %",
                "the book takes 900·g/π² as 895")  # fmt: skip


def springs() -> Iterator[Check]:
    given = {
        "inner_radius": "3 in", "outer_radius": "4.5 in", "inner_speed": "300",
        "outer_speed": "318", "radius": "3.5 in",
    }  # fmt: skip
    source = f"{BEVAN}, example 3, page 466"
    yield Check("speed-between", given, "speed", "308", "rpm", source, "read")
    for radius, speed, printed in (("3 in", "300", "22.99"), ("4.5 in", "318", "38.74")):
        given = {"mass": "3 lb", "radius": radius, "speed": speed}
        yield Check("ball-pull", given, "pull", printed, "lbf", source, "worked out", "0.1 %", FEET)
    given = {
        "inner_radius": "10 cm", "outer_radius": "17.5 cm", "inner_force": "550 N",
        "outer_force": "1100 N",
    }  # fmt: skip
    yield Check("isochronous-tension", given, "tension", "183.5", "N", SHEET, "read", "0.15 %",
                "the keyed answer is rounded on the way")  # fmt: skip
    given = {"friction": "3 lbf", "sleeve_force": "90 lbf", "ball_weight": "15 lbf"}
    source = f"{BEVAN}, example 10, page 483"
    yield Check("insensitiveness", given, "share", "2.9", "%", source, "read")
    speeds = {"least": "290", "most": "310"}
    yield Check("sensitiveness", speeds, "sensitiveness", "6.67", "%", SHEET, "worked out")
    given = {"force": "100 N", "speed": "1000", "wanted": "1100", "rate": "10 N/mm"}
    formula = "centrifugal force at one radius, F ∝ n²"
    yield Check("spring-for-speed", given, "force", "121.0", "N", formula, "worked out")
    yield Check("spring-for-speed", given, "stretch", "2.100", "mm", formula, "worked out")


def droops() -> Iterator[Check]:
    manual = "US Army TM 55-1930-209-14&P-9-2, formula"
    speeds = {"no_load": "1000", "full_load": "900"}
    yield Check("droop", speeds, "droop", "11.11", "%", manual, "worked out")
    standard = "ISO 3046-4 and ISO 8528-5, formula"
    given = {**speeds, "by": "declared speed", "declared": "950"}
    yield Check("droop", given, "droop", "10.53", "%", standard, "worked out")
    page = "marine engineering page, divides by the no-load speed"
    given = {**speeds, "by": "no-load speed"}
    yield Check("droop", given, "droop", "10.00", "%", page, "worked out")
    service = "service manual of an industrial diesel, formulas"
    for peak, settled in (("1620", "1575"), ("1380", "1425")):
        given = {"before": "1500", "peak": peak, "settled": settled}
        yield Check("speed-swing", given, "momentary", "8.0", "%", service, "worked out")
        yield Check("speed-swing", given, "lasting", "5.0", "%", service, "worked out")
    table = "ISO 8528-5, table of operating limits"
    for name, droop, band, recovery in (
        ("G1", "8", "2.5", "10"), ("G2", "5", "1.5", "5"), ("G3", "3", "0.5", "3"),
    ):  # fmt: skip
        given = {"droop": droop, "band": band, "recovery": recovery}
        yield Check("governor-class", given, "class", name, "", table, "from memory")


CHECKS = (*hartnells(), *weighted(), *springs(), *droops())
MISPRINTS = (
    Misprint(
        "hartnell-speed",
        {
            "mass": "3 kg", "radius": "120 mm", "speed": "320", "ball_arm": "120 mm",
            "sleeve_arm": "80 mm", "rate": "20 kN/m", "lift": "15 mm",
        },
        "force",
        "1217.0",
        "1212.8",
        "N",
        f"{SARKAR}, illustration 7.7, page 203, as a student companion works it",
        "π is taken as 3.147",
    ),
    Misprint(
        "hartnell-spring",
        {
            "mass": "3 kg", "inner_radius": "200 mm", "outer_radius": "202.93333 mm",
            "inner_speed": "240", "outer_speed": "258", "ball_arm": "110 mm",
            "sleeve_arm": "150 mm",
        },
        "inner force",
        "557.8",
        "555.9",
        "N",
        f"{SARKAR}, illustration 7.8, page 204, as a student companion works it",
        "π is taken as 3.147",
    ),
)  # fmt: skip
