"""What was worked out of a search is kept, and is never what it was before something changed."""

import json
import random
from dataclasses import dataclass

import pytest

from shimstock.trade.faults.network import Finding, Network, Spread, Told
from shimstock.trade.faults.ranking import rank
from shimstock.trade.machine.starters import starter_text
from shimstock.workshop import acts
from shimstock.workshop.fault_search import view, worked_out
from shimstock.workshop.fault_search.view import SearchSeen
from shimstock.workshop.looking import forget
from workshop.fault_shed import DIESEL, FAN, add_diesel, begun, look

ROCKS = Finding(0.01, {"gear": 0.8, "key": 0.2}, Spread(0.0, 1.0), Spread(3.0, 1.0))
NETWORK = Network({"gear": 0.03, "key": 0.03}, {"rocks": ROCKS})
SEEN = Told({"rocks": True})


@pytest.fixture
def worked(monkeypatch):
    """How often each question was worked out."""
    asked: list[str] = []

    def counted(work, *given, **named):
        def noted(*given, **named):
            asked.append(work.__name__)
            return work(*given, **named)

        noted.__name__ = work.__name__
        found = keys.setdefault(work, noted)
        return worked_out.worked_out(found, *given, **named)

    keys: dict[object, object] = {}
    monkeypatch.setattr(view, "worked_out", counted)
    return asked


def whole(search: SearchSeen) -> tuple[object, ...]:
    """All that a search says of its causes and checks."""
    return (
        search.ranking,
        search.offers,
        search.questions,
        search.not_offered,
        search.would_change,
        [search.why(each.key) for each in search.ranking],
    )


def anew(number: int | None = None) -> tuple[object, ...]:
    """The same with nothing kept."""
    worked_out.forget()
    forget()
    return whole(look(number=number))


def test_the_same_asked_again_is_not_worked_out_again():
    asked = []

    def ranked(network, told):
        asked.append(told)
        return rank(network, told)

    first = worked_out.worked_out(ranked, NETWORK, SEEN)
    again = worked_out.worked_out(
        ranked, Network(dict(NETWORK.causes), dict(NETWORK.findings)), Told({"rocks": True})
    )

    assert first == again == rank(NETWORK, SEEN)
    assert len(asked) == 1


@pytest.mark.parametrize(
    ("network", "told"),
    [
        (NETWORK, Told({"rocks": 1.0})),  # read as 1, which Python calls equal to seen
        (NETWORK, Told({"rocks": False})),
        (NETWORK, Told({"rocks": True}, {"key": False})),
        (NETWORK, Told({"rocks": True}, {"key": True})),
        (Network({"gear": 0.04, "key": 0.03}, {"rocks": ROCKS}), SEEN),
        (Network(NETWORK.causes, {"rocks": Finding(0.01, {"gear": 0.8, "key": 0.3})}), SEEN),
        (Network(NETWORK.causes, {"rocks": ROCKS}, (("gear", "key"),)), SEEN),
    ],
)
def test_what_differs_in_anything_is_worked_out_by_itself(network, told):
    worked_out.worked_out(rank, NETWORK, SEEN)

    assert worked_out.worked_out(rank, network, told) == rank(network, told) != rank(NETWORK, SEEN)


def test_no_more_is_kept_than_there_is_room_for(monkeypatch):
    monkeypatch.setattr(worked_out, "KEPT", 3)
    worked_out.forget()
    for number in range(9):
        worked_out.worked_out(round, number)

    assert len(worked_out._kept) == 3


def test_what_was_asked_last_is_kept_longest(monkeypatch):
    monkeypatch.setattr(worked_out, "KEPT", 2)
    worked_out.forget()
    asked = []
    for number in (1, 2, 1, 3, 1):
        worked_out.worked_out(asked.append, number)

    assert asked == [1, 2, 3]


def test_two_kinds_of_thing_with_the_same_in_them_are_two():
    @dataclass(frozen=True)
    class Bore:
        size: float

    @dataclass(frozen=True)
    class Journal:
        size: float

    assert worked_out.by_value(Bore(2.0)) == worked_out.by_value(Bore(2.0))
    assert worked_out.by_value(Bore(2.0)) != worked_out.by_value(Journal(2.0))


def test_what_cannot_be_is_said_each_time():
    nothing = Network({"gear": 0.0}, {"rocks": Finding(0.0, {"gear": 0.8})})
    for _ in range(2):
        with pytest.raises(ValueError, match="cannot all be true"):
            worked_out.worked_out(rank, nothing, SEEN)


def test_another_figure_read_leaves_a_search_as_it_was(db, worked):
    add_diesel()
    whole(begun(FAN))
    worked.clear()
    acts.take_reading(machine="diesel", figure="ring-gap", piece="1", typed=["0.4 mm"], who="Ida")

    assert whole(look()) == anew()
    # nothing in the search tells of it: what was worked out was worked out by `anew`
    assert worked.count("rank") == worked.count("whys") == worked.count("next_checks") == 1


def test_a_search_is_what_it_would_be_with_nothing_kept_after_any_act_and_undoing(db):
    """Every kind of act that can bear on it, in an order drawn at random, some of them undone."""
    add_diesel()
    begun(FAN)
    pick = random.Random(5)
    found = []
    for act in pick.sample(ACTS, len(ACTS)):
        entry = act()
        found.append(whole(look()))
        assert found[-1] == anew()
        if pick.random() < 0.4:
            acts.undo(entry_id=entry.pk, who="Ida")
            assert whole(look()) == anew()
    assert len({repr(each) for each in found}) > len(ACTS) / 2  # they do change something


def _say(about: str, said: str):
    return lambda: acts.say_in_search(machine="diesel", said={about: said}, who="Ida")


def _at_hand(**given):
    return lambda: acts.set_at_hand(machine="diesel", who="Ida", **given)


def _read(figure: str, typed: list[str]):
    return lambda: acts.take_reading(machine="diesel", figure=figure, typed=typed, who="Ida").entry


def _change_book():
    text = starter_text(DIESEL).replace("prior: occasional", "prior: common", 3)
    return acts.change_book(machine="diesel", book_text=text, who="Ida")


ACTS = [
    _say("sign:knock", "seen"),
    _say("sign:white-smoke-hard-start", "seen"),
    _say("cause:governor-mesh-worn", "cleared"),
    _say("cause:fan-bevels-worn", "cleared"),
    _at_hand(people=2),
    _at_hand(young=True),
    lambda: acts.write_note(machine="diesel", about="machine", text="looked", who="Ida"),
    lambda: acts.open_joint(machine="diesel", joint="Bonnet to its supports", who="Ida"),
    _read("governor-mesh-lash", ["0.030 in", "0.031 in", "0.029 in", "0.030 in"]),
    _read("fan-rock", ["0.36"] * 4),
    lambda: acts.import_counts(
        text=json.dumps({"form": "shimstock fault counts 1", "causes": {"linkage-slack": MANY}}),
        label="a",
        who="Ida",
    ),
    _change_book,
]
MANY = {"confirmed": 30, "looked": 40}
