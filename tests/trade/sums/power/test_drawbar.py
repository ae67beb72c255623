import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.power.draft_power import draft_power
from shimstock.trade.sums.power.drawbar_on_surface import drawbar_on_surface
from shimstock.trade.sums.power.drawbar_power import drawbar_power
from shimstock.trade.sums.power.power_chain import power_chain
from shimstock.trade.sums.power.wheel_slip import wheel_slip


@given(speed=st.floats(1, 12), width=st.floats(0.2, 0.5), count=st.integers(1, 6))
def test_the_three_ways_to_the_draft_agree(speed, width, count):
    cut = draft_power(speed=speed, resistance=80, width=width, depth=0.2, count=count)
    wide = draft_power(speed=speed, per_width=16, width=width, count=count)
    each = draft_power(speed=speed, each=16 * width, count=count)
    assert cut.value == pytest.approx(wide.value)
    assert cut.value == pytest.approx(each.value)
    pull = cut.working.answers["draft"].value
    assert cut.value == pytest.approx(drawbar_power(pull=pull, speed=speed).value)


def test_the_draft_is_known_in_one_way():
    with pytest.raises(NotPossible, match="one of resistance, per width and each"):
        draft_power(speed=5)
    with pytest.raises(NotPossible, match="must be known in one way"):
        draft_power(speed=5, each=2, per_width=3, width=1)
    with pytest.raises(NotPossible, match="depth is needed"):
        draft_power(speed=5, resistance=80, width=0.3)
    with pytest.raises(NotPossible, match="width is needed"):
        draft_power(speed=5, per_width=3)


@given(engine=st.floats(5, 200), share=st.floats(50, 100))
def test_the_chain_leads_back_to_the_engine(engine, share):
    drawbar = power_chain(engine=engine, share=share).value
    back = power_chain(drawbar=drawbar, share=share).working.answers
    assert back["engine"].value == pytest.approx(engine)
    middle = power_chain(pto=back["power take-off"].value, share=share).working.answers
    assert middle["engine"].value == pytest.approx(engine)
    assert middle["drawbar"].value == pytest.approx(drawbar)


def test_one_power_starts_the_chain():
    for given_ in ({}, {"engine": 100, "pto": 86}):
        with pytest.raises(NotPossible, match="only power given"):
            power_chain(**given_)


@pytest.mark.parametrize("drive", ["two-wheel", "track"])
def test_softer_ground_passes_on_less(drive):
    surfaces = ("concrete", "firm", "tilled", "soft")
    powers = [drawbar_on_surface(pto=40, surface=one, drive=drive).value for one in surfaces]
    assert powers == sorted(powers, reverse=True)
    assert "low confidence" in " ".join(
        drawbar_on_surface(pto=40, surface="soft", drive=drive).working.shown()
    )


@given(free=st.floats(1, 100), more=st.floats(0.1, 50))
def test_slip_by_free_turns_is_the_larger_number(free, more):
    told = wheel_slip(pulling=free + more, free=free).working.answers
    assert 0 < told["slip"].value < told["slip by free turns"].value


def test_both_slips_of_one_run():
    told = wheel_slip(pulling=100, free=80).working.answers
    assert (told["slip"].value, told["slip by free turns"].value) == (20, 25)


def test_no_slip_and_swapped_turns():
    assert wheel_slip(pulling=50, free=50).value == 0
    with pytest.raises(NotPossible, match="swapped"):
        wheel_slip(pulling=88, free=100)
