from __future__ import annotations

import re
from collections.abc import Callable
from functools import partial
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import django
import pytest
from pypdf import PdfReader

from faces.paper.club_book import BARE, BORED, LINER_1, MONDAY, NAME, NOTES, PRINTED, TEXT

Reader = Callable[..., PdfReader]

ACTS = (
    *("open_joint", "close_joint", "leak_check", "take_reading", "accept_verdict"),
    *("move_piece", "answer_point"),
)

READ: dict[str, str] = {}


@pytest.hookimpl(trylast=True)
def pytest_configure() -> None:
    django.setup()  # after the settings were named, before the tests here import the tables


def add(slug: str, name: str, text: str, **more: Any) -> Any:
    from shimstock.workshop import acts
    from shimstock.workshop.models import Machine

    acts.add_machine(slug=slug, name=name, book_text=text, who="Ann", at=MONDAY, **more)
    return Machine.objects.get(slug=slug)


@pytest.fixture
def bare(db):
    """A machine with one part, of which nothing is known."""
    return add("bare", "Bare", BARE)


@pytest.fixture
def untouched(db):
    """A machine with a whole book, to which nobody has done anything yet."""
    return add("grey", NAME, TEXT, serials={"Engine": "A-1"}, notes=NOTES)


@pytest.fixture
def do(untouched) -> SimpleNamespace:
    """The acts, each on the one machine and by the one person."""
    from shimstock.workshop import acts

    return SimpleNamespace(
        **{name: partial(getattr(acts, name), machine=untouched, who="Béla") for name in ACTS},
        undo=acts.undo,
    )


@pytest.fixture
def worked_on(untouched, do):
    """A machine with a joint closed and dry, one open, and readings of all sorts."""
    from shimstock.workshop.models import PieceState

    do.open_joint(joint="J1")
    do.open_joint(joint="J2")
    do.close_joint(joint="J2", faces_clean=True, torqued=True)
    do.leak_check(joint="J2", result="dry")
    do.take_reading(figure="bore", piece="1", typed=LINER_1)
    do.take_reading(figure="bore", piece="1", typed=BORED, stage="as finished", meant=True)
    do.take_reading(figure="end-float", typed="0.0140")
    do.take_reading(figure="end-float", typed="0.0060", stage="as finished")
    do.take_reading(figure="lift", typed="0.2901")
    for piece, maker in (("left", "Halden *Works*"), ("right", "Norra")):
        PieceState(machine=untouched, part="pump", piece=piece, word="in hand", maker=maker).save()
    return untouched


@pytest.fixture
def printed(tmp_path: Path) -> Reader:
    """Print a machine's record and open it again."""
    from shimstock.faces.paper.record import record

    def print_(machine: Any, **more: Any) -> PdfReader:
        return PdfReader(record(machine, tmp_path / "record.pdf", today=PRINTED, **more))

    return print_


def plain(text: str) -> str:
    """Text without its line breaks and the joins in long words, to look for a sentence in it."""
    return re.sub(r"\s+", " ", text.replace("\u200b", "")).strip()


@pytest.fixture
def read(printed: Reader) -> Callable[..., str]:
    """The whole text of a machine's record, as it is read back from the PDF.

    A record that tells the same is printed once.
    """
    from shimstock.faces.paper.gather import gather

    def read_(machine: Any) -> str:
        told = repr(gather(machine, PRINTED))
        if told not in READ:
            READ[told] = plain(" ".join(page.extract_text() for page in printed(machine).pages))
        return READ[told]

    return read_
