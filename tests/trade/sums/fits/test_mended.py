import pytest

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.find import find_sum
from shimstock.trade.sums.fits.force_fit_rule import force_fit_rule
from shimstock.trade.sums.typed import work_out


# 1 lbf = 4.4482216152605 N exactly (NIST SP 811, appendix B); a short ton is 2000 lb.
def test_the_press_of_a_force_fit_is_given_in_any_force():
    done = work_out(find_sum("force-fit-rule"), {"diameter": "3 in"}, wanted=["kN"])
    assert done.results["press"].unit == "kN"
    assert done.results["press"].value == pytest.approx(60 * 2 * 4.4482216152605)


def test_a_shaft_typed_in_millimetres_without_saying_so_is_refused():
    with pytest.raises(NotPossible, match="at most 20"):
        force_fit_rule(diameter=75)
