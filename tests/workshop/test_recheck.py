import pytest

from shimstock.workshop import acts
from shimstock.workshop.models import DiaryEntry, VerdictRow
from shimstock.workshop.refused import Refused
from workshop.shed_book import LINER_1, LINER_2, TEXT


@pytest.fixture
def read(do) -> None:
    do.take_reading(figure="bore", piece="1", typed=LINER_1)
    do.take_reading(figure="bore", piece="2", typed=LINER_2)
    do.take_reading(figure="end-float", typed="0.015")


@pytest.fixture
def drifted(read) -> VerdictRow:
    """A verdict that an older program gave otherwise."""
    VerdictRow.objects.filter(figure="end-float").update(
        verdict="good", says="0.0150 in: good", p=1.0, code_version="0.0.1"
    )
    return VerdictRow.objects.get(figure="end-float")


def test_what_today_gives_the_same_is_no_change(read):
    found = acts.recheck()

    assert found.looked_at == 5  # two bores, two tapers, one end float
    assert found.changes == ()
    assert found.entries == ()


def test_what_would_change_is_listed_and_nothing_is_stored(drifted):
    found = acts.recheck()

    (change,) = found.changes
    assert (change.machine, change.figure, change.stage) == ("grey", "end-float", "as found")
    assert (change.stored.verdict, change.today.verdict) == ("good", "worn out")
    assert (change.stored.p, change.stored.code_version) == (1.0, "0.0.1")
    assert change.today.p < 0.5
    assert VerdictRow.objects.filter(current=True, figure="end-float").get() == drifted
    assert not DiaryEntry.objects.filter(act="recheck").exists()


@pytest.mark.parametrize("column", [{"p": 0.5}, {"value": 0.0149}, {"says": "otherwise"}])
def test_a_change_of_value_or_chance_or_words_is_seen(read, column):
    VerdictRow.objects.filter(figure="end-float").update(**column)

    assert len(acts.recheck().changes) == 1


def test_applying_stores_todays_beside_the_old_and_says_so(drifted, do):
    found = acts.recheck(apply=True, who="Ann")

    (entry,) = found.entries
    assert entry.says == "Rechecked: 1 verdict changed."
    assert VerdictRow.objects.get(figure="end-float", current=True).verdict == "worn out"
    assert VerdictRow.objects.get(figure="end-float", current=False) == drifted
    assert acts.recheck().changes == ()
    do.undo(entry)
    assert VerdictRow.objects.get(figure="end-float", current=True) == drifted


def test_a_decision_stays_with_a_verdict_whose_word_stays(read, do):
    do.accept_verdict(figure="end-float", reason="it may stay")
    VerdictRow.objects.filter(figure="end-float").update(p=0.4)

    acts.recheck(apply=True, who="Ann")

    row = VerdictRow.objects.get(figure="end-float", current=True)
    assert (row.accepted_reason, row.accepted_by) == ("it may stay", "Ann")


def test_applying_needs_a_person(drifted):
    with pytest.raises(Refused, match="say who"):
        acts.recheck(apply=True)
    assert acts.recheck().changes != ()


def test_it_tells_how_far_it_is_and_stops_when_asked(drifted):
    acts.add_machine(slug="red", name="Red", book_text=TEXT, who="Ann")
    acts.take_reading(machine="red", figure="end-float", typed="0.006", who="Ann")
    told = []

    def stop_after_the_first(done: int, total: int) -> bool:
        told.append((done, total))
        return False

    found = acts.recheck(progress=stop_after_the_first)

    assert told == [(5, 6)]
    assert found.stopped
    assert found.looked_at == 5
    assert acts.recheck(machine="red").looked_at == 1


def test_a_decision_falls_with_a_verdict_whose_word_changes(read, do):
    do.accept_verdict(figure="end-float", reason="it may stay")
    VerdictRow.objects.filter(figure="end-float").update(verdict="borderline")

    acts.recheck(apply=True, who="Ann")

    row = VerdictRow.objects.get(figure="end-float", current=True)
    assert (row.verdict, row.accepted_reason) == ("worn out", "")


def test_a_formula_that_is_changed_is_seen_by_judging_anew(read, monkeypatch):
    from shimstock.trade.measure import judge

    monkeypatch.setattr(judge, "within", lambda *_, **__: 0.25)

    changes = acts.recheck().changes

    assert len(changes) == 5
    assert {change.today.p for change in changes} == {0.25}


def test_all_machines_are_counted_together(read):
    acts.add_machine(slug="red", name="Red", book_text=TEXT, who="Ann")
    acts.take_reading(machine="red", figure="end-float", typed="0.006", who="Ann")

    assert acts.recheck().looked_at == 6
