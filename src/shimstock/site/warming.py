"""Loads, beside the answers, what a worker would otherwise load while somebody waits for a page."""

from __future__ import annotations

import contextlib
import logging
from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping
    from threading import Event

    from shimstock.workshop.looking import Seen

log = logging.getLogger("django.shimstock")

EVERY = 1.0
"""Seconds between two looks at what changed."""


def keep_warm(over: Event) -> None:
    """Warm up, then look again at each machine that somebody changed, until it is over."""
    warm_up()
    stood: dict[int, int] = {}
    while not over.wait(EVERY):
        with _only_to_save_time():
            stood = look_at_changed(stood)


def warm_up() -> None:
    """Load addresses and templates, look at every machine, and sweep out old sessions."""
    with _only_to_save_time():
        _load_pages()
        _look_at_machines()
        _sweep_sessions()


def look_at_changed(stood: Mapping[int, int]) -> dict[int, int]:
    """Look at the machines whose diary goes on, so that the shed's page finds them looked at.

    stood: for each machine's row the last entry in its diary, as this returned it the last time.
    """
    from shimstock.workshop.looking import see_all

    machines = see_all()
    changed = [seen for seen in machines if stood.get(seen.row.pk) != seen.latest]
    for seen in changed:
        _ = (seen.standing, seen.gates)
    if changed and stood:
        _open("shed")
    return {seen.row.pk: seen.latest for seen in machines}


@contextlib.contextmanager
def _only_to_save_time() -> Iterator[None]:
    """Pages say for themselves what is wrong, so that a fault here ends nothing."""
    from django.db import connection

    try:
        yield
    except Exception:
        log.exception("warming up")
    finally:
        connection.close()


def _load_pages() -> None:
    from django.template import TemplateSyntaxError
    from django.template.loader import get_template
    from django.urls import get_resolver

    from shimstock.faces import web

    _ = get_resolver().url_patterns
    for file in sorted((Path(web.__file__).parent / "templates").rglob("*.html")):
        with contextlib.suppress(TemplateSyntaxError):  # its own page says so
            get_template(f"{file.parent.name}/{file.name}")


def _look_at_machines() -> None:
    """Look at one machine after another, so that those that people are at are looked at first."""
    from shimstock.workshop.looking import last_worked_on_first, see

    import_module("ortools.sat.python.cp_model")  # half a second, for the first way in
    _open("sums")
    for number, machine in enumerate(last_worked_on_first()):
        seen = see(machine)
        _ = (seen.standing, seen.gates, seen.measured)
        if number == 0:
            _open_pages(seen)
    _open("shed")
    _open_searches()


def _open_pages(seen: Seen) -> None:
    """Make each kind of page once: what it is made with, some of it large, is loaded then."""
    joint, figure = next(iter(seen.book.joints), ""), next(iter(seen.book.measures), "")
    for name in ("machine", "readings", "gates", "diary", "book", "bags", "photos", "papers"):
        _open(name, seen.row.slug)
    for name, key in (("joint", joint), ("reading", figure)):
        if key:
            _open(name, seen.row.slug, key)


def _open_searches() -> None:
    """The searches that go on; else any, since what ranks causes is loaded with the first."""
    from shimstock.workshop.models import FaultSearch

    rows = FaultSearch.objects.filter(withdrawn=False, machine__withdrawn=False)
    each = rows.values_list("machine__slug", "number")
    for machine, number in list(each.filter(ended="")) or each[:1]:
        _open("fault", machine, str(number))


def _open(name: str, *which: str) -> None:
    from django.http import HttpRequest
    from django.urls import resolve, reverse
    from django_htmx.middleware import HtmxDetails

    from shimstock.faces.web.asked import Asked

    asked = Asked()
    asked.method, asked.path, asked.who = "GET", reverse(name, args=which), "nobody"
    asked.META["SERVER_NAME"], asked.META["SERVER_PORT"] = "localhost", "80"
    asked.htmx = HtmxDetails(HttpRequest())
    found = resolve(asked.path)
    found.func(asked, *found.args, **found.kwargs)


def _sweep_sessions() -> None:
    from django.contrib.sessions.backends.db import SessionStore

    SessionStore.clear_expired()
