from django.db import connection
from django.test.utils import CaptureQueriesContext

from shimstock.trade.machine.words import Stage
from shimstock.workshop.now import machine_now
from workshop.shed_book import LINER_1


def test_a_machine_is_read_in_five_selects(machine, do, django_assert_num_queries):
    do.open_joint(joint="J2", path=True)
    do.move_piece(part="pump", piece="left", to="off")
    do.take_reading(figure="bore", piece="1", typed=LINER_1)
    do.answer_point(point="degreased", answer="yes")

    with django_assert_num_queries(5):
        now = machine_now(machine)

    assert set(now.joints) == {"hood-joint", "cover-joint"}
    assert set(now.pieces) == {("pump", "left")}
    assert ("bore", "1", Stage.FOUND) in now.verdicts
    assert set(now.answers) == {"degreased"}


def test_the_selects_do_not_grow_with_the_machine(machine, do):
    with CaptureQueriesContext(
        connection,
    ) as before:
        machine_now(machine)
    for joint in ("J1", "J2", "J3"):
        do.open_joint(joint=joint)
    with CaptureQueriesContext(connection) as after:
        machine_now(machine)

    assert len(before) == len(after)


def test_one_machine_holds_nothing_of_another(machine, do):
    from shimstock.workshop import acts
    from workshop.shed_book import MONDAY, TEXT

    acts.add_machine(slug="red", name="Red", book_text=TEXT, who="Ann", at=MONDAY)
    acts.open_joint(machine="red", joint="J3", who="Ben")
    do.open_joint(joint="J1")

    assert set(machine_now(machine).joints) == {"hood-joint"}
