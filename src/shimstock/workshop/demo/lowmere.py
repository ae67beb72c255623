"""The Lowmere: one cylinder down, one steering clutch gone, and tracks near their end."""

from shimstock.workshop.demo.books import demo_book
from shimstock.workshop.demo.teller import Teller

SERIALS = {"engine": "LM4-622", "frame": "C 318"}


def tell(t: Teller) -> None:
    """Tell two months of evenings."""
    _arrival(t)
    _top_end(t)
    _magneto(t)
    _steering(t)
    _waiting(t)


def _arrival(t: Teller) -> None:
    t.evening(64, "Wren")
    t.booked_in("Lowmere crawler", "lowmere-crawler", demo_book("lowmere-crawler"), SERIALS)
    for number, psi in (("1", "112"), ("2", "109"), ("3", "78"), ("4", "111")):
        t.read("compression", psi, number)
    t.read("oil-pressure-rated", "34")
    t.read("lever-free-travel", ["2 3/8 in"], "left")
    t.read("lever-free-travel", ["3 1/4 in"], "right")
    t.read("left-track-pitch", "24.53 24.50")
    t.read("right-track-pitch", "24.69 24.71")
    t.read("left-track-sag", "1.3 1.4")
    t.read("right-track-sag", "1.9 2.0")
    t.searched("misses, and no pull", {"misses": "seen", "low-power": "seen", "knock": "not seen"})


def _top_end(t: Teller) -> None:
    t.evening(57, "Ida")
    t.opened("head")
    t.part("cylinder-head", "off")
    t.read("head-flatness", "0.002 0.002 0.001 0.002 0.003 0.003")
    t.read("liner-bore", "4.0052 4.0041 4.0030 4.0044 4.0036 4.0028", "1")
    t.read("liner-bore", "4.0049 4.0040 4.0031 4.0043 4.0037 4.0027", "2")
    t.read("liner-bore", "4.0061 4.0046 4.0033 4.0050 4.0039 4.0029", "3")
    t.read("liner-bore", "4.0050 4.0039 4.0029 4.0042 4.0035 4.0026", "4")
    t.read("guide-bore", "0.3812 0.3795 0.3809", "exhaust 3")
    t.read("valve-stem", "0.3706 0.3712 0.3709", "exhaust 3")
    t.read("guide-bore", "0.3768 0.3761 0.3766", "inlet 3")
    t.read("valve-stem", "0.3721 0.3722 0.3721", "inlet 3")
    t.read("valve-margin", "0.024", "exhaust 3")
    t.covered_all()
    t.evening(50, "Wren")
    t.part("valve", "rejected", piece="exhaust 3", note="burned, margin gone; guide with it")
    t.part("valve", "on order", piece="exhaust 3", maker="mark S", note="with one guide")
    t.found("valve-leaks", "exhaust 3 burned, guide worn: valve with one guide, seats cut")
    t.part("cylinder-head", "out at the machinist", note="one guide, seats cut; two weeks")


def _magneto(t: Teller) -> None:
    t.evening(43, "Tom")
    t.read("magneto-point-gap", "0.022")
    t.read("magneto-point-gap", "0.015", finished=True)
    for number, gap in (("1", "0.034"), ("2", "0.033"), ("3", "0.040"), ("4", "0.032")):
        t.read("plug-gap", gap, number)
    t.read("condenser", "0.21")
    t.opened("magneto-flange")
    t.part("magneto", "off")
    t.part("magneto", "out at the bench", note="coil to be proved hot")
    t.covered_all()


def _steering(t: Teller) -> None:
    t.evening(36, "Tom")
    t.opened("right-steering-clutch")
    t.read("right-clutch-plates", "0.092")
    t.read("right-band-lining", "0.21 0.20 0.22 0.20 0.21 0.22")
    t.part("right-clutch-pack", "rejected", note="plates worn; treated as asbestos, bagged wet")
    t.covered_all()
    t.evening(29, "Tom")
    t.opened("left-steering-clutch")
    t.read("left-clutch-plates", "0.104")
    t.read("left-band-lining", "0.24 0.25 0.24 0.23 0.24 0.25")
    t.covered_all()
    for side in ("left", "right"):
        t.part(
            f"{side}-clutch-pack", "wanted", "on order", maker="mark S", note="both packs, one make"
        )
    t.answered("linings", "treated as asbestos")


def _waiting(t: Teller) -> None:
    t.evening(22, "Ida")
    t.opened("oil-filter")
    t.closed("oil-filter")
    t.checked("dry", "pto-seal", "hydraulic-pump-flange", "control-valve-face", chalk=True)
    t.evening(15, "Wren")
    t.opened("water-pump-flange")
    t.part(
        "water-pump",
        "wanted",
        "on order",
        "in the post",
        note="exchange; the old one goes back as a core",
    )
    t.covered_all()
    t.evening(6, "Wren")
    t.opened("float-bowl")
    t.read("float-height", "0.21")
    t.read("float-height", "0.25", finished=True)
    t.closed("float-bowl")
    t.answered("extinguisher", "yes")
