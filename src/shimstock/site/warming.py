"""Loads, beside the first answers, what a worker would load at the first of each page."""

import contextlib
import logging
from pathlib import Path

log = logging.getLogger("django.shimstock")


def warm_up() -> None:
    """Load addresses and templates, look at every machine, and sweep out old sessions."""
    from django.db import connection

    try:
        _load_pages()
        _look_at_machines()
        _sweep_sessions()
    except Exception:  # it was only to save time: pages say for themselves what is wrong
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
    from shimstock.workshop.looking import see_all

    machines = see_all()
    _ = [(seen.standing, seen.gates) for seen in machines]
    _ = [seen.measured for seen in machines[:1]]  # one is enough to load what judges readings


def _sweep_sessions() -> None:
    from django.contrib.sessions.backends.db import SessionStore

    SessionStore.clear_expired()
