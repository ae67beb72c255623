"""The record of one machine as a PDF: what it was, what it is, and how that is known."""

import json
import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import asdict
from datetime import date
from importlib.resources import files
from pathlib import Path
from tempfile import NamedTemporaryFile, TemporaryDirectory
from typing import Any, Literal

from django.utils import timezone

from shimstock.faces.paper.drawing import drawing, legend, sign_alone
from shimstock.faces.paper.gather import Gathered, gather
from shimstock.faces.paper.signs import JOINT_SIGNS, PART_SIGNS
from shimstock.faces.paper.wear_chart import wear_chart
from shimstock.trade.machine.state import MachineNow
from shimstock.workshop.models import Machine

TEMPLATE = "record.typ"
Paper = Literal["a4", "letter"]
TYPST_PAPER = {"a4": "a4", "letter": "us-letter"}
SHEETS = {"a4": (595.28, 841.89), "letter": (612.0, 792.0)}  # points
MARGIN, HEAD_AND_FOOT = 48.0, 130.0  # points; the same as in record.typ
LEGEND_ROOM = 90.0
CHART_HEIGHT = 235.0
SCALES = (1.25, 1.15, 1.08)
FACES = ("DejaVuSans.ttf", "DejaVuSans-Bold.ttf", "DejaVuSans-Oblique.ttf")


def record(machine: Machine, out: Path, *, today: date | None = None, paper: Paper = "a4") -> Path:
    """Write the record of a machine as a PDF and return where it is.

    out: the file. today: the day that is printed on it. The same machine, day and paper give the
    same file. Nothing is fetched, and every typeface is inside the PDF.
    Raises ValueError for a paper that is not known.
    """
    if paper not in SHEETS:
        raise ValueError(f"paper {paper!r} is not known here; {' or '.join(SHEETS)} would do")
    day = today or timezone.localdate()
    found = gather(machine, day)
    pdf = _typeset({**asdict(found.record), **_pictures(found, paper), **_set_up(day, paper)})
    _put(pdf, out)
    return out


def _put(pdf: bytes, out: Path) -> None:
    """Write the whole file or none of it: a stop halfway leaves the last record as it was."""
    with NamedTemporaryFile(dir=out.parent, prefix=f".{out.name}.", delete=False) as beside:
        try:
            beside.write(pdf)
            beside.close()
            os.chmod(beside.name, _mode_of(out))
            os.replace(beside.name, out)
        except BaseException:
            os.unlink(beside.name)
            raise


def _mode_of(out: Path) -> int:
    """Who may read it: as before, or as any new file here."""
    if out.exists():
        return out.stat().st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask


def _set_up(day: date, paper: Paper) -> dict[str, Any]:
    return {"paper": TYPST_PAPER[paper], "date": [day.year, day.month, day.day]}


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


def _typeset(data: dict[str, Any]) -> bytes:
    """Typeset the data by the template; user's text goes in as data, never as markup."""
    import typst

    with _bench() as bench:
        fonts = typst.Fonts(include_system_fonts=False, font_paths=[str(bench)])
        return typst.compile(
            str(bench / TEMPLATE),
            root=str(bench),
            format="pdf",
            font_paths=fonts,
            ignore_system_fonts=True,
            sys_inputs={"record": json.dumps(data, ensure_ascii=False)},
        )


@contextmanager
def _bench() -> Iterator[Path]:
    """A folder that holds the template, the typeface of the drawings and nothing else to be read.

    The letters of the text come with the typesetter; those of the drawings with the charts. Other
    faces beside them would be taken as substitutes, and one of them draws every letter as a box.
    """
    import matplotlib

    faces = Path(matplotlib.get_data_path(), "fonts", "ttf")
    with TemporaryDirectory(prefix="record-") as folder:
        for face in FACES:
            shutil.copy(faces / face, folder)
        template = files("shimstock.faces.paper").joinpath(TEMPLATE).read_bytes()
        Path(folder, TEMPLATE).write_bytes(template)
        yield Path(folder)
