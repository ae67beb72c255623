import pytest

from shimstock.trade.measure.words import percent


@pytest.mark.parametrize(
    ("p", "said"),
    [(0.0, "under 1 %"), (0.01, "1 %"), (0.73, "73 %"), (0.99, "99 %"), (1.0, "over 99 %")],
)
def test_a_chance_is_never_called_certain(p, said):
    assert percent(p) == said
