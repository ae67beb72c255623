"""The commands overhaul and demo: all about one machine, and an invented shed to try it on."""

import shlex
import shutil
import sys
from pathlib import Path
from typing import Any

from shimstock.faces.cli.command import Asked, Commands
from shimstock.faces.cli.shown import Answer, Heading, Shown, Verbatim
from shimstock.faces.cli.words_typed import MachineName

OVERHAUL_KEYS = {
    "machine": "its short name",
    "found": "how many figures of each verdict",
    "worn": "figures worn or borderline, each with figure, piece, verdict, says, stand_in",
    "trains": "each as in play",
    "remedies": "each with what, part, pieces, figures, says, because, size, held, blocks",
    "ways": "ways in still to go, each with part, opens, minutes_open, minutes_close",
    "leaks": "joints found wet, what opening them again costs, and how to fit them",
    "open": "as in machine show",
    "missing": "as in machine show",
    "away": "as in machine show",
    "unsafe": "as in machine show",
    "next": "as in machine show",
    "gates": "as in gate",
}
NEXT = (
    "shimstock machine show brackwater",
    "shimstock verdicts brackwater F002 --working",
    "shimstock reach brackwater left-brake-housing",
    'shimstock read brackwater F045 "0.2 mm" --finished',
    "shimstock gate brackwater paint",
    "shimstock sum torque-for-film brackwater J36 --now anti-seize",
)


commands = Commands()


@commands.add(
    "demo",
    example="shimstock demo",
    keys={
        "shed": "the folder",
        "laid_out": "machines laid out now; none where they were there already",
        "books": "book files written",
        "machines": "each as in overhaul",
        "papers": "records written",
        "next": "commands to try",
    },
)
def demo(asked: Asked) -> Answer:
    """Lay out an invented shed, and print its overhaul."""
    from shimstock.workshop.demo.lay_out import STORIES, lay_out
    from shimstock.workshop.looking import see

    laid = lay_out()
    told = [_overhaul(see(slug)) for slug in STORIES]
    books, papers = write_books(asked.shed), [_paper(asked.shed, slug) for slug in STORIES]
    return _demo(asked.shed, laid, books, told, papers)


@commands.add("overhaul", example="shimstock overhaul lowmere", keys=OVERHAUL_KEYS)
def overhaul(asked: Asked, machine: MachineName) -> Answer:
    """Print all about a machine: found, to do, open, blocked."""
    from shimstock.workshop.looking import see

    return Answer(*_overhaul(see(machine)))


def _overhaul(seen: Any) -> tuple[dict[str, Any], list[Shown]]:
    from shimstock.faces.cli.overhaul import overhaul

    return overhaul(seen)


def write_books(shed: Path) -> list[Path]:
    """Write the two books into the shed, to be read and changed; what is there stays."""
    from shimstock.workshop.demo.books import NAMES, demo_book

    folder = shed / "books"
    folder.mkdir(parents=True, exist_ok=True)
    files = [folder / f"{name}.yaml" for name in NAMES]
    for file in files:
        if not file.exists():
            file.write_text(demo_book(file.stem), encoding="utf-8")
    return files


def typed_here(shed: Path) -> list[str]:
    """The commands to try, as they work from the folder and the shell one stands in."""
    program, where = _program(), _shed_named(shed)
    return [line.replace("shimstock", program, 1) + where for line in NEXT]


def _program() -> str:
    """`shimstock` where the shell finds it, else the path to it, short where it is near."""
    started = Path(sys.argv[0])
    found = shutil.which("shimstock")
    if started.name != "shimstock" or (found and Path(found).samefile(started)):
        return "shimstock"
    path = started.absolute()
    return shlex.quote(str(path.relative_to(Path.cwd()) if _below(path) else path))


def _shed_named(shed: Path) -> str:
    """The option that names the shed, where a new terminal would not find it without."""
    here = Path("shed")
    found = here if here.is_dir() else Path.home() / "shimstock"
    if found.exists() and found.samefile(shed):
        return ""
    return f" --shed {shlex.quote(str(shed.relative_to(Path.cwd()) if _below(shed) else shed))}"


def _below(path: Path) -> bool:
    return path.is_relative_to(Path.cwd())


def _paper(shed: Path, slug: str) -> Path:
    from shimstock.faces.cli.paper import write_record

    return write_record(slug, shed, None)


def _demo(shed: Path, laid: Any, books: list[Path], told: list[Any], papers: list[Path]) -> Answer:
    here = "is there already" if not laid else "is laid out"
    shown: list[Shown] = [f"The invented shed {here}: {shed}"]
    shown += [block for _, blocks in told for block in blocks]
    shown += [Heading("Records written"), *(f"  {file}" for file in papers)]
    following = typed_here(shed)
    shown += [Heading("To try next"), Verbatim("\n".join(f"  {line}" for line in following))]
    data = {
        "shed": str(shed),
        "laid_out": list(laid),
        "books": [str(file) for file in books],
        "machines": [data for data, _ in told],
        "papers": [str(file) for file in papers],
        "next": following,
    }
    return Answer(data, shown)
