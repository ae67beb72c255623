"""A form is acted on once however often it comes, and never over what others did meanwhile."""

from functools import partial

import pytest

from shimstock.workshop import acts
from shimstock.workshop.models import DiaryEntry
from shimstock.workshop.sending import (
    ChangedMeanwhile,
    Sending,
    SentOtherwise,
    send_once,
    sending_now,
)


def latest() -> int:
    return DiaryEntry.objects.order_by("-pk").values_list("pk", flat=True)[0]


@pytest.fixture
def open_hood(machine):
    return partial(acts.open_joint, machine=machine, joint="J1", who="Ann")


def test_a_form_that_comes_twice_is_acted_on_once(machine, open_hood):
    sending = Sending("a-form", {"joint": ["J1"]})

    first = send_once(sending, open_hood)
    again = send_once(sending, open_hood)

    assert (first.repeated, again.repeated) == (False, True)
    assert again.entry == first.entry
    assert DiaryEntry.objects.filter(act="open").count() == 1
    assert sending_now() is None


def test_the_same_form_with_other_content_shows_both(machine, open_hood):
    send_once(Sending("a-form", {"bolts": ["12"]}), open_hood)

    with pytest.raises(SentOtherwise) as wrong:
        send_once(Sending("a-form", {"bolts": ["11"]}), open_hood)

    assert (wrong.value.first, wrong.value.second) == ({"bolts": ["12"]}, {"bolts": ["11"]})
    assert DiaryEntry.objects.filter(act="open").count() == 1


def test_what_was_refused_may_be_sent_again_under_the_same_key(machine):
    sending = Sending("a-form", {})
    too_early = partial(acts.open_joint, machine=machine, joint="J2", who="Ann")

    with pytest.raises(Exception, match="hood"):
        send_once(sending, too_early)
    acts.open_joint(machine=machine, joint="J1", who="Ann")

    assert send_once(sending, too_early).repeated is False


def test_a_page_that_grew_old_writes_over_nobody(machine, do):
    do.open_joint(joint="J1")
    seen = latest()
    acts.ready_joint(machine=machine, joint="J1", bolts=2, who="Ben")
    ready = partial(acts.ready_joint, machine=machine, joint="J1", bolts=4, who="Ann")

    with pytest.raises(ChangedMeanwhile) as wrong:
        send_once(Sending("a-form", {}, seen=seen), ready)

    assert [entry.who for entry in wrong.value.entries] == ["Ben"]
    assert machine.joints.get().bolts_ready == 2
    assert send_once(Sending("a-form", {}, seen=latest()), ready).repeated is False
    assert machine.joints.get().bolts_ready == 4


def test_what_others_did_elsewhere_stands_in_nobodys_way(machine, do):
    do.open_joint(joint="J1")
    seen = latest()
    acts.open_joint(machine=machine, joint="J3", who="Ben")
    cover = partial(acts.cover_joint, machine=machine, joint="J1", who="Ann")

    assert send_once(Sending("a-form", {}, seen=seen), cover).repeated is False


def test_two_readings_of_one_figure_meet(machine, do):
    seen = latest()
    do.take_reading(figure="end-float", typed="0.0119")
    mine = partial(
        acts.take_reading, machine=machine, figure="end-float", typed="0.0121", who="Ben"
    )

    with pytest.raises(ChangedMeanwhile, match=r"0\.0119"):
        send_once(Sending("a-form", {}, seen=seen), lambda: mine().entry)


def test_readings_of_two_liners_do_not_meet_in_what_follows_from_both(machine, do):
    """Both change what is said of the liners together; neither writes over the other."""
    for piece in ("1", "2"):
        do.take_reading(figure="bore", piece=piece, typed=["5.7510"] * 6)
    seen = latest()
    first = do.take_reading(figure="bore", piece="1", typed=["5.7512"] * 6)
    mine = partial(
        acts.take_reading,
        machine=machine,
        figure="bore",
        piece="2",
        typed=["5.7513"] * 6,
        who="Ben",
    )
    follows = [place for place in first.entry.places if place.startswith("verdict:")]
    assert len(follows) > 1

    assert send_once(Sending("a-form", {}, seen=seen), lambda: mine().entry).repeated is False


def test_of_two_sendings_at_once_the_slower_is_told_that_it_is_done(machine, open_hood):
    """The act is refused for what the other sending did a moment before: no error of anybody's."""
    sending = Sending("a-form", {}, seen=latest())

    def after_the_other():
        send_once(sending, open_hood)
        return open_hood()

    sent = send_once(sending, after_the_other)

    assert sent.repeated is True
    assert DiaryEntry.objects.filter(act="open").count() == 1
