import pytest

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.gaskets.gasket_stiffness import gasket_stiffness

RING = dict(outside=30, inside=15, thickness=3, modulus=480)
BOLT = dict(bolt=15, grip=24, bolt_modulus=210_000)


@pytest.mark.parametrize("missing", BOLT)
def test_the_bolts_three_values_are_given_together(missing):
    rest = {name: value for name, value in BOLT.items() if name != missing}
    with pytest.raises(NotPossible, match=f"{missing.replace('_', ' ')} is missing"):
        gasket_stiffness(**RING, **rest)
    assert "share" in gasket_stiffness(**RING, **BOLT).working.answers
