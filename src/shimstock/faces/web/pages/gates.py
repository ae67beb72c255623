"""Gates: what still stands before paint, first start, road and handing over."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import do_and_show, page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.places import address_of
from shimstock.faces.web.wrong import NOT_DONE, Wrong
from shimstock.trade.reach.answers import NOT_NEEDED
from shimstock.workshop import acts
from shimstock.workshop.find import find_gate
from shimstock.workshop.looking import DEFERS, Seen, minutes, see
from shimstock.workshop.passing import gate_word, passes, signed_answers
from shimstock.workshop.places import (
    gate_place,
    joint_place,
    piece_place,
    reading_place,
    search_place,
)
from shimstock.workshop.refused import Refused

if TYPE_CHECKING:
    from shimstock.trade.machine.gates import Point
    from shimstock.trade.reach.gates import GateView
    from shimstock.trade.reach.open_point import OpenPoint
    from shimstock.workshop.models import DiaryEntry, GatePass


@dataclass(frozen=True)
class Stands:
    """A gate as it stands, and who passed it."""

    view: GateView
    word: str
    passed: GatePass | None

    @property
    def foreseen(self) -> str:
        """The minutes that can be foreseen; "" for none."""
        return minutes(self.view.minutes) if self.view.minutes else ""


@dataclass(frozen=True)
class ToDo:
    """An open point, the page where it is done, and its question where it is one."""

    point: OpenPoint
    address: str
    question: Point | None


def gates(asked: Asked, slug: str) -> HttpResponse:
    """Every gate."""
    seen = see(slug)
    passed = passes(seen)
    stands = [_stands(seen, view, passed.get(key)) for key, view in seen.gates.items()]
    return page(asked, "gates.html", seen=seen, here="gates", gates=stands)


def gate(asked: Asked, slug: str, gate: str) -> HttpResponse:
    """One gate; or, of a form, an answer signed or the gate passed."""
    if asked.method != "POST":
        return _shown(asked, slug, gate)
    return do_and_show(
        asked,
        lambda: _act(asked, slug, gate),
        then=asked.path,
        again=lambda wrong: _shown(asked, slug, gate, wrong),
    )


def _act(asked: Asked, slug: str, gate: str) -> DiaryEntry:
    if asked.POST.get("do") == "pass":
        return acts.pass_gate(machine=slug, gate=gate, who=asked.who)
    return acts.answer_point(
        machine=slug,
        point=_point(asked.POST.get("point", "")),
        answer=_answer(asked.POST.get("answer", ""), asked.POST.get("own", "").strip()),
        reason=asked.POST.get("reason", ""),
        who=asked.who,
    )


def _point(key: str) -> str:
    """The point that was chosen. Raises Refused for none."""
    if not key:
        raise Refused(["Say which point is not needed."])
    return key


def _answer(chosen: str, own: str) -> str:
    """The answer that was chosen, or the person's own words. Raises Refused for both."""
    if chosen and own:
        raise Refused([f"You chose “{chosen}” and wrote “{own}”: leave one of them out."])
    return chosen or own


def _shown(asked: Asked, slug: str, gate: str, wrong: Wrong | None = None) -> HttpResponse:
    seen = see(slug)
    key = find_gate(seen.book, gate)
    view, own = seen.gates[key], seen.book.gates[key].cautions
    to_do = [_to_do(seen, key, point) for point in view.open_points]
    return page(
        asked,
        "gate.html",
        seen=seen,
        here="gates",
        status=NOT_DONE if wrong else 200,
        wrong=wrong,
        typed=asked.POST,
        gate=_stands(seen, view, passes(seen).get(key)),
        to_do=to_do,
        may_be_set_aside=[e.point for e in to_do if not e.question and not e.point.hard],
        signed=signed_answers(seen, key),
        own_cautions=[due.caution for due in view.cautions if due.key in own],
        work_cautions=[due.caution for due in view.cautions if due.key not in own],
        working=view.working.shown(),
        not_needed=NOT_NEEDED,
        defers=DEFERS,
    )


def _stands(seen: Seen, view: GateView, passed: GatePass | None) -> Stands:
    word = gate_word(passed=view.key in seen.now.passed, may_be_passed=view.may_be_passed)
    return Stands(view, word, passed)


def _to_do(seen: Seen, gate: str, point: OpenPoint) -> ToDo:
    """A point of a gate; questions of the gates before it may stand open again too."""
    gates = seen.book.gates
    asking = [each for each in (gates[gate], *gates.values()) if point.key in each.points]
    question = asking[0].points[point.key] if asking else None
    return ToDo(point, _address(seen, point), question)


def _address(seen: Seen, point: OpenPoint) -> str:
    """The page where a point is done; "" for a question, which is answered in place."""
    piece = point.key.partition("/")[2]
    match point.kind:
        case "gate":
            place = gate_place(point.where)
        case "part":
            place = piece_place(point.where, piece)
        case "reading":
            place = reading_place(point.where, piece, "")
        case "fault":
            place = search_place(int(point.where))
        case "set":
            place = piece_place(seen.book.members(point.where)[0], "")
        case "question":
            return ""
        case _:
            place = joint_place(point.where)
    return address_of(place, seen.row.slug)


URLS = [
    path("m/<slug:slug>/gates/", gates, name="gates"),
    path("m/<slug:slug>/gates/<str:gate>/", gate, name="gate"),
]
