"""The command shims: which of the shims that can be had to lay together."""

from typing import Annotated

import typer

from shimstock.faces.cli.command import Asked, Commands
from shimstock.faces.cli.shown import Answer
from shimstock.faces.cli.words_typed import FigureName, MachineName, Piece
from shimstock.workshop.looking import see

commands = Commands()


@commands.add(
    "shims",
    example="shimstock shims brackwater F019 --fitted .02 --offered .003,.005 --play .012",
    keys={
        "figure": "its key",
        "piece": "which of several",
        "joint": "where the pack lies",
        "fitted": "the pack that was in place",
        "play": "the play that was read with it",
        "shims": "what to lay together, thickest first",
        "thickness": "what they come to",
        "expect": "the play to expect",
        "wanted": "what the book says",
        "stand_in": "whether that is a stand-in figure",
        "unit": "of all of them",
        "working": "line by line; empty without --working",
    },
)
def shims(
    asked: Asked,
    machine: MachineName,
    figure: FigureName,
    fitted: Annotated[
        str, typer.Option(metavar="SIZE", help="The pack in place when the play was read.")
    ],
    offered: Annotated[
        str,
        typer.Option(metavar="SIZES", help="Shims to be had, with commas between: 0.003,0.005."),
    ],
    piece: Piece = "",
    play: Annotated[
        str, typer.Option(metavar="SIZE", help="Play read with that pack; else the latest reading.")
    ] = "",
    behind: Annotated[
        bool,
        typer.Option(
            "--behind-bearing", help="The pack lies behind a bearing: a thicker one takes up play."
        ),
    ] = False,
    working: Annotated[bool, typer.Option("--working", help="Show how it was reached.")] = False,
) -> Answer:
    """Choose a shim pack for an end play or end float.

    A pack between the faces of a joint holds them apart: a thicker one gives more play.
    """
    from shimstock.faces.cli.shim_lines import laid_data, laid_shown
    from shimstock.workshop.shims import lay_together, typed_pack

    seen = see(machine)
    wanted = typed_pack(seen, figure, piece, fitted=fitted, offered=offered, play=play)
    laid = lay_together(wanted, behind=behind)
    return Answer(laid_data(laid, working=working), laid_shown(laid, working=working))
