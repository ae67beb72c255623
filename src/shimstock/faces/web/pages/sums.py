"""The trade's sums as forms, each with its working."""

from __future__ import annotations

import builtins
from dataclasses import replace
from typing import Any

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web import sum_form
from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.wrong import NOT_DONE, NOT_THERE, Wrong, explained
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.by_words import by_words
from shimstock.trade.sums.declare import Sum
from shimstock.trade.sums.find import find_sum
from shimstock.trade.sums.said import said_beside, said_first, spoken, understood
from shimstock.trade.sums.typed import Done, Given, work_out
from shimstock.workshop.looking import DEFERS


def sums(asked: Asked) -> HttpResponse:
    """Every sum by family, or those that some words find."""
    return _listed(asked, (asked.GET.get("q") or "").strip())


def sum(asked: Asked, name: str) -> HttpResponse:
    """One sum: its form, and its answer where the address holds values."""
    try:
        found = find_sum(name)
    except NotUnderstood:
        return _listed(asked, name.replace("-", " "), NOT_THERE)
    wants = sum_form.read(found, asked.GET)
    done, error = _worked_out(found, wants)
    wrong = sum_form.wrong_in(found, wants, error) if error else {}
    made = sum_form.fields(found, wants, done, wrong)
    first = [each for each in made if each.one.needed]
    rest = [each for each in made if not each.one.needed]
    folded = len(rest) > sum_form.FEW
    return page(
        asked,
        "sum.html",
        here="sums",
        status=NOT_DONE if error and not asked.htmx else 200,
        sum=found,
        title=_words(found),
        asks=wants,
        first=first if folded else made,
        folded=rest if folded else [],
        unfold=any(each.text or each.wrong or each.found for each in rest),
        machines=_machines(),
        places=_places(found, wants),
        example=sum_form.example_address(found),
        wrong=_in_words(found, error) if error else None,
        answer=_answer(done) if done else None,
        quiet=bool(asked.htmx),
        defers=DEFERS,
    )


def _listed(asked: Asked, typed: str, status: int = 200) -> HttpResponse:
    found = by_words(typed)
    near = not found
    if near:
        found = _near(typed)
    families = {
        family: [(each.name, _words(each), each.sentence) for each in sums]
        for family, sums in found.items()
    }
    number = builtins.sum(map(len, families.values()))
    return page(
        asked,
        "sums.html",
        here="sums",
        status=status,
        families=families,
        number=number,
        q=typed,
        near=near,
        unfold=asked.GET.get("family"),
    )


def _words(sum_: Sum) -> str:
    """Its name as it is spoken of."""
    return sum_.name.replace("-", " ")


def _near(typed: str) -> dict[str, list[Sum]]:
    """Sums that are spelled much like what was typed."""
    try:
        find_sum(typed)
    except NotUnderstood as error:
        names = [each for each in error.would_do if " " not in each]
        return {"near": [find_sum(each) for each in names]} if names else {}
    return {}


def _worked_out(sum_: Sum, wants: sum_form.Asked) -> tuple[Done | None, Exception | None]:
    """The sum's answer, or why there is none; neither while nothing of its own was typed."""
    if not wants.anything:
        return None, None
    try:
        return _work_out(sum_, wants), None
    except Exception as error:
        if explained(error) is None:
            raise
        still_to_type = not wants.typed and isinstance(error, NotUnderstood)
        return None, None if still_to_type else error


def _work_out(sum_: Sum, wants: sum_form.Asked) -> Done:
    if not wants.machine:
        return work_out(sum_, wants.typed, wanted=wants.units)
    from shimstock.workshop.find import find_machine
    from shimstock.workshop.for_sums import work_out_for

    row = find_machine(wants.machine)
    return work_out_for(row, sum_, wants.places, typed=wants.typed, wanted=wants.units)


def _in_words(sum_: Sum, error: Exception) -> Wrong:
    """What was wrong, with the names of fields in place of the terminal's options."""
    wrong = explained(error)
    assert wrong is not None
    would_do = [each for each in wrong.would_do if not each.startswith("shimstock ")]
    return replace(
        wrong,
        reasons=tuple(sum_form.in_words(sum_, each) for each in wrong.reasons),
        would_do=tuple(sum_form.in_words(sum_, each) for each in would_do),
    )


def _answer(done: Done) -> dict[str, Any]:
    """An answer as the page shows it: results first."""
    working = done.worked.working
    return {
        "results": [
            (spoken(name), said_first(each), said_beside(each), not isinstance(each.value, str))
            for name, each in done.results.items()
        ],
        "given": [(spoken(each.name), each, _read_as(each)) for each in done.given],
        "working": working.shown(),
        "source": working.source,
        "cautions": working.cautions,
    }


def _read_as(given: Given) -> str:
    """How a value was understood, where that is not as it was typed."""
    read = understood(given)
    return read if read != given.typed.strip() else ""


def _machines() -> list[tuple[str, str]]:
    from shimstock.workshop.models import Machine

    return list(Machine.objects.filter(withdrawn=False).values_list("slug", "name"))


def _places(sum_: Sum, wants: sum_form.Asked) -> list[tuple[str, str]]:
    """What can be named on the chosen machine for a sum: mark or key, and name."""
    from shimstock.workshop.for_sums.places import places_for
    from shimstock.workshop.models import Machine

    row = Machine.objects.filter(withdrawn=False, slug=wants.machine.lower()).first()
    return places_for(row, sum_) if row else []


URLS = [
    path("sums/", sums, name="sums"),
    path("sums/<slug:name>/", sum, name="sum"),
]
