"""The commands serve and let-in: the pages, for this computer or for the shed's own network."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from io import StringIO
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from shimstock.faces.cli.command import Asked, Commands
from shimstock.faces.cli.shown import Answer

if TYPE_CHECKING:
    from shimstock.site.serving import Serving

PORT = 8140
NOT_ENCRYPTED = (
    "Not encrypted: for a network that is the shed's own, never forwarded to the",
    "internet. With --cert and --key it is.",
)

WHITE_ON_BLACK, AS_BEFORE = "\x1b[38;5;231;48;5;16m", "\x1b[0m"

commands = Commands()


@commands.add(
    "serve",
    example="shimstock serve --lan",
    keys={"address": "where the pages were served, until it was stopped"},
)
def serve(
    asked: Asked,
    lan: Annotated[
        bool, typer.Option("--lan", help="To the phones on this network; people sign in.")
    ] = False,
    port: Annotated[int, typer.Option(metavar="N", help="Which port.")] = PORT,
    name: Annotated[
        list[str] | None,
        typer.Option(metavar="HOST", help="A name that people use for this computer as well."),
    ] = None,
    cert: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Certificate (PEM), to serve https.")
    ] = None,
    key: Annotated[Path | None, typer.Option(metavar="FILE", help="Its key (PEM).")] = None,
) -> Answer:
    """Serve the pages until Ctrl-C; with --lan to phones.

    What it says while it serves goes to stderr.
    """
    from shimstock.site.server import Listening, check
    from shimstock.site.server import serve as serve_pages
    from shimstock.site.serving import Serving, note_address

    if name and not lan:
        raise typer.BadParameter("--name is for phones: it goes with --lan.")
    scheme = "https" if cert else "http"
    serving = Serving(who=asked.who, encrypted=bool(cert), address=f"{scheme}://localhost:{port}")
    if lan:
        serving = Serving.on_network(name or [], port, encrypted=bool(cert))
    listening = Listening("0.0.0.0" if lan else "127.0.0.1", port, _whole(cert), _whole(key))
    check(listening)

    def answers() -> None:
        if lan:
            note_address(asked.shed, serving.address)
        _say(_for_phones(serving) if lan else [f"The shed's pages: {serving.address}"])
        _say(["Ctrl-C ends it."])

    serve_pages(serving, listening, asked.shed, answers)
    return Answer({"address": serving.address}, ["Ended. What was kept stays kept."])


@commands.add(
    "let-in",
    example="shimstock let-in",
    keys={
        "code": "lets one person in, once",
        "minutes": "for so long",
        "address": "where it is used; empty if the shed was never served to phones",
    },
)
def let_in(asked: Asked) -> Answer:
    """Make a code by which one person joins, or takes a new password.

    The pages may be served meanwhile. Whoever types at the computer that holds the shed may let
    anybody in: a name that is known gets the new password, and is signed out everywhere else.
    """
    from shimstock.site.serving import noted_address
    from shimstock.workshop.people import AT_THE_COMPUTER, CODE_GOOD_FOR
    from shimstock.workshop.people import let_in as make_code

    code = make_code(AT_THE_COMPUTER)
    minutes = int(CODE_GOOD_FOR.total_seconds() / 60)
    at = noted_address(asked.shed)
    address = f"{at}/join/{code}/" if at else ""
    _say(_square(address))
    where = address or "first serve the shed to phones (shimstock serve --lan), then Sign in there"
    return Answer(
        {"code": code, "minutes": minutes, "address": address},
        [
            f"Code {code}: good for {minutes} minutes, once.",
            f"To use it: {where}",
        ],
    )


def _for_phones(serving: Serving) -> list[str]:
    """Where phones find the shed; where nobody has joined yet, the way in for the first."""
    from django.db import connection

    from shimstock.workshop.people import AT_THE_COMPUTER, anybody
    from shimstock.workshop.people import let_in as make_code

    first = not anybody()
    address = f"{serving.address}/join/{make_code(AT_THE_COMPUTER)}/" if first else serving.address
    connection.close()  # nothing of the database is held while others serve it
    return [
        *_square(address),
        f"The shed's pages: {serving.address}",
        *(f"             also: {other}" for other in serving.other_addresses()),
        *(_first_one(address) if first else ["Everybody signs in; People lets others in."]),
        *(() if serving.encrypted else NOT_ENCRYPTED),
    ]


def _first_one(address: str) -> list[str]:
    return [
        "Nobody has joined yet. The first one scans the square, or opens:",
        f"  {address}",
        "within 15 minutes; for another code: shimstock let-in",
    ]


def _square(address: str) -> list[str]:
    """The address as a square to scan, white ground in any terminal; on a terminal only."""
    if not address or not sys.stderr.isatty():
        return []
    import segno

    drawn = StringIO()
    segno.make(address, error="l", micro=False).terminal(drawn, compact=True)
    return [f"{WHITE_ON_BLACK}{line}{AS_BEFORE}" for line in drawn.getvalue().splitlines()]


def _say(lines: Sequence[str]) -> None:
    """Say something while the command goes on: stdout is for its answer alone."""
    for line in lines:
        print(line, file=sys.stderr)
    sys.stderr.flush()


def _whole(file: Path | None) -> str | None:
    """A file as a program that starts elsewhere finds it."""
    return None if file is None else str(file.expanduser().absolute())
