"""Serves the pages, with a server made for it, until it is stopped."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
from dataclasses import asdict, dataclass
from pathlib import Path

from shimstock.site.serving import Serving
from shimstock.site.shed import VARIABLE as SHED_VARIABLE

TARGET = "shimstock.site.wsgi:application"
LISTENING = "SHIMSTOCK_LISTENING"
MOST_WORKERS = 2
THREADS = 8  # a worker answers so many at a time; most of them wait for the disk


@dataclass(frozen=True)
class Listening:
    """Where the server listens. cert, key: PEM files, for https."""

    address: str
    port: int
    cert: str | None = None
    key: str | None = None


def serve(serving: Serving, listening: Listening, shed: Path) -> int:
    """Serve the pages of a shed in a program of its own, and come back when it has ended.

    A program of its own, so that its workers share no open database with this one. Returns its
    exit code.
    """
    environment = {
        **os.environ,
        SHED_VARIABLE: str(shed),
        LISTENING: json.dumps(asdict(listening)),
        **serving.as_environment(),
    }
    program = subprocess.Popen([sys.executable, "-m", __name__], env=environment)
    signal.signal(signal.SIGTERM, lambda *_: program.terminate())
    while True:
        try:
            return program.wait()
        except KeyboardInterrupt:  # Ctrl-C reaches it as well; it ends in its own time
            continue


def main() -> None:
    """Listen, as the environment says."""
    from granian import Granian
    from granian.constants import Interfaces
    from granian.log import LogLevels

    listening = Listening(**json.loads(os.environ[LISTENING]))
    Granian(
        TARGET,
        address=listening.address,
        port=listening.port,
        interface=Interfaces.WSGI,
        workers=min(MOST_WORKERS, os.cpu_count() or 1),
        blocking_threads=THREADS,
        websockets=False,
        log_level=LogLevels.error,
        ssl_cert=Path(listening.cert) if listening.cert else None,
        ssl_key=Path(listening.key) if listening.key else None,
    ).serve()


if __name__ == "__main__":
    main()
