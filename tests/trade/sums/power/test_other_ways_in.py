"""Ways into a sum that its example does not show: their workings agree with themselves too."""

import shlex

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.find import find_sum
from shimstock.trade.sums.typed import work_out

WAYS = (
    "bmep-power --pressure '6 bar' --displacement '25 l' --speed 2000 --cycle two-stroke",
    "mean-pressure --power '250 kW' --displacement '25 l' --speed 2000",
    "fuel-flow --time 20 --weight '5 kg' --density '0.84 g/cc'",
    "fuel-flow --time 20 --volume '5 l' --density '0.84 g/cc'",
    "fuel-consumption --power '20 kW' --fuel '5 kg/h'",
    "thermal-efficiency --heating-value '43 MJ/kg' --consumption '270 g/kWh'",
    "thermal-efficiency --heating-value '43 MJ/kg' --power '20 kW' --volume '6 l/h' "
    "--density '0.84 g/cc'",
    "draft-power --speed '6 km/h' --per-width '3 kN/m' --width '2 m'",
    "draft-power --speed '6 km/h' --each '2 kN' --count 4",
    "power-chain --pto '30 kW'",
    "power-chain --drawbar '26 kW'",
    "derate --power '120 kW' --losses '5, 8, 2' --together added",
    "fuel-older-d497 --pto '30 kW' --share 60",
    "correction-iso-3046 --pressure '90 kPa' --temperature '35 degC' --humidity 60 "
    "--saturation '5.6 kPa' --power '30 kW' "
    "--consumption '250 g/kWh' --efficiency 82",
    "correction-iso-1585-ci --pressure '95 kPa' --temperature '30 degC' --fuel-per-litre 90 "
    "--boost 1.5 "
    "--aspiration 'turbo air-cooled' --power '50 kW'",
    "correction-un-r85-ci --pressure '95 kPa' --temperature '30 degC' --fuel-per-litre 90 "
    "--boost 1.5 "
    "--aspiration 'turbo liquid-cooled'",
    "correction-older-60f --pressure '29 inHg' --temperature '80 degF' --vapour '0.5 inHg'",
    "correction-older-60f --pressure '29 inHg' --temperature '80 degF'",
    "correction-sae-j1349 --pressure '97 kPa' --temperature '20 degC'",
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
        working = find_sum(name).function(**values).working
    except NotPossible:
        return
    assert working.disagreements() == []
