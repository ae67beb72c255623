"""How much a drip loses."""

from shimstock.trade.numbers.working import Worked, Working

DROPS_IN_A_MILLILITRE = 20.0


def drip_loss(*, seconds: float) -> Worked[float]:
    """Millilitres an hour that a steady drip loses.

    seconds: from one drop to the next. Source: twenty drops to the millilitre, the apothecaries'
    metric drop; oil drops differ somewhat, so it is a rough figure.
    Raises ValueError where no time passes between two drops.

    >>> drip_loss(seconds=12).value
    15.0
    """
    if seconds <= 0:
        raise ValueError(f"{seconds:g} s between two drops; count the seconds from drop to drop")
    w = Working(source="twenty drops to the millilitre, the metric drop")
    w.given("t", seconds, "s", meaning="from drop to drop")
    w.given("n", DROPS_IN_A_MILLILITRE, "drops/ml")
    loss = w.step("q", "3600/(t·n)", 3600 / (seconds * DROPS_IN_A_MILLILITRE), "ml/h")
    return Worked(loss, w)
