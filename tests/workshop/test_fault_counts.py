"""What was found and put right counts for the priors, here and, through a file, in another shed."""

import json

import pytest

from shimstock.trade.numbers.not_understood import HardlyMeant
from shimstock.workshop import acts
from shimstock.workshop.counts_file import read_counts
from shimstock.workshop.fault_search.counts import (
    Count,
    counts,
    export_counts,
    imported,
    own_counts,
)
from shimstock.workshop.fault_search.view import see_search
from shimstock.workshop.looking import see
from shimstock.workshop.models import FaultCounts, FaultFound, FaultSaid, FaultSearch, Workshop
from shimstock.workshop.refused import NotFound, Refused
from workshop.fault_shed import FAN, add_diesel, begun, look

MESH = "governor-mesh-worn"
FILE = json.dumps(
    {"form": "shimstock fault counts 1", "causes": {MESH: {"confirmed": 2, "looked": 6}}}
)


def file_of(workshop="a1", written="2026-03-01T18:30:00+00:00", **causes):
    """A file as a workshop of that name would write it; of the mesh, 2 of 6, if not said."""
    counted = {key.replace("_", "-"): each for key, each in causes.items()} or {MESH: (2, 6)}
    named = {key: {"confirmed": each[0], "looked": each[1]} for key, each in counted.items()}
    said = {"form": "shimstock fault counts 1", "workshop": workshop, "written": written}
    return json.dumps({**said, "causes": named})


def labels():
    return [(each.label, each.confirmed, each.looked, each.known) for each in imported()]


def take_in(text, label="", **said):
    return acts.import_counts(text=text, label=label, who="Ida", **said)


@pytest.fixture
def diesel(db):
    return add_diesel()


def prior(slug="diesel"):
    return see_search(see(slug), None).network.causes[MESH]


def put_right(slug="diesel", cause=MESH):
    return acts.fault_found(machine=slug, cause=cause, who="Ida")


def test_a_fault_put_right_raises_its_prior_and_undo_takes_it_back(diesel):
    """The book's word is worth 20 machines: (0.03·20 + 1)/(20 + 1) = 0.0762; our choice."""
    before = prior()
    entry = put_right()
    assert (before, round(prior(), 4)) == (0.03, 0.0762)

    acts.undo(entry_id=entry.pk, who="Ida")
    assert prior() == before


def test_what_was_found_counts_on_every_machine_of_the_workshop(diesel):
    add_diesel("other")
    put_right("other")

    assert round(prior("diesel"), 4) == 0.0762
    found = begun(FAN).ranking[0]
    assert (found.key, found.confirmed, found.looked) == (MESH, 1, 1)
    assert found.prior_says == "occasional, 0.03 (stand-in); found 1 of 1 time looked for"
    assert "(0.03·20 + 1)/(20 + 1) = 0.07619" in look().why(MESH).prior_working[-1]


def test_a_cause_that_was_cleared_counts_as_looked_at_once_a_machine(diesel):
    for _ in range(2):
        begun({MESH: "cleared"})
        acts.end_search(machine="diesel", who="Ida", given_up=True)
    assert own_counts() == {MESH: Count(0, 1)}

    put_right()
    assert own_counts() == {MESH: Count(1, 1)}  # the same machine: it had it after all
    put_right()
    assert own_counts() == {MESH: Count(2, 2)}  # and again, years later


def test_what_was_said_and_withdrawn_counts_for_nothing(diesel):
    begun({MESH: "cleared", "gear-loose": "there"})
    acts.say_in_search(machine="diesel", said={MESH: "not looked"}, who="Ida")

    assert counts() == {}


def test_exported_counts_are_imported_in_another_shed(diesel):
    put_right()
    begun({"gear-loose": "cleared"})
    text = export_counts()
    for table in (FaultFound, FaultSaid, FaultSearch):  # the other shed knows nothing of it
        table.objects.update(withdrawn=True)
    Workshop.objects.update(name="the other's own")
    assert counts() == {}

    entry = acts.import_counts(label="Shed at Lowmere", text=text, who="Ben")

    assert counts() == {MESH: Count(1, 1), "gear-loose": Count(0, 1)}
    assert entry.says == "Took in counts of 2 causes from Shed at Lowmere."
    assert entry.machine is None
    assert own_counts() == {}  # what came from elsewhere is not passed on as our own
    assert json.loads(export_counts())["causes"] == {}


def test_imported_counts_move_the_prior_and_are_taken_back(diesel):
    """(0.03·20 + 2)/(20 + 6) = 0.1."""
    entry = acts.import_counts(label="Lowmere", text=FILE, who="Ida")
    assert prior() == pytest.approx(0.1)
    assert [(each.label, each.causes, each.confirmed, each.looked) for each in imported()] == [
        ("Lowmere", 1, 2, 6)
    ]

    taken = acts.withdraw_counts(label="Lowmere", who="Ida")
    assert (prior(), imported()) == (0.03, [])
    assert taken.says == "Took back counts of 1 cause from Lowmere."
    acts.undo(entry_id=taken.pk, who="Ida")
    assert prior() == pytest.approx(0.1)
    assert entry.places == ["counts:Lowmere"]


def test_an_import_is_undone(diesel):
    entry = acts.import_counts(label="Lowmere", text=FILE, who="Ida")

    acts.undo(entry_id=entry.pk, who="Ida")

    assert prior() == 0.03


def test_the_same_label_twice_is_refused_unless_it_replaces(diesel):
    acts.import_counts(label="Lowmere", text=FILE, who="Ida")
    with pytest.raises(Refused, match="Counts from Lowmere are here already; replace them"):
        acts.import_counts(label=" Lowmere ", text=FILE, who="Ida")
    assert FaultCounts.objects.count() == 1

    more = FILE.replace('"looked": 6', '"looked": 40')
    entry = acts.import_counts(label="Lowmere", text=more, replace=True, who="Ida")

    assert counts() == {MESH: Count(2, 40)}
    acts.undo(entry_id=entry.pk, who="Ida")
    assert counts() == {MESH: Count(2, 6)}


def test_several_workshops_add_up(diesel):
    """Even where they found the very same: each of them has a name of its own."""
    take_in(file_of("a1"), "Lowmere")
    take_in(file_of("b2"), "Brackwater")

    assert counts() == {MESH: Count(4, 12)}


def test_the_same_file_twice_counts_once(diesel):
    take_in(file_of(), "Lowmere")
    entry = take_in(file_of(), "Lowmere")

    assert counts() == {MESH: Count(2, 6)}
    assert entry.says == "Took in counts of 1 cause from Lowmere, in place of what was."


@pytest.mark.parametrize(
    ("label", "called"), [("Lowmere", "Lowmere"), ("", "Lowmere"), ("L.", "L.")]
)
def test_a_newer_file_takes_the_place_of_the_older_one(diesel, label, called):
    take_in(file_of(), "Lowmere")
    newer = file_of(
        written="2026-04-01T18:30:00+00:00", governor_mesh_worn=(3, 9), gear_loose=(1, 1)
    )
    entry = take_in(newer, label)

    assert counts() == {MESH: Count(3, 9), "gear-loose": Count(1, 1)}
    assert labels() == [(called, 4, 10, True)]
    acts.undo(entry_id=entry.pk, who="Ida")
    assert counts() == {MESH: Count(2, 6)}
    assert labels() == [("Lowmere", 2, 6, True)]


def test_what_a_newer_file_counts_no_more_counts_no_more(diesel):
    """The other workshop has undone something meanwhile."""
    take_in(file_of(governor_mesh_worn=(3, 9), gear_loose=(1, 1)), "Lowmere")
    take_in(file_of(written="2026-04-01T18:30:00Z"))

    assert counts() == {MESH: Count(2, 6)}


def test_an_older_file_is_refused_unless_it_is_to_replace(diesel):
    take_in(file_of(written="2026-04-01T18:30:00+00:00", governor_mesh_worn=(3, 9)), "Lowmere")
    with pytest.raises(Refused, match=r"1 Mar 2026 .* of Lowmere on 1 Apr 2026 .* it is older"):
        take_in(file_of())
    assert counts() == {MESH: Count(3, 9)}

    take_in(file_of(), replace=True)
    assert counts() == {MESH: Count(2, 6)}


def test_ones_own_counts_are_refused(diesel):
    put_right()
    with pytest.raises(Refused, match="this workshop's own counts, and they count here already"):
        take_in(export_counts(), "Lowmere", replace=True, meant=True)
    assert counts() == {MESH: Count(1, 1)}


def test_a_workshop_keeps_its_name_and_no_other_has_it(diesel):
    put_right()
    first, second = (json.loads(export_counts())["workshop"] for _ in range(2))

    assert first == second
    assert len(first) == 32
    Workshop.objects.all().delete()
    assert json.loads(export_counts())["workshop"] != first


def test_a_file_says_when_it_was_written(diesel):
    from django.utils import timezone

    put_right()
    ago = timezone.now() - read_counts(export_counts()).written

    assert 0 <= ago.total_seconds() < 10


def test_of_a_file_without_a_name_it_is_said_that_nobody_can_know(diesel):
    entry = take_in(FILE, "Lowmere")

    assert "does not say whose it is, so nobody can know whether it was taken in" in entry.says
    assert labels() == [("Lowmere", 2, 6, False)]


@pytest.mark.parametrize(
    ("first", "second"),
    [(FILE, FILE), (FILE, file_of()), (file_of(), FILE)],
    ids=["neither says whose", "only the second says", "only the first says"],
)
def test_the_same_counts_under_another_name_are_asked_about(diesel, first, second):
    take_in(first, "Lowmere")
    with pytest.raises(HardlyMeant, match="brings the same counts, to the last one, as Lowmere"):
        take_in(second, "Brackwater")
    assert counts() == {MESH: Count(2, 6)}

    take_in(second, "Brackwater", meant=True)
    assert counts() == {MESH: Count(4, 12)}


def test_other_counts_without_a_name_are_taken_in_without_a_question(diesel):
    take_in(FILE, "Lowmere")
    take_in(FILE.replace('"looked": 6', '"looked": 7'), "Brackwater")

    assert counts() == {MESH: Count(4, 13)}


def test_a_named_file_takes_the_place_of_a_nameless_one_only_where_it_is_told_to(diesel):
    """The same workshop, which has a newer version of this program by now."""
    take_in(FILE, "Lowmere")
    newer = file_of(governor_mesh_worn=(3, 9))
    with pytest.raises(Refused, match="Counts from Lowmere are here already"):
        take_in(newer, "Lowmere")

    entry = take_in(newer, "Lowmere", replace=True)
    assert counts() == {MESH: Count(3, 9)}
    acts.undo(entry_id=entry.pk, who="Ida")
    assert labels() == [("Lowmere", 2, 6, False)]


def test_what_was_taken_back_does_not_come_back_beside_what_the_same_workshop_gave_since(diesel):
    take_in(file_of(), "Lowmere")
    taken = acts.withdraw_counts(label="Lowmere", who="Ida")
    take_in(file_of(governor_mesh_worn=(3, 9)), "Lowmere by the sea")

    with pytest.raises(Refused, match="A later act is about the same thing"):
        acts.undo(entry_id=taken.pk, who="Ida")
    assert counts() == {MESH: Count(3, 9)}


def test_what_was_taken_back_does_not_come_back_under_a_label_that_is_another_workshops_by_now(
    diesel,
):
    take_in(file_of("a1"), "Lowmere")
    taken = acts.withdraw_counts(label="Lowmere", who="Ida")
    other = take_in(file_of("b2", governor_mesh_worn=(3, 9)), "Lowmere")

    with pytest.raises(Refused, match="Another workshop's counts are called Lowmere here by now"):
        acts.undo(entry_id=taken.pk, who="Ida")
    assert counts() == {MESH: Count(3, 9)}

    acts.undo(entry_id=other.pk, who="Ida")
    acts.undo(entry_id=taken.pk, who="Ida")
    assert counts() == {MESH: Count(2, 6)}


def test_an_unknown_label_is_not_taken_back(diesel):
    acts.import_counts(label="Lowmere", text=FILE, who="Ida")
    with pytest.raises(NotFound, match="Did you mean Lowmere"):
        acts.withdraw_counts(label="Lomere", who="Ida")


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("{", "no JSON"),
        ("[" * 100_000, "no JSON"),
        ("[]", "form None"),
        ('{"form": "other"}', "form 'other'"),
        (FILE.replace("causes", "cases"), "counts no causes"),
        (FILE.replace('{"confirmed": 2, "looked": 6}', "3"), "has no counts"),
        (FILE.replace("2", "true"), "confirmed is True"),
        (FILE.replace("2", "-1"), "confirmed is -1"),
        (FILE.replace("6", "6.5"), "looked is 6.5"),
        (FILE.replace("2", "7"), "found 7 times on 6 machines"),
        (FILE.replace("6", "9999999"), "whole number from 0 to 1000000"),
        (FILE.replace(MESH, " "), "cannot be the key of a cause"),
        (file_of(workshop=7), "workshop is '7'; what export writes there would do"),
        (file_of(workshop="a" * 65), "workshop is 'aaaa"),
        (file_of(workshop="a\nb"), "workshop is 'a.*b'"),
        (file_of(written="yesterday"), "written is 'yesterday'; a time would do, such as 2026-"),
        (file_of(written=7), "written is '7'"),
    ],
)
def test_a_faulty_file_says_what_is_wrong_with_it(db, text, message):
    with pytest.raises(Refused, match=message):
        read_counts(text)


def test_every_fault_of_a_file_is_told_at_once(db):
    text = json.dumps({"form": "shimstock fault counts 1", "causes": {"a": 1, "b": {}}})
    with pytest.raises(Refused) as refused:
        read_counts(text)
    assert len(refused.value.reasons) == 2


def test_counts_without_a_name_are_refused(db):
    with pytest.raises(Refused, match="say from which workshop"):
        acts.import_counts(label=" ", text=FILE, who="Ida")
