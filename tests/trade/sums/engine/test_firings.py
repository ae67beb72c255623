"""Firings against a discrete Fourier transform, and the speed that a tone tells."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.engine.firing_frequency import firing_frequency
from shimstock.trade.sums.engine.firing_intervals import firing_intervals
from shimstock.trade.sums.engine.firing_lines import firing_lines
from shimstock.trade.sums.engine.speed_from_tone import speed_from_tone

WHOLE = {"four-stroke": 720, "two-stroke": 360}


def tones(worked):
    told = worked.working.answers.items()
    return {int(n.split()[1]): each.value for n, each in told if n.startswith("tone")}


CYCLES = st.sampled_from(sorted(WHOLE))


@given(st.sets(st.integers(0, 359), min_size=1, max_size=8), CYCLES)
def test_the_lines_are_those_of_a_fourier_transform(firings, cycle):
    impulses = np.zeros(WHOLE[cycle])
    impulses[sorted(firings)] = 1
    strengths = np.abs(np.fft.rfft(impulses))[1:9]
    got = firing_lines(firings=list(firings), speed=975, cycle=cycle).value
    assert got == pytest.approx(strengths, abs=1e-9)


@pytest.mark.parametrize("cylinders", [2, 3, 4, 6])
def test_even_firings_sound_at_their_own_rate_alone(cylinders):
    firings = [720 * i / cylinders for i in range(cylinders)]
    strengths = firing_lines(firings=firings, speed=975).value
    loud = [k for k, strength in enumerate(strengths, 1) if strength > 0]
    assert loud == list(range(cylinders, 9, cylinders))
    assert strengths[cylinders - 1] == pytest.approx(cylinders)
    rate = firing_frequency(speed=975, cylinders=cylinders).value
    assert speed_from_tone(tone=rate, line=cylinders).value == pytest.approx(975)


def test_opposed_throws_are_silent_where_an_even_twin_is_loudest():
    uneven = firing_lines(firings=[0, 180], speed=975)
    assert uneven.value[1] == 0
    assert tones(uneven) == {1: 8.125, 3: 24.375, 4: 32.5, 5: 40.625, 7: 56.875, 8: 65}
    assert any("line 2, is silent" in line for line in uneven.working.shown())
    even = firing_lines(firings=[0, 360], speed=975)
    assert even.value[1] == 2
    assert tones(even) == {2: 16.25, 4: 32.5, 6: 48.75, 8: 65}
    assert not any("silent" in line for line in even.working.shown())


@given(st.floats(100, 4000), st.integers(1, 12), CYCLES)
def test_tone_and_speed_lead_to_one_another(speed, cylinders, cycle):
    rate = firing_frequency(speed=speed, cylinders=cylinders, cycle=cycle).value
    assert speed_from_tone(tone=rate, line=cylinders, cycle=cycle).value == pytest.approx(speed)
    assert firing_frequency(speed=0, cylinders=cylinders).value == 0


@given(st.sets(st.integers(0, 359), min_size=1, max_size=8), CYCLES)
def test_the_intervals_go_once_round(firings, cycle):
    gaps = firing_intervals(firings=list(firings), cycle=cycle).value
    assert sum(gaps) == WHOLE[cycle]
    assert min(gaps) > 0


@pytest.mark.parametrize(
    ("firings", "beat"),
    [([0, 360], "even"), ([0, 180], "uneven"), ([0, 180, 360, 540.4], "even"), ([90], "even")],
)
def test_the_beat_is_told(firings, beat):
    assert firing_intervals(firings=firings).working.answers["beat"].value == beat


@pytest.mark.parametrize("sum_", [firing_intervals, lambda **g: firing_lines(**g, speed=975)])
@pytest.mark.parametrize(
    ("given_", "said"),
    [
        ({"firings": [0, 720]}, "must be at least 0 and below 720"),
        ({"firings": [0, 400], "cycle": "two-stroke"}, "outside the cycle of 360 deg"),
        ({"firings": [0, 180, 180]}, "two firings at one angle are one"),
        ({"firings": []}, "0 firings are not 1 to 16"),
        ({"firings": list(range(17))}, "17 firings are not 1 to 16"),
    ],
)
def test_angles_that_no_cycle_has_are_refused(sum_, given_, said):
    with pytest.raises(NotPossible, match=said):
        sum_(**given_)


def test_no_tone_and_no_line_are_refused():
    with pytest.raises(NotPossible, match=r"tone 0 per\.s must be above 0"):
        speed_from_tone(tone=0, line=2)
    with pytest.raises(NotPossible, match="line 0 must be at least 1"):
        speed_from_tone(tone=20, line=0)
