"""Serves the pages, with a server made for it, until it is stopped."""

from __future__ import annotations

import contextlib
import errno
import json
import os
import signal
import socket
import ssl
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from dataclasses import asdict, dataclass
from http.client import HTTPConnection, HTTPException, HTTPSConnection
from pathlib import Path

from shimstock.site.serving import Serving
from shimstock.site.shed import VARIABLE as SHED_VARIABLE
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop.refused import Refused

TARGET = "shimstock.site.wsgi:application"
LISTENING = "SHIMSTOCK_LISTENING"
COLD = "SHIMSTOCK_COLD"
"""For tests, which serve a hundred sheds for a page each: one worker, not warmed up."""
MOST_WORKERS = 2
THREADS = 8  # a worker answers so many at a time; most of them wait for the disk
FIRST_ANSWER = 60  # seconds that it may take until it answers
WORKERS_END = 2  # seconds that a worker has to finish what it is at
END = 4  # seconds until whatever has not ended is ended


@dataclass(frozen=True)
class Listening:
    """Where the server listens. cert, key: PEM files, for https."""

    address: str
    port: int
    cert: str | None = None
    key: str | None = None


def check(listening: Listening) -> None:
    """Raise NotUnderstood or Refused where it cannot be listened so, with what would do."""
    if not 1 <= listening.port <= 65535:
        raise NotUnderstood(str(listening.port), "is no port", ("one from 1024 to 65535",))
    _check_certificate(listening)
    with socket.socket() as trying:
        if os.name == "posix":  # a port that was left a moment ago is free
            trying.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            trying.bind((listening.address, listening.port))
        except OSError as error:
            raise Refused([_not_this_port(listening.port, error)]) from None


def serve(serving: Serving, listening: Listening, shed: Path, answers: Callable[[], None]) -> None:
    """Serve the pages of a shed in a program of its own, and come back when it was stopped.

    A program of its own, so that its workers share no open database with this one. answers: called
    once, when it answers. Raises Refused where it ends by itself.
    """
    environment = {
        **os.environ,
        SHED_VARIABLE: str(shed),
        LISTENING: json.dumps(asdict(listening)),
        **serving.as_environment(),
    }
    with _stoppable() as stopped:
        # Ctrl-C is for this program alone, which then ends the other one in good order. The other
        # one reads from this one for as long as this one is there.
        program = subprocess.Popen(
            [sys.executable, "-m", __name__], env=environment,
            stdin=subprocess.PIPE, start_new_session=True,
        )  # fmt: skip
        try:
            if _wait_until_it_answers(program, listening, stopped):
                answers()
            while not stopped.wait(0.2) and program.poll() is None:
                pass
        finally:
            by_itself = program.poll()
            _end(program)
    if by_itself is not None and not stopped.is_set():
        raise Refused([f"The server has ended by itself (exit code {by_itself}); start it again"])


def main() -> None:
    """Listen, as the environment says."""
    from granian import Granian
    from granian.constants import Interfaces
    from granian.log import LogLevels

    listening = Listening(**json.loads(os.environ[LISTENING]))
    threading.Thread(target=_end_with_the_one_that_started_it, daemon=True).start()
    Granian(
        TARGET,
        address=listening.address,
        port=listening.port,
        interface=Interfaces.WSGI,
        workers=1 if os.environ.get(COLD) else min(MOST_WORKERS, os.cpu_count() or 1),
        blocking_threads=THREADS,
        websockets=False,
        log_level=LogLevels.error,
        workers_kill_timeout=WORKERS_END,
        respawn_failed_workers=True,
        ssl_cert=Path(listening.cert) if listening.cert else None,
        ssl_key=Path(listening.key) if listening.key else None,
    ).serve()


def _end_with_the_one_that_started_it() -> None:
    """However that one ended: what is read from it comes to an end."""
    while os.read(0, 1):
        pass
    os.kill(os.getpid(), signal.SIGTERM)


@contextlib.contextmanager
def _stoppable() -> Iterator[threading.Event]:
    """Something that is set by Ctrl-C or a request to end, for as long as the block lasts."""
    stopped = threading.Event()
    signals = (signal.SIGINT, signal.SIGTERM)
    before = [signal.signal(each, lambda *_: stopped.set()) for each in signals]
    try:
        yield stopped
    finally:
        for each, handler in zip(signals, before, strict=True):
            signal.signal(each, handler)


def _wait_until_it_answers(
    program: subprocess.Popen[bytes], listening: Listening, stopped: threading.Event
) -> bool:
    """Whether it answers; it does not where it ended or was stopped before."""
    until = time.monotonic() + FIRST_ANSWER
    while program.poll() is None and not stopped.wait(0.05):
        if _answers(listening):
            return True
        if time.monotonic() > until:
            raise Refused([f"The server did not answer within {FIRST_ANSWER} s; start it again"])
    return False


def _answers(listening: Listening) -> bool:
    """Whether anything comes back, asked from this computer; whose certificate is no matter."""
    if listening.cert:
        unverified = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
        unverified.check_hostname, unverified.verify_mode = False, ssl.CERT_NONE
        asking: HTTPConnection = HTTPSConnection(
            "127.0.0.1", listening.port, timeout=5, context=unverified
        )
    else:
        asking = HTTPConnection("127.0.0.1", listening.port, timeout=5)
    try:
        asking.request("HEAD", "/sign-in/")
        asking.getresponse()
    except (OSError, HTTPException):
        return False
    finally:
        asking.close()
    return True


def _end(program: subprocess.Popen[bytes]) -> None:
    """End the server and its workers."""
    if program.poll() is None:
        program.terminate()
    try:
        program.wait(END)
    except subprocess.TimeoutExpired:
        program.kill()
        program.wait()
    if os.name == "posix":
        with contextlib.suppress(ProcessLookupError, PermissionError):
            os.killpg(program.pid, signal.SIGKILL)  # a worker that outlived it
    assert program.stdin is not None
    program.stdin.close()


def _check_certificate(listening: Listening) -> None:
    if not listening.cert and not listening.key:
        return
    if not listening.cert or not listening.key:
        raise Refused(["A certificate goes with its key; --cert FILE --key FILE"])
    for file in (listening.cert, listening.key):
        Path(file).open("rb").close()
    try:
        ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER).load_cert_chain(
            listening.cert, listening.key, password=lambda: b""
        )
    except (ssl.SSLError, ValueError):
        files = f"{listening.cert} and {listening.key}"
        raise Refused(
            [f"{files} are no certificate and its key; two PEM files, the key without a password"]
        ) from None


def _not_this_port(port: int, error: OSError) -> str:
    if error.errno == errno.EADDRINUSE:
        other = port + 1 if port < 65535 else port - 1
        return f"Port {port} is taken by another program; another one: --port {other}"
    if error.errno == errno.EACCES:
        return f"This user may not serve on port {port}; one above 1023: --port 8140"
    return f"Port {port} cannot be served on ({error.strerror}); another one: --port {port + 1}"


if __name__ == "__main__":
    main()
