"""The words after a command: their help is the same wherever they stand."""

from typing import Annotated

import typer

MachineName = Annotated[str, typer.Argument(metavar="MACHINE", help="Its short name.")]
JointName = Annotated[str, typer.Argument(metavar="JOINT", help="By key, mark (J36) or name.")]
JointNames = Annotated[
    list[str], typer.Argument(metavar="JOINT", help="One or several, by key, mark or name.")
]
FacesClean = Annotated[bool | None, typer.Option("--faces-clean", help="Both faces are clean.")]
Gaskets = Annotated[
    list[str] | None,
    typer.Option("--gasket", metavar="NAME", help="Lies ready, as the book calls it; repeat."),
]
Bolts = Annotated[int | None, typer.Option("--bolts", metavar="N", help="Counted in the bag.")]
FigureName = Annotated[
    str, typer.Argument(metavar="FIGURE", help="A figure or setting, by key, mark (F001) or name.")
]
Piece = Annotated[
    str, typer.Argument(metavar="[PIECE]", help="Which of several: left, right, 1, 2.")
]
ENTRY_KEYS = {
    "entry": "its number in the diary, for undo",
    "at": "date and time",
    "who": "who did it",
    "says": "what was done, in a sentence",
}
