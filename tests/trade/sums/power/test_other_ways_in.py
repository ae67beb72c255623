"""Ways into a sum that its example does not show: their workings agree with themselves too."""

import shlex

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.find import find_sum, function_of
from shimstock.trade.sums.typed import work_out

WAYS = (
    "bmep-power --pressure 6 --displacement 25 --speed 2000 --cycle two-stroke",
    "mean-pressure --power 250 --displacement 25 --speed 2000",
    "fuel-flow --time 20 --weight 5 --density 0.84",
    "fuel-flow --time 20 --volume 5 --density 0.84",
    "fuel-consumption --power 20 --fuel 5",
    "thermal-efficiency --heating-value 43 --consumption 270",
    "thermal-efficiency --heating-value 43 --power 20 --volume 6 --density 0.84",
    "draft-power --speed 6 --per-width 3 --width 2",
    "draft-power --speed 6 --each 2 --count 4",
    "power-chain --pto 30",
    "power-chain --drawbar 26",
    "derate --power 120 --losses '5, 8, 2' --together added",
    "fuel-older-d497 --pto 30 --share 60",
    "correction-iso-3046 --pressure 90 --temperature 35 --humidity 60 --saturation 5.6 --power 30 "
    "--consumption 250 --efficiency 82",
    "correction-iso-1585-ci --pressure 95 --temperature 30 --fuel-per-litre 90 --boost 1.5 "
    "--aspiration 'turbo air-cooled' --power 50",
    "correction-un-r85-ci --pressure 95 --temperature 30 --fuel-per-litre 90 --boost 1.5 "
    "--aspiration 'turbo liquid-cooled'",
    "correction-older-60f --pressure 29 --temperature 80 --vapour 0.5",
    "correction-older-60f --pressure 29 --temperature 80",
    "correction-sae-j1349 --pressure 97 --temperature 20",
)


@pytest.mark.parametrize("way", WAYS)
@given(data=st.data())
def test_the_working_agrees(way, data):
    name, *options = shlex.split(way)
    names = [option[2:].replace("-", "_") for option in options[::2]]
    typed = dict(zip(names, options[1::2], strict=True))
    values = {g.name: g.value for g in work_out(find_sum(name), typed).given if g.name in typed}
    numbers = [key for key, value in values.items() if isinstance(value, float)]
    changed = data.draw(st.sampled_from(numbers))
    values[changed] *= data.draw(st.floats(0.3, 3))
    try:
        working = function_of(name)(**values).working
    except NotPossible:
        return
    assert working.disagreements() == []
