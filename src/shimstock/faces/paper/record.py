"""The record of one machine as a PDF: what it was, what it is, and how that is known."""

from dataclasses import asdict
from datetime import date
from pathlib import Path
from typing import Any

from django.utils import timezone

from shimstock.faces.paper.drawing import drawing, legend, sign_alone
from shimstock.faces.paper.gather import Gathered, gather
from shimstock.faces.paper.signs import JOINT_SIGNS, PART_SIGNS
from shimstock.faces.paper.typeset import Paper, put, sheet_of, typeset
from shimstock.faces.paper.wear_chart import wear_chart
from shimstock.trade.machine.state import MachineNow
from shimstock.workshop.models import Machine

TEMPLATE = "record.typ"
SHEETS = {"a4": (595.28, 841.89), "letter": (612.0, 792.0)}  # points
MARGIN, HEAD_AND_FOOT = 48.0, 130.0  # points; the same as in record.typ
LEGEND_ROOM = 90.0
CHART_HEIGHT = 235.0
SCALES = (1.25, 1.15, 1.08)


def record(machine: Machine, out: Path, *, today: date | None = None, paper: Paper = "a4") -> Path:
    """Write the record of a machine as a PDF and return where it is.

    out: the file. today: the day that is printed on it. The same machine, day and paper give the
    same file. Nothing is fetched, and every typeface is inside the PDF.
    Raises ValueError for a paper that is not known.
    """
    put(record_pdf(machine, today=today, paper=paper), out)
    return out


def record_pdf(machine: Machine, *, today: date | None = None, paper: Paper = "a4") -> bytes:
    """The same record as bytes, to be sent instead of written. Raises ValueError."""
    set_up = _set_up(today or timezone.localdate(), paper)
    found = gather(machine, today or timezone.localdate())
    return typeset(TEMPLATE, {**asdict(found.record), **_pictures(found, paper), **set_up})


def _set_up(day: date, paper: Paper) -> dict[str, Any]:
    return {"paper": sheet_of(paper), "date": [day.year, day.month, day.day]}


def _pictures(found: Gathered, paper: Paper) -> dict[str, Any]:
    """Drawings as SVG text, in the size of the sheet."""
    across, down = SHEETS[paper]
    width, height = across - 2 * MARGIN, down - HEAD_AND_FOOT
    return {
        "joint_signs": {sign.word: sign_alone(sign) for sign in JOINT_SIGNS.values()},
        "part_signs": {word.value: sign_alone(sign) for word, sign in PART_SIGNS.items()},
        "legend": legend(found.now, width=width),
        "drawing": _drawing(found.now, width, height - LEGEND_ROOM),
        "charts": [
            {"title": bore.title, "svg": wear_chart(bore, width=width / 2 - 8, height=CHART_HEIGHT)}
            for bore in found.bores
        ],
    }


def _drawing(now: MachineNow, width: float, height: float) -> tuple[str, ...]:
    """The drawing, as large as it can be without taking another page."""
    plain = drawing(now, width=width, height=height)
    for scale in SCALES:
        larger = drawing(now, width=width / scale, height=height / scale)
        if len(larger) == len(plain):
            return larger
    return plain
