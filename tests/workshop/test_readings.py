import pytest
from django.db import IntegrityError

from shimstock.trade.measure.take import SlippedDigit
from shimstock.trade.numbers.instruments import Instrument
from shimstock.workshop.acts import recheck
from shimstock.workshop.models import DiaryEntry, ReadingRow, VerdictRow
from shimstock.workshop.now import machine_now
from shimstock.workshop.refused import NotFound, Refused
from workshop.shed_book import LINER_1, LINER_2, MONDAY


def current(machine) -> dict[tuple[str, str, str], str]:
    rows = machine.verdicts.filter(current=True)
    return {(row.figure, row.piece, row.stage): row.verdict for row in rows}


def test_a_bore_is_stored_as_typed_and_judged_with_what_follows_from_it(machine, do):
    took = do.take_reading(figure="F1", piece="1", typed=LINER_1, at=MONDAY)

    row = took.reading
    assert (row.figure, row.piece, row.stage) == ("bore", "1", "as found")
    assert row.typed == LINER_1
    assert row.values == [float(text) for text in LINER_1]
    assert (row.unit, row.instrument["name"], row.by, row.at) == (
        *("in", "bore gauge", "Ann"),
        MONDAY,
    )
    assert current(machine) == {
        ("bore", "1", "as found"): "serviceable",
        ("taper", "1", "as found"): "worn out",  # 0.0060 over the limit of 0.0050
    }
    assert {verdict.figure for verdict in took.verdicts} == {"bore", "taper"}
    assert (
        took.entry.says == f"Read liner bore (F1), 1, as found, {' '.join(LINER_1)}: serviceable."
    )


def test_the_whole_verdict_is_kept_with_its_working(do):
    took = do.take_reading(figure="bore", piece="1", typed=LINER_1)

    kept = VerdictRow.objects.get(figure="taper").data
    assert kept["says"] == VerdictRow.objects.get(figure="taper").says
    assert "5.7592" in str(kept["working"])
    assert not any("data" in fields for fields in took.entry.after.values())


def test_millimetres_are_understood_and_kept_as_typed(do):
    took = do.take_reading(figure="end-float", typed="0.15 mm")

    assert took.reading.typed == ["0.15 mm"]
    assert took.reading.values == pytest.approx([0.15 / 25.4])
    assert took.reading.unit == "in"


def test_a_second_reading_supersedes_the_first_which_stays(machine, do):
    first = do.take_reading(figure="end-float", typed="0.006")
    second = do.take_reading(figure="end-float", typed="0.015")

    first.reading.refresh_from_db()
    assert (first.reading.superseded, second.reading.superseded) == (True, False)
    assert [row.verdict for row in VerdictRow.objects.all()] == ["good", "worn out"]
    assert current(machine) == {("end-float", "", "as found"): "worn out"}


def test_as_finished_stands_beside_as_found(machine, do):
    do.take_reading(figure="end-float", typed="0.015")
    do.take_reading(figure="end-float", typed="0.006", stage="as finished")

    assert ReadingRow.objects.filter(superseded=False).count() == 2
    assert machine_now(machine).latest("end-float", "").verdict == "good"


def test_the_second_of_a_pair_judges_them_together(machine, do):
    do.take_reading(figure="delivery", piece="left", typed="24.2")
    assert ("delivery", "together", "as found") not in current(machine)

    took = do.take_reading(figure="delivery", piece="right", typed="21.6")

    assert current(machine)["delivery", "together", "as found"] == "worn out"
    assert {verdict.piece for verdict in took.verdicts} == {"right", "together"}


def test_a_slipped_digit_stores_nothing_until_it_is_meant(do):
    wrong = ["5.9752", *LINER_1[1:]]
    with pytest.raises(SlippedDigit):
        do.take_reading(figure="bore", piece="1", typed=wrong)
    assert not ReadingRow.objects.exists()
    assert DiaryEntry.objects.count() == 1

    took = do.take_reading(figure="bore", piece="1", typed=wrong, meant=True)
    assert took.reading.meant
    assert took.reading.values[0] == 5.9752


def test_earlier_readings_say_which_slip_is_likeliest(do):
    do.take_reading(figure="end-float", typed="0.0071")

    with pytest.raises(SlippedDigit) as refused:
        do.take_reading(figure="end-float", typed="7", stage="as finished")

    assert refused.value.would_do[0].startswith("0.0070")


def test_an_instrument_can_be_named_or_brought_along(do):
    named = do.take_reading(figure="end-float", typed="0.006", instrument="feeler gauge")
    assert named.reading.instrument["name"] == "feeler gauge"

    ours = Instrument("our dial", 0.0001, 0.0002, "in", source="its certificate")
    took = do.take_reading(figure="end-float", typed="0.0061", instrument=ours)
    assert took.reading.instrument["source"] == "its certificate"


@pytest.mark.parametrize(
    "given",
    [
        {"figure": "boar", "typed": "1"},
        {"figure": "bore", "piece": "3", "typed": LINER_1},
        {"figure": "end-float", "typed": "0.006", "stage": "as fund"},
    ],
)
def test_an_unknown_name_is_refused_and_nothing_is_stored(do, given):
    with pytest.raises(NotFound, match="Did you mean"):
        do.take_reading(**given)
    assert not ReadingRow.objects.exists()


def test_a_reading_sent_twice_is_stored_once(do):
    once = do.take_reading(figure="bore", piece="1", typed=LINER_1, client_key="phone-7")
    again = do.take_reading(figure="bore", piece="1", typed=LINER_1, client_key="phone-7")

    assert (once.repeated, again.repeated) == (False, True)
    assert (again.entry, again.reading) == (once.entry, once.reading)
    assert again.verdicts == once.verdicts
    assert ReadingRow.objects.count() == 1
    assert DiaryEntry.objects.filter(act="read").count() == 1


def test_a_key_used_again_for_other_numbers_loses_nothing(do):
    do.take_reading(figure="bore", piece="1", typed=LINER_1, client_key="phone-7")

    with pytest.raises(Refused, match="Choose a new key"):
        do.take_reading(figure="bore", piece="2", typed=LINER_2, client_key="phone-7")
    with pytest.raises(Refused, match="Choose a new key"):  # the same numbers of another liner
        do.take_reading(figure="bore", piece="2", typed=LINER_1, client_key="phone-7")


def test_undoing_a_reading_brings_back_what_stood_before(machine, do):
    first = do.take_reading(figure="bore", piece="1", typed=LINER_2)
    before = current(machine)
    second = do.take_reading(figure="bore", piece="1", typed=LINER_1)
    after = current(machine)
    assert before != after

    undone = do.undo(second.entry)

    first.reading.refresh_from_db()
    second.reading.refresh_from_db()
    assert (first.reading.superseded, second.reading.withdrawn) == (False, True)
    assert current(machine) == before
    assert machine_now(machine).latest("taper", "1").verdict == before["taper", "1", "as found"]
    do.undo(undone)
    assert current(machine) == after


def test_a_verdict_beyond_its_limit_is_accepted_by_a_person_with_a_reason(machine, do):
    do.take_reading(figure="end-float", typed="0.015")

    entry = do.accept_verdict(figure="end-float", reason="new thrusts are on order", at=MONDAY)

    row = machine.verdicts.get(current=True)
    assert (row.accepted_reason, row.accepted_by, row.accepted_at) == (
        *("new thrusts are on order", "Ann"),
        MONDAY,
    )
    assert machine_now(machine).latest("end-float", "").accepted == "new thrusts are on order"
    do.undo(entry)
    assert machine_now(machine).latest("end-float", "").accepted == ""


def test_an_acceptance_does_not_outlive_the_reading(machine, do):
    do.take_reading(figure="end-float", typed="0.015")
    do.accept_verdict(figure="end-float", reason="it may stay")
    do.take_reading(figure="end-float", typed="0.019")

    assert machine_now(machine).latest("end-float", "").accepted == ""


def test_how_far_a_pair_differs_is_accepted_as_together(machine, do):
    do.take_reading(figure="delivery", piece="left", typed="24.2")
    do.take_reading(figure="delivery", piece="right", typed="21.6")

    do.accept_verdict(figure="delivery", piece="together", reason="only for the yard")

    assert machine.verdicts.get(piece="together", current=True).accepted_by == "Ann"


@pytest.mark.parametrize(
    ("typed", "reason", "said"),
    [
        ("0.015", " ", "without a reason"),
        ("0.006", "why not", "good: there is nothing to accept"),
        ("0.010", "why not", "serviceable: there is nothing to accept"),
        (None, "why not", "no verdict yet"),
    ],
)
def test_there_is_nothing_to_accept_without_a_bad_verdict_and_a_reason(do, typed, reason, said):
    if typed:
        do.take_reading(figure="end-float", typed=typed)
    with pytest.raises(Refused, match=said):
        do.accept_verdict(figure="end-float", reason=reason)


def test_the_table_itself_refuses_an_acceptance_that_nobody_signed(machine, do):
    do.take_reading(figure="end-float", typed="0.015")

    with pytest.raises(IntegrityError):
        VerdictRow.objects.update(accepted_reason="so what")


def test_the_mean_of_several_readings_is_surer_than_one(machine, do):
    one = do.take_reading(figure="end-float", typed="0.0119", instrument="feeler gauge")
    (before,) = one.verdicts
    nine = do.take_reading(figure="end-float", typed="0.0119", instrument="feeler gauge", each=9)

    assert (one.reading.each, nine.reading.each) == (1, 9)
    assert nine.verdicts[0].data["expanded"] < before.data["expanded"]
    assert "0.0119, each the mean of 9: " in nine.entry.says
    assert recheck().changes == ()


@pytest.mark.parametrize("each", [0, -1, 101])
def test_a_number_is_the_mean_of_one_to_a_hundred_readings(do, each):
    with pytest.raises(Refused, match=f"mean of {each} readings: 1 to 100"):
        do.take_reading(figure="end-float", typed="0.0119", each=each)
    assert not ReadingRow.objects.exists()


def test_a_key_used_again_for_a_mean_of_more_is_another_sending(do):
    do.take_reading(figure="end-float", typed="0.0119", client_key="phone-7")

    with pytest.raises(Refused, match="Choose a new key"):
        do.take_reading(figure="end-float", typed="0.0119", each=4, client_key="phone-7")
