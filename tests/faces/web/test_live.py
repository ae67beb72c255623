"""What was written down since a page was made."""

import pytest


@pytest.fixture
def asked(pages):
    return lambda **about: pages.get("/live/", about)


def test_nothing_new_is_an_empty_answer(asked, grey):
    assert asked(since=grey.pk, machine="grey").status_code == 204


def test_the_newest_entries_are_told_oldest_first(asked, grey):
    from shimstock.workshop import acts

    for joint in ("J1", "J2", "J3"):
        last = acts.open_joint(machine="grey", joint=joint, who="Ben", path=True)

    told = asked(since=grey.pk, machine="grey").json()

    assert told["latest"] == last.pk
    assert [entry["who"] for entry in told["entries"]] == ["Ben"] * 3
    assert "hood" in told["entries"][0]["says"]
    assert asked(since=last.pk, machine="grey").status_code == 204


def test_of_another_machine_nothing_is_told_there_and_all_in_the_shed(asked, grey):
    from shimstock.workshop import acts
    from workshop.shed_book import MONDAY, TEXT

    acts.add_machine(slug="red", name="Red", book_text=TEXT, who="Ben", at=MONDAY)

    assert asked(since=grey.pk, machine="grey").status_code == 204
    assert [entry["who"] for entry in asked(since=grey.pk).json()["entries"]] == ["Ben"]


@pytest.mark.parametrize("since", ["", "soon", "-1"])
def test_a_page_that_does_not_know_asks_for_nothing(asked, since):
    assert asked(since=since).status_code == 204


def test_no_more_than_a_few_are_told(asked, grey):
    from shimstock.workshop import acts

    for n in range(8):
        acts.move_piece(machine="grey", part="pump", piece="left", to="off", note=f"{n}", who="Ben")

    told = asked(since=grey.pk, machine="grey").json()["entries"]

    assert ["7" in told[-1]["says"], len(told)] == [True, 5]
