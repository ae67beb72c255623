from __future__ import annotations

from functools import partial
from types import SimpleNamespace

import django
import pytest

from workshop.shed_book import MONDAY, TEXT


@pytest.hookimpl(trylast=True)
def pytest_configure() -> None:
    django.setup()  # after the settings were named, before the tests here import the tables


@pytest.fixture
def machine(db):
    from shimstock.workshop import acts
    from shimstock.workshop.models import Machine

    acts.add_machine(slug="grey", name="The grey one", book_text=TEXT, who="Ann", at=MONDAY)
    return Machine.objects.get(slug="grey")


@pytest.fixture
def do(machine) -> SimpleNamespace:
    """The acts, each on the one machine and by the one person."""
    from shimstock.workshop import acts

    names = set(acts.__all__) - {"add_machine", "undo", "recheck"}
    functions = {name: getattr(acts, name) for name in names if name.islower()}
    return SimpleNamespace(
        **{name: partial(act, machine=machine, who="Ann") for name, act in functions.items()},
        undo=lambda entry: acts.undo(entry_id=entry.pk, who="Ann"),
    )
