"""How a magneto with an impulse coupling is driven."""

from typing import Annotated

from shimstock.trade.sums.declare import Of

Snap = Annotated[float, Of("deg", least=-30, most=30)]
Turns = Annotated[float, Of("", above=0, most=2)]
