"""What a way of making a set whole costs when it has arrived and the cores are credited."""

from __future__ import annotations

from dataclasses import dataclass

from shimstock.trade.numbers.working import Worked, Working


@dataclass(frozen=True)
class SetOption:
    """One way to make a set whole; all in the shop's money.

    deposit: for each core; cores: how many deposits are paid; accepted: how many of the old ones
    will be taken back, each against its deposit. chance: that the parts are found at all.
    """

    name: str
    price: float
    bench: float = 0.0
    carriage: float = 0.0
    tax: float = 0.0
    deposit: float = 0.0
    cores: int = 0
    accepted: int = 0
    weeks: float | None = None
    chance: float = 1.0


def landed_cost(option: SetOption) -> Worked[float]:
    """Price, bench, carriage, tax and deposits paid, less the deposits that come back.

    Raises ValueError where more cores are accepted than deposits were paid.
    Source: trade practice for exchange units.

    >>> pair = SetOption("exchange pair", price=420, deposit=150, cores=2, accepted=1)
    >>> landed_cost(pair).value
    570.0
    """
    if not 0 <= option.accepted <= option.cores:
        raise ValueError(
            f"{option.accepted} cores accepted, {option.cores} deposits paid: "
            "at most as many come back as were paid"
        )
    w = Working(source="trade practice for exchange units")
    terms = []
    for name in ("price", "bench", "carriage", "tax"):
        if name == "price" or getattr(option, name):
            w.given(name, getattr(option, name), "")
            terms.append(name)
    total = option.price + option.bench + option.carriage + option.tax
    if option.cores:
        w.given("deposit", option.deposit, "", meaning="for each core")
        w.given("cores", option.cores, "", meaning="deposits paid")
        w.given("accepted", option.accepted, "", meaning="old ones taken back")
        terms.append("deposit·(cores − accepted)")
        total += option.deposit * (option.cores - option.accepted)
    cost = w.step("cost", " + ".join(terms), float(total), "", meaning=option.name)
    return Worked(cost, w)
