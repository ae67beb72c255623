from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.fits._designation import DesignationText
from shimstock.trade.sums.fits._fit_lines import Fit, fit_lines
from shimstock.trade.sums.fits._zones import zone_limits


@a_sum(example="--designation '50 H7/s6'")
def iso_fit(*, designation: DesignationText) -> Worked[Fit]:
    """Clearance or interference of an ISO fit such as 50 H7/s6, and the limits of both parts.

    A size in inches is turned into mm, since the ranges of the table are in mm; a book's own inch
    fits can differ by a step.

    designation: nominal size, hole zone, stroke, shaft zone.
    Source: ISO 286-1:2010, tables 1 to 3 for the limits, 3.3 for the fit.

    >>> from shimstock.trade.sums.fits._designation import parse_designation
    >>> got = iso_fit(designation=parse_designation("50 H7/s6")).value
    >>> round(got.least, 3), round(got.most, 3)
    (-0.059, -0.018)
    """
    w = Working()
    if designation.remark:
        w.note(designation.remark)
    size = w.given("D", designation.size, "mm", meaning="nominal size")
    zone_limits(w, size, designation.hole, "largest hole", "smallest hole")
    zone_limits(w, size, designation.shaft, "largest shaft", "smallest shaft")
    return Worked(fit_lines(w, "mm"), w)
