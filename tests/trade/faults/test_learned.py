"""What a workshop counted, over what the book says."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from published.as_printed import as_printed
from shimstock.trade.faults.learned import BOOK_IS_WORTH, Count, learned, learned_prior, together
from trade.faults.any_network import BUSY

CHANCES = st.floats(0, 1)
COUNTS = st.tuples(st.integers(0, 500), st.integers(0, 500)).map(lambda n: Count(min(n), max(n)))
SHEDS = st.lists(st.dictionaries(st.sampled_from("abc"), COUNTS), max_size=4)


def test_a_beta_prior_with_its_counts():
    """A beta of 2 and 18 and then 3 of 10: mean 5/30.

    Source: Gelman and others, Bayesian Data Analysis, section 2.4: (α + y)/(α + β + n); from
    memory, the numbers our own.
    """
    assert BOOK_IS_WORTH == 20
    assert learned_prior(0.10, Count(3, 10)).value == as_printed("0.1667")


@BUSY
@given(CHANCES, COUNTS)
def test_what_was_learned_lies_between_the_book_and_what_was_seen(prior, count):
    if count.looked:
        seen = count.confirmed / count.looked
        found = learned_prior(prior, count).value
        assert min(prior, seen) - 1e-12 <= found <= max(prior, seen) + 1e-12


@BUSY
@given(CHANCES, COUNTS)
def test_each_machine_moves_it_the_right_way(prior, count):
    now = learned_prior(prior, count).value
    there = learned_prior(prior, count + Count(1, 1)).value
    away = learned_prior(prior, count + Count(0, 1)).value

    assert away <= now + 1e-12 and now <= there + 1e-12
    assert away < there


@BUSY
@given(CHANCES, COUNTS, COUNTS)
def test_without_the_counts_the_prior_is_what_it_was(prior, count, other):
    priors = {"a": prior}

    assert learned(priors, {"a": count + other}) == learned(priors, {"a": other + count})
    assert learned(priors, {"a": count}) == learned(priors, together([{"a": count}, {}]))
    assert learned(priors, {"a": Count()}) == learned(priors, {}) == priors


@BUSY
@given(SHEDS)
def test_the_order_in_which_sheds_come_does_not_matter(sheds):
    total = together(sheds)

    assert total == together(reversed(sheds))
    for cause, count in total.items():
        assert count.looked == sum(shed.get(cause, Count()).looked for shed in sheds)
        assert count.confirmed == sum(shed.get(cause, Count()).confirmed for shed in sheds)


@BUSY
@given(CHANCES, COUNTS)
def test_its_working_comes_to_the_same(prior, count):
    worked = learned_prior(prior, count)

    assert worked.working.disagreements() == []
    if count.looked:
        assert worked.working.value("p'") == worked.value


def test_a_cause_that_the_book_does_not_have_is_left_out():
    assert learned({"a": 0.1}, {"b": Count(1, 2)}) == {"a": 0.1}


@pytest.mark.parametrize(("confirmed", "looked"), [(3, 2), (-1, 4), (0, -1)])
def test_counts_that_no_workshop_can_have(confirmed, looked):
    with pytest.raises(ValueError, match=f"confirmed {confirmed} of {looked}"):
        Count(confirmed, looked)


def test_a_prior_that_is_no_chance():
    with pytest.raises(ValueError, match=r"a prior of 1\.2 is no chance"):
        learned_prior(1.2, Count(0, 1))
