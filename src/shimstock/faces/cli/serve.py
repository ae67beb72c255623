"""The command serve: the pages, for this computer or for the shed's own network."""

from typing import Annotated

import typer

from shimstock.faces.cli.command import Asked, Commands
from shimstock.faces.cli.shown import Answer

PORT = 8140

commands = Commands()


@commands.add(
    "serve",
    example="shimstock serve --lan",
    keys={"address": "where the pages were served, until it was stopped"},
)
def serve(
    asked: Asked,
    port: Annotated[int, typer.Option(metavar="N", help="Which port.")] = PORT,
) -> Answer:
    """Serve the pages until Ctrl-C."""
    from shimstock.site.server import Listening
    from shimstock.site.server import serve as serve_pages
    from shimstock.site.serving import LOOPBACK, Serving

    address = f"http://localhost:{port}"
    print(f"The shed's pages: {address}    (Ctrl-C ends it)", flush=True)
    serving = Serving(hosts=LOOPBACK, who=asked.who)
    serve_pages(serving, Listening("127.0.0.1", port), asked.shed)
    return Answer({"address": address}, ["Ended. What was kept stays kept."])
