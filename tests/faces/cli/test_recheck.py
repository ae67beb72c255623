import json
import os
import signal

from shimstock.workshop.acts.recheck import Recheck


def test_nothing_would_change_on_a_fresh_shed(in_demo, run):
    told = json.loads(run("shimstock recheck --json").out)

    assert told["looked_at"] > 50
    assert (told["changes"], told["entries"], told["stopped"]) == ([], [], False)


def test_a_verdict_that_would_change_is_a_fault_until_it_is_applied(in_demo, run):
    from shimstock.workshop.models import VerdictRow

    VerdictRow.objects.filter(figure="lost-motion", stage="as found").update(verdict="good")

    looked = run("shimstock recheck brackwater --json")
    applied = run("shimstock recheck brackwater --apply --json")

    assert looked.code == 1
    assert json.loads(looked.out)["changes"][0]["today"]["verdict"] == "worn out"
    assert applied.code == 0
    assert len(json.loads(applied.out)["entries"]) == 1
    assert json.loads(run("shimstock recheck --json").out)["changes"] == []


def test_ctrl_c_stops_it_between_two_machines(in_demo, run, monkeypatch):
    from shimstock.workshop import acts

    def interrupted(*, progress, **_):
        assert progress(1, 2) is True
        os.kill(os.getpid(), signal.SIGINT)
        return Recheck(1, (), (), stopped=progress(2, 2) is False)

    monkeypatch.setattr(acts, "recheck", interrupted)
    before = signal.getsignal(signal.SIGINT)
    ran = run("shimstock recheck")

    assert ran.code == 0
    assert "Stopped before the end" in ran.out
    assert signal.getsignal(signal.SIGINT) is before
