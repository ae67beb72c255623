"""Brakes: shoes, bands, blocks, rivets, linings and stopping, as printed."""

from published.check import Check, Misprint

BHANDARI = "V. B. Bhandari, Design of Machine Elements, example"
JINDAL = "U. C. Jindal, Machine Design, example"
SHIGLEY = "J. E. Shigley, Mechanical Engineering Design,"
EU = "Commission Delegated Regulation (EU) 2015/68, Annex II"
LORRY = "49 CFR 393.47"

BHANDARI_SHOES = {
    "friction": "0.32", "width": "40 mm", "radius": "125 mm", "pivot": "99.9977999758 mm",
    "start": "0", "end": "120", "arm": "187.5 mm", "pressure": "1 MPa",
}  # fmt: skip
BHANDARI_PEDAL = {k: v for k, v in BHANDARI_SHOES.items() if k != "pressure"} | {
    "pedal": "2089.80 N", "ratios": "1", "shared": "1",
}  # fmt: skip
JINDAL_WAY = {"speed": "65 km/h", "deceleration": "4.513889 m/s2", "reaction": "0 s"}
EU_WAY = {"speed": "30 km/h", "deceleration": "3.549383 m/s2", "reaction": "0.54 s"}
SHIGLEY_SHOES = {
    "friction": "0.32", "width": "32 mm", "radius": "150 mm", "pivot": "122.654 mm",
    "start": "0", "end": "126", "arm": "212 mm", "pressure": "1000 kPa", "tilt": "24",
}  # fmt: skip
SHIGLEY_16_1 = {
    "friction": "0.28", "width": "40 mm", "radius": "150 mm", "pivot": "125 mm",
    "start": "0", "end": "120", "arm": "216.50635 mm", "force": "2.2 kN",
}  # fmt: skip
SHIGLEY_16_7 = {
    "friction": "0.30", "width": "2 in", "radius": "10 in", "pivot": "12.3693169 in",
    "start": "6", "end": "136", "arm": "28 in", "pressure": "150 psi",
}  # fmt: skip
JINDAL_SHOES = {
    "friction": "0.3", "width": "50 mm", "radius": "160 mm", "pivot": "132.792168 mm",
    "start": "0", "end": "120", "arm": "230 mm", "pressure": "1 MPa",
}  # fmt: skip
BHANDARI_BLOCK = {
    "friction": "0.2", "width": "100 mm", "radius": "250 mm", "span": "100", "pressure": "0.5 MPa",
}  # fmt: skip
JINDAL_BLOCKS = {
    "friction": "0.3", "width": "40 mm", "radius": "160 mm", "span": "120",
    "pressure": "0.9 MPa", "blocks": "2",
}  # fmt: skip
BHANDARI_BAND = {
    "friction": "0.25", "wrap": "240", "radius": "300 mm", "slack_arm": "200 mm",
    "tight_arm": "50 mm", "lever": "950 mm", "tight": "15000 N",
}  # fmt: skip
JINDAL_BAND = {
    "friction": "0.22", "wrap": "225", "radius": "0.2 m", "slack_arm": "100 mm",
    "tight_arm": "30 mm", "lever": "350 mm", "tight": "9600 N",
}  # fmt: skip
BEVAN_BAND = {
    "friction": "0.3", "wrap": "270", "radius": "10.5 in", "slack_arm": "4 in", "lever": "18 in",
    "torque": "8265 lbf.in",  # half a ton of 2204 lb on a drum of 15 in
}  # fmt: skip
WENTZELL_STOP = {
    "mass": "3500 lb", "speed": "73 ft/s", "drums": "1", "drum_mass": "40 lb",
    "specific_heat": "500.3638 J/kg.K",  # 93 ft·lbf for a pound and degree Fahrenheit
    "deceleration": "20 ft/s2",
}  # fmt: skip
JINDAL_STOP = {
    "mass": "1100 kg", "speed": "65 km/h", "drums": "4", "drum_mass": "12 kg",
    "specific_heat": "460 J/kg.K", "rotating": "10", "time": "4 s", "wheel_radius": "0.22 m",
}  # fmt: skip
RIVETS = {
    "force": "10 kN", "rivets": "4", "shear": "60 MPa", "crushing": "120 MPa",
    "thickness": "3 mm", "hole": "8 mm", "across": "2", "tension": "80 MPa",
}  # fmt: skip

SINES = ("0.5 %", "the source goes on with rounded sines and angles")
FOUR = ("0.1 %", "the source rounds to four figures")
G = ("0.1 %", "the source takes gravity as 32.2 ft/s²")


def _shigley_16_2(answer: str, printed: str, unit: str, *off: str) -> Check:
    within, why = off or ("", "")
    source = f"{SHIGLEY} example 16-2"
    return Check("two-shoe-brake", SHIGLEY_SHOES, answer, printed, unit, source, "from memory",
                 within, why)  # fmt: skip


def _lining(rule: str, printed: str, unit: str, source: str) -> Check:
    return Check("lining-left", {"thickness": "10 mm", "rule": rule}, "limit", printed, unit,
                 source, "read")  # fmt: skip


CHECKS = (
    Check("two-shoe-brake", BHANDARI_SHOES, "force", "2089.80", "N", f"{BHANDARI} 12.8", "read"),
    Check("two-shoe-brake", BHANDARI_SHOES, "torque", "434831.05", "N.mm", f"{BHANDARI} 12.8",
          "read"),
    Check("shoe-brake", BHANDARI_SHOES, "force", "2089.80", "N", f"{BHANDARI} 12.8", "read"),
    Check("shoe-brake", BHANDARI_SHOES, "torque", "300000", "N.mm", f"{BHANDARI} 12.8", "read"),
    Check("self-locking-shoe", {k: v for k, v in BHANDARI_SHOES.items() if k not in
          ("arm", "pressure")}, "self-locking", "no", "", f"{BHANDARI} 12.8", "read"),
    _shigley_16_2("friction moment", "304", "N.m"),
    _shigley_16_2("normal moment", "788", "N.m", *SINES),
    _shigley_16_2("force", "2.28", "kN"),
    _shigley_16_2("leading torque", "366", "N.m"),
    _shigley_16_2("trailing pressure", "443", "kPa"),
    _shigley_16_2("trailing torque", "162", "N.m"),
    _shigley_16_2("torque", "528", "N.m"),
    _shigley_16_2("leading hinge x", "-1.410", "kN"),
    _shigley_16_2("leading hinge y", "4.839", "kN", *SINES),
    _shigley_16_2("leading hinge", "5.04", "kN"),
    _shigley_16_2("trailing hinge x", "0.678", "kN"),
    _shigley_16_2("trailing hinge y", "0.538", "kN", *SINES),
    _shigley_16_2("trailing hinge", "0.866", "kN", *SINES),
    Check("two-shoe-brake", SHIGLEY_16_1, "leading pressure", "734", "kPa",
          f"{SHIGLEY} 9th edition, problem 16-1", "read"),
    Check("two-shoe-brake", SHIGLEY_16_1, "leading torque", "277.6", "N.m",
          f"{SHIGLEY} 9th edition, problem 16-1", "worked out"),
    Check("two-shoe-brake", SHIGLEY_16_1, "trailing torque", "144.4", "N.m",
          f"{SHIGLEY} 9th edition, problem 16-1", "worked out"),
    Check("two-shoe-brake", SHIGLEY_16_1, "torque", "422.0", "N.m",
          f"{SHIGLEY} 9th edition, problem 16-1", "worked out"),
    Check("outside-shoe", SHIGLEY_16_7, "normal moment", "53300", "lbf.in",
          f"{SHIGLEY} problem 16-7, solution", "read", *FOUR),
    Check("outside-shoe", SHIGLEY_16_7, "force", "1446", "lbf",
          f"{SHIGLEY} problem 16-7, solution", "read"),
    Check("outside-shoe", SHIGLEY_16_7, "torque", "15420", "lbf.in",
          f"{SHIGLEY} problem 16-7, solution", "read", *FOUR),
    Check("block-brake", BHANDARI_BLOCK, "pivot distance", "280.588", "mm", f"{BHANDARI} 12.7",
          "read"),
    Check("block-brake", BHANDARI_BLOCK, "torque", "957555.55", "N.mm", f"{BHANDARI} 12.7", "read"),
    Check("block-brake", BHANDARI_BLOCK, "push", "17063.36", "N", f"{BHANDARI} 12.7", "read"),
    Check("block-brake", BHANDARI_BLOCK, "drag", "3412.67", "N", f"{BHANDARI} 12.7", "read"),
    Check("block-brake", JINDAL_BLOCKS, "pivot distance", "187.222", "mm",
          f"{JINDAL} 23-3, page 619", "read"),
    Check("block-brake", JINDAL_BLOCKS, "torque", "957.75", "N.m",
          f"{JINDAL} 23-3, page 619 (labelled N·mm there)", "read"),
    Check("block-brake", JINDAL_BLOCKS, "push", "8.526", "kN", f"{JINDAL} 23-3, page 619", "read"),
    Check("block-brake", JINDAL_BLOCKS, "drag", "2.56", "kN", f"{JINDAL} 23-3, page 619", "read"),
    Check("band-strength", {"width": "100 mm", "thickness": "3 mm", "stress": "50 MPa"},
          "tension", "15000", "N", f"{BHANDARI} 12.10", "read"),
    Check("band-brake", BHANDARI_BAND, "slack tension", "5263.80", "N", f"{BHANDARI} 12.10",
          "read"),
    Check("band-brake", BHANDARI_BAND, "pull", "318.69", "N", f"{BHANDARI} 12.10", "read"),
    Check("band-brake", BHANDARI_BAND, "torque", "2920.86", "N.m", f"{BHANDARI} 12.10", "read"),
    Check("band-brake", BHANDARI_BAND, "self-locking", "no", "", f"{BHANDARI} 12.10", "read"),
    Check("self-locking-band", {"friction": "0.25", "wrap": "240", "slack_arm": "200 mm",
          "tight_arm": "50 mm"}, "self-locking", "no", "", f"{BHANDARI} 12.10", "read"),
    Check("band-strength", {"width": "80 mm", "thickness": "2 mm", "stress": "60 MPa"},
          "tension", "9600", "N", f"{JINDAL} 23-2, page 618", "read"),
    Check("band-brake", JINDAL_BAND, "slack tension", "4046.4", "N", f"{JINDAL} 23-2, page 618",
          "read"),
    Check("band-brake", JINDAL_BAND, "torque", "1110.72", "N.m", f"{JINDAL} 23-2, page 618",
          "read"),
    Check("self-locking-band", {"friction": "0.22", "wrap": "225", "slack_arm": "100 mm",
          "tight_arm": "30 mm"}, "locking arm", "42.15", "mm", f"{JINDAL} 23-2, page 618", "read"),
    Check("band-brake", BEVAN_BAND, "pull", "56", "lbf",
          "T. Bevan, Theory of Machines, example 8.4, page 259", "read"),
    Check("two-shoe-brake", JINDAL_SHOES, "leading torque", "576", "N.m",
          f"{JINDAL} 23-4, page 620", "read"),
    Check("two-shoe-brake", JINDAL_SHOES, "trailing torque", "283.7", "N.m",
          f"{JINDAL} 23-4 with its sign put right", "worked out"),
    Check("brake-rivets", RIVETS, "diameter", "7.28", "mm", f"{BHANDARI} 8.18", "read"),
    Check("brake-rivets", RIVETS, "width", "57.67", "mm", f"{BHANDARI} 8.18", "read"),
    _lining("shop rule", "0.8", "mm", "shop rule of 1/32 in, in several service manuals"),
    _lining("steering air drum strip", "4.8", "mm", LORRY),
    _lining("steering air drum pads", "6.4", "mm", LORRY),
    _lining("steering air disc", "3.2", "mm", LORRY),
    _lining("steering hydraulic", "1.6", "mm", LORRY),
    _lining("other air drum", "6.4", "mm", LORRY),
    _lining("other air disc", "3.2", "mm", LORRY),
    _lining("other hydraulic", "1.6", "mm", LORRY),
    _lining("heavy vehicle manual", "6.3", "mm", "heavy-vehicle brake manual"),
    Check("stopping-rule", {"fastest": "30 km/h"}, "least deceleration", "3.55", "m/s2", EU,
          "read"),
    Check("stopping-rule", {"fastest": "40 km/h"}, "least deceleration", "5", "m/s2", EU, "read"),
    Check("stopping-rule", {"fastest": "20 km/h"}, "allowed distance", "7.348", "m", EU,
          "worked out"),
    Check("stopping-rule", {"fastest": "25 km/h"}, "allowed distance", "10.543", "m", EU,
          "worked out"),
    Check("stopping-rule", {"fastest": "30 km/h"}, "allowed distance", "14.283", "m", EU,
          "worked out"),
    Check("stopping-rule", {"fastest": "40 km/h"}, "allowed distance", "18.308", "m", EU,
          "worked out"),
    Check("stopping-rule", {"fastest": "50 km/h"}, "allowed distance", "26.731", "m", EU,
          "worked out"),
    Check("stopping-rule", {"fastest": "30 km/h", "distance": "12 m", "pedal": "601 N"},
          "passes", "no",
          "", f"{EU}: pedal at most 600 N", "read"),
    Check("stopping-rule", {"fastest": "30 km/h", "distance": "12 m", "hand": "401 N"}, "passes",
          "no",
          "", f"{EU}: hand lever at most 400 N", "read"),
    Check("deceleration", {"speed": "30 km/h", "distance": "9.7826087 m"}, "deceleration", "3.549",
          "m/s2", f"{EU}: v²/92", "worked out"),
    Check("deceleration", {"speed": "40 km/h", "distance": "12.3076923 m"}, "deceleration", "5.015",
          "m/s2", f"{EU}: v²/130", "worked out"),
    Check("stop-heat", WENTZELL_STOP, "energy", "289619.57", "ft.lbf.energy",
          "T. H. Wentzell, Machine Design, example 16.5, page 365", "read", *G),
    Check("stop-heat", WENTZELL_STOP, "rise", "77.85", "Fdeg",
          "T. H. Wentzell, Machine Design, example 16.5, page 365", "read", *G),
    Check("stop-heat", WENTZELL_STOP, "time", "3.65", "s",
          "T. H. Wentzell, Machine Design, example 16.5, page 365", "read"),
    Check("stop-heat", WENTZELL_STOP, "power", "142.32", "hp",
          "T. H. Wentzell, Machine Design, example 16.5, page 365", "read", "1.5 %",
          "the source rounds 3.65 s to 3.7 s first"),
    Check("stop-heat", JINDAL_STOP, "distance", "36.11", "m", f"{JINDAL} 23-5, page 621", "read"),
    Check("stop-heat", JINDAL_STOP, "each drum", "49307.97", "J", f"{JINDAL} 23-5, page 621",
          "read"),
    Check("stop-heat", JINDAL_STOP, "torque", "300.40", "N.m", f"{JINDAL} 23-5, page 621", "read"),
    Check("stop-heat", JINDAL_STOP, "rise", "8.93", "K", f"{JINDAL} 23-5, page 621", "read"),
    Check("stopping-distance", JINDAL_WAY, "distance", "36.11", "m",
          f"{JINDAL} 23-5, page 621, its 4 s from 65 km/h as a deceleration", "read"),
    Check("stopping-distance", EU_WAY, "distance", "14.283", "m",
          f"{EU}: 0.15·v is 0.54 s, v²/92 is 92/25.92 m/s²", "worked out"),
    Check("pedal-to-torque", BHANDARI_PEDAL, "torque", "434831.05", "N.mm",
          f"{BHANDARI} 12.8, its force on the shoes without levers", "read", "0.01 %",
          "the force is printed to 0.01 N"),
    Check("shoe-brake", {"friction": "0.3", "width": "40 mm", "radius": "150 mm",
          "pivot": "120 mm", "start": "120", "end": "170", "arm": "250 mm",
          "pressure": "0.5 MPa"}, "torque", "75.57", "N.m",
          "quadrature of a lining past 90 degrees, pressed hardest at its heel", "worked out"),
)  # fmt: skip

SIGN = "the friction moment has + a·(cos 2θ_1 − cos 2θ_2) where it must be minus"
MISPRINTS = (
    Misprint("two-shoe-brake", JINDAL_SHOES, "force", "2813", "3852.1", "N",
             f"{JINDAL} 23-4, page 620", SIGN),
    Misprint("two-shoe-brake", JINDAL_SHOES, "torque", "759", "859.7", "N.m",
             f"{JINDAL} 23-4, page 620", SIGN),
)  # fmt: skip
