"""How a machine stands is remembered until something is written about it."""

from threading import Thread
from time import sleep

import pytest
from django.db import connections, transaction

from shimstock.trade.machine.words import JointWord
from shimstock.workshop.looking import forget, see, see_all
from shimstock.workshop.models import Machine
from shimstock.workshop.refused import NotFound

# What is committed is remembered, so these tests commit.
pytestmark = pytest.mark.django_db(transaction=True)


def test_a_machine_is_looked_up_once_until_it_changes(machine, do, django_assert_num_queries):
    see("grey")

    with django_assert_num_queries(1):  # which machine it is, and the last entry of its diary
        before = see("grey")
    do.open_joint(joint="J1")
    after = see("grey")

    assert before.now.joint("hood-joint").word is JointWord.UNDISTURBED
    assert after.now.joint("hood-joint").word is JointWord.OPEN
    assert after.latest > before.latest


@pytest.mark.parametrize("typed", ["grey", " GREY ", "the grey"])
def test_a_machine_is_found_by_what_is_typed_whether_remembered_or_not(machine, typed):
    Machine.objects.update(name="The Grey")
    first = see(typed)

    assert first.row.slug == "grey"
    assert see(typed) is first
    with pytest.raises(NotFound):
        see("green")


def test_a_machine_that_was_taken_away_is_seen_no_more(machine, do):
    see("grey")
    do.undo(Machine.objects.get().diary.first())

    with pytest.raises(NotFound):
        see("grey")


def test_an_undo_is_seen_too(machine, do):
    entry = do.open_joint(joint="J1")
    see("grey")
    do.undo(entry)

    assert see("grey").now.joint("hood-joint").word is JointWord.UNDISTURBED


def test_the_whole_shed_is_one_select_while_nothing_changes(machine, django_assert_num_queries):
    see_all()

    with django_assert_num_queries(1):
        [seen] = see_all()
    assert seen.row.slug == "grey"


def test_no_more_machines_are_kept_in_mind_than_will_do(machine, monkeypatch):
    from shimstock.workshop import looking

    monkeypatch.setattr(looking, "REMEMBERED", 0)
    see("grey")

    assert len(looking._remembered) == 0


@pytest.mark.parametrize("machine_changed", [True, False])
def test_forgetting_looks_anew(machine, machine_changed):
    first = see("grey")
    if machine_changed:
        forget()

    assert (see("grey") is first) is not machine_changed


def test_what_is_rolled_back_is_never_remembered(machine, do):
    """A number that was given back names another entry later."""
    with transaction.atomic():
        do.open_joint(joint="J1")
        assert see("grey").now.joint("hood-joint").word is JointWord.OPEN
        transaction.set_rollback(True)
    do.open_joint(joint="J3")

    assert see("grey").now.joint("hood-joint").word is JointWord.UNDISTURBED
    assert see("grey").now.joint("sump-joint").word is JointWord.OPEN


def test_a_book_that_many_pages_wait_for_is_read_once(machine, monkeypatch):
    from shimstock.workshop import books, looking

    row, read, began = Machine.objects.get(), books.read_book, []

    def slowly(*book, **how):
        began.append(book)
        sleep(0.2)
        return read(*book, **how)

    monkeypatch.setattr(books, "read_book", slowly)
    books._read.cache_clear()
    pages = [Thread(target=looking._read_books, args=[[row]]) for _ in range(4)]
    for page in pages:
        page.start()
    for page in pages:
        page.join()

    assert len(began) == 1


def test_a_file_put_in_the_place_of_the_database_has_other_machines(machine, monkeypatch):
    """An archive that was put back may have the same numbers of another history."""
    from shimstock.workshop import file_opened

    first = see("grey")
    monkeypatch.setattr(file_opened, "opened_by", lambda _: (7, 7))
    other = see("grey")

    assert other is not first
    assert see("grey") is other


def test_what_a_page_remembers_is_of_the_file_that_it_opened(machine, monkeypatch):
    """Another page may open the file that was put back before this one is done."""
    from shimstock.workshop import file_opened, looking

    connection = connections["default"]
    monkeypatch.setattr(file_opened, "_file_of", lambda _: (7, 7))
    file_opened.note_opened(connection)
    monkeypatch.setattr(file_opened, "_file_of", lambda _: (8, 8))
    see("grey")

    assert [key[0] for key in looking._remembered] == [(7, 7)]
    del file_opened._opened[connection]
