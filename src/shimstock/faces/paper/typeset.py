"""Sets type: a template and plain values become a PDF; what was typed is never taken for markup."""

import json
import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from importlib.resources import files
from pathlib import Path
from tempfile import NamedTemporaryFile, TemporaryDirectory
from typing import Any, Literal

Paper = Literal["a4", "letter"]
TYPST_PAPER = {"a4": "a4", "letter": "us-letter"}
FACES = ("DejaVuSans.ttf", "DejaVuSans-Bold.ttf", "DejaVuSans-Oblique.ttf")


def typeset(template: str, data: dict[str, Any]) -> bytes:
    """Typeset values by a template of this folder, as a PDF with every typeface inside it.

    template: its file name, such as record.typ; it finds the values under its own name.
    """
    import typst

    with _bench(template) as bench:
        fonts = typst.Fonts(include_system_fonts=False, font_paths=[str(bench)])
        return typst.compile(
            str(bench / template),
            root=str(bench),
            format="pdf",
            font_paths=fonts,
            ignore_system_fonts=True,
            sys_inputs={Path(template).stem: json.dumps(data, ensure_ascii=False)},
        )


def sheet_of(paper: str) -> str:
    """What the typesetter calls a paper. Raises ValueError for one that is not known."""
    if paper not in TYPST_PAPER:
        raise ValueError(f"paper {paper!r} is not known here; {' or '.join(TYPST_PAPER)} would do")
    return TYPST_PAPER[paper]


def put(pdf: bytes, out: Path) -> None:
    """Write the whole file or none of it: a stop halfway leaves the last one as it was."""
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


@contextmanager
def _bench(template: str) -> Iterator[Path]:
    """A folder that holds the template, the typeface of the drawings and nothing else to be read.

    The letters of the text come with the typesetter; those of the drawings with the charts. Other
    faces beside them would be taken as substitutes, and one of them draws every letter as a box.
    """
    import matplotlib

    faces = Path(matplotlib.get_data_path(), "fonts", "ttf")
    with TemporaryDirectory(prefix="typeset-") as folder:
        for face in FACES:
            shutil.copy(faces / face, folder)
        text = files("shimstock.faces.paper").joinpath(template).read_bytes()
        Path(folder, template).write_bytes(text)
        yield Path(folder)
