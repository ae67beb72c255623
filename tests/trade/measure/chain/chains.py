"""Chains for the tests, and what hypothesis draws for them."""

from hypothesis import strategies as st

from shimstock.trade.measure.chain.expected import Chain, Expected
from shimstock.trade.measure.chain.told import Felt, Read

MESH = Expected(0.003, 0.006, 0.012)
BEVEL = Expected(0.004, 0.008, 0.015)
FAN = Chain((MESH, MESH, BEVEL), (20 / 3, 20 / 3, 80 / 9))
"""The fan drive of the starter: gains by hand from its teeth, 10 in at the tip."""

THREE = (Felt(0, 0.350, 0.01), Felt(1, 0.290, 0.01), Felt(2, 0.090, 0.01))


@st.composite
def rocked(draw):
    """A chain of two to four links, and readings that can all be true."""
    count = draw(st.integers(2, 4))
    links, gains, plays = [], [], []
    for _ in range(count):
        low = draw(st.sampled_from([0.0, 0.002, 0.004]))
        high = low + draw(st.floats(0.001, 0.006))
        links.append(Expected(low, high, high + draw(st.floats(0.002, 0.012))))
        gains.append(draw(st.sampled_from([1.0, 5.0, 8.0])))
        plays.append(draw(st.floats(0, 0.04)))
    told = []
    for at in range(count):
        u = draw(st.sampled_from([0.002, 0.008]))
        off = draw(st.floats(-1, 1)) * u
        moved = sum(gain * play for gain, play in zip(gains[at:], plays[at:], strict=True))
        if at == 0 or draw(st.booleans()):
            told.append(Felt(at, moved + off, u))
        if draw(st.integers(0, 4)) == 0:
            told.append(Read(at, plays[at] + off / 10, u / 10))
    return Chain(tuple(links), tuple(gains)), tuple(told)
