"""The Brackwater: its fan rocks, it pulls to one side, and its pumps are of two makes."""

from shimstock.workshop.demo.books import demo_book
from shimstock.workshop.demo.teller import Teller

SERIALS = {"engine": "40-D-1187", "frame": "B 2093"}


def tell(t: Teller) -> None:
    """Tell four months of evenings, from arrival to the night before last."""
    _arrival(t)
    _fan_drive(t)
    _engine_down(t)
    _pumps_out(t)
    _timing_and_governor(t)
    _pumps_back(t)
    _oil_side(t)
    _brakes(t)
    _lately(t)


def _arrival(t: Teller) -> None:
    t.evening(118, "Ida")
    t.booked_in("Brackwater 40", "brackwater-40", demo_book("brackwater-40"), SERIALS)
    t.read("fan-rock", "0.36 0.34 0.35 0.33")
    t.read("steering-free-movement", ["1 3/8 in"])
    t.read("pedal-free-travel", "1.7", "left")
    t.read("pedal-free-travel", "2.85", "right")
    t.read("lost-motion", "0.044")
    t.read("compression", "345", "1")
    t.read("compression", "310", "2")
    t.read("oil-pressure-rated", "31")
    t.read("flywheel-run-out", "0.0125")


def _fan_drive(t: Teller) -> None:
    t.evening(112, "Tom")
    t.opened("governor-side-cover")
    t.read("fan-rock-bevel-held", "0.09 0.08 0.09 0.08")
    t.read("governor-shaft-end-float", "0.013")
    t.opened("crankcase-cover")
    t.read("fan-rock-camshaft-held", "0.29 0.29 0.28 0.29")
    t.covered_all()


def _engine_down(t: Teller) -> None:
    t.evening(98, "Ida")
    t.opened("head")
    t.read("head-flatness", "0.002 0.003 0.002 0.002 0.008 0.007")
    t.part("cylinder-head", "off")
    t.read("liner-bore", "5.7591 5.7556 5.7534 5.7567 5.7547 5.7529", "1")
    t.read("liner-bore", "5.7559 5.7541 5.7526 5.7551 5.7537 5.7523", "2")
    t.evening(91, "Ida")
    t.opened("rod-caps")
    for number in ("1", "2"):
        t.part("piston", "off", piece=number)
        t.part("piston-rings", "off", piece=number)
    t.read("piston-skirt", "5.7418", "1")
    t.read("piston-skirt", "5.7424", "2")
    t.read("rod-journal", "3.7466 3.7465 3.7468 3.7469 3.7466 3.7464"
                          " 3.7471 3.7468 3.7467 3.7470 3.7469 3.7466")  # fmt: skip
    t.read("rod-bearing-bore", "3.7532", "1")
    t.read("rod-bearing-bore", "3.7529", "2")
    t.read("rod-side-clearance", "0.011", "1")
    t.read("rod-side-clearance", "0.014", "2")
    t.read("pin-diameter", "2.2490 2.2491 2.2490 2.2489 2.2490 2.2490", "1")
    t.read("pin-diameter", "2.2491 2.2492 2.2491 2.2491 2.2492 2.2490", "2")
    t.read("pin-bush-bore", "2.2512 2.2511 2.2513 2.2512", "1")
    t.read("pin-bush-bore", "2.2536 2.2533 2.2534 2.2532", "2")
    t.covered_all()
    t.evening(84, "Wren")
    t.part("cylinder-head", "out at the machinist", note="to be faced, valves cut; three weeks")
    for number in ("1", "2"):
        t.part("piston", "rejected", piece=number, note="skirt worn; oversize with the bore")
        t.part("piston", "on order", piece=number, size="+0.020 in", maker="mark T",
               note="a pair by weight; bore when they are in hand")  # fmt: skip


def _pumps_out(t: Teller) -> None:
    t.evening(77, "Wren")
    t.opened("pump-1-seat", "pump-2-seat")
    t.part("injection-pump-1", "off", maker="mark K")
    t.part("injection-pump-2", "off", maker="mark R")
    t.part("injector-1", "off", maker="mark K")
    t.part("injector-2", "off", maker="mark K")
    for part in ("injection-pump-1", "injection-pump-2", "injector-1", "injector-2"):
        t.part(part, "out at the bench", note="with its pipe, ends capped")
    t.covered_all()


def _timing_and_governor(t: Teller) -> None:
    t.evening(70, "Tom")
    t.opened("timing-cover")
    t.read("timing-mesh-lash", "0.0080 0.0090 0.0080 0.0090")
    t.evening(69, "Ida")
    t.closed("timing-cover")
    t.evening(66, "Tom")
    t.opened("governor-base", thickness="0.031 in")
    t.part("governor-gear", "rejected", note="teeth hooked; see the fan rock")
    t.covered_all()
    t.evening(63, "Wren")
    t.part(
        "governor-gear",
        "on order",
        "in the post",
        note="with its two mates: the three run together",
    )
    t.part("control-rod", "off")
    t.evening(60, "Tom")
    t.read("lost-motion", "0.008", finished=True)
    t.part("control-rod", "passed", note="new pins and clevises")
    t.read("flywheel-run-out", "0.003", finished=True)
    t.part("flywheel", "passed", note="faced")


def _pumps_back(t: Teller) -> None:
    t.evening(49, "Wren")
    t.read("pump-delivery", "24.2 21.6")
    t.read("pump-delivery-idle", "4.1 5.0")
    t.read("opening-pressure", "1890 1895")
    t.part("injection-pump-1", "back and checked", note="bench sheet: 24.2 and 4.1")
    t.part("injection-pump-2", "back and checked", note="bench sheet: 21.6 and 5.0")
    t.part("injection-pump-2", "rejected", note="no mate for mark K; kept whole as a core")
    t.part("injector-1", "back and checked", note="new nozzle, set on the bench")
    t.part("injector-2", "back and checked", note="new nozzle, set on the bench")


def _oil_side(t: Teller) -> None:
    t.evening(42, "Ida")
    t.opened("oil-pump-plate", "oil-filter", "filter-head-flange")
    t.read("oil-pump-end-clearance", "0.004")
    t.part("oil-pump", "passed")
    t.made_ready("oil-pump-plate", missing=1)
    t.closed("filter-head-flange")
    t.closed("oil-filter")
    t.covered_all()
    t.evening(35, "Ida")
    t.checked("dry", "pto-seal", "hydraulic-pump-flange", "left-brake", chalk=True)
    t.evening(21, "Tom")
    t.checked("leaking", "timing-cover")
    t.checked("dry", "oil-filter", "filter-head-flange", standing=True)


def _brakes(t: Teller) -> None:
    t.evening(16, "Tom")
    t.searched("pulls to the left", {"S22": "seen", "S23": "not seen"})
    t.opened("left-wheel")
    t.covered_all()
    t.evening(14, "Ida")
    t.opened("water-pump-flange")
    t.read("impeller-clearance", "0.032 0.034 0.031 0.033")
    t.part("water-pump", "passed")
    t.made_ready("water-pump-flange")
    t.covered_all()
    t.evening(9, "Tom")
    t.opened("right-wheel", "right-brake")
    t.read("lining-thickness", "0.18 0.17 0.18 0.16", "right")
    t.read("rivet-depth", "0.022", "right")
    t.read("drum-diameter", "10.022 10.019 10.021", "right")
    t.read("drum-out-of-round", "0.0095", "right")
    t.part(
        "brake-shoes", "rejected", piece="right", note="oiled, rivets near; bagged wet as asbestos"
    )
    t.part("brake-drum", "off", piece="right")
    t.covered_all(but="right-brake")


def _lately(t: Teller) -> None:
    t.evening(8, "Wren")
    for side in ("left", "right"):
        t.part(
            "brake-shoes",
            "wanted",
            "on order",
            piece=side,
            maker="mark T",
            note="linings for the whole axle",
        )
    t.evening(3, "Wren")
    for part in ("driving-bevel", "driven-bevel"):
        t.part(part, "wanted", "in hand", maker="mark T", note="new-old pair, bought together")
    t.answered("extinguisher", "yes")
    t.answered("old-paint", "treated as lead")
