"""What the server is checked for before it starts, and how its program starts and ends."""

import os
import signal
import socket
import ssl
import subprocess
import sys
import threading
import time
import urllib.request
from pathlib import Path

import pytest

from shimstock.site.server import Listening, check
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop.refused import Refused

PATIENCE = 60  # seconds: a bound on a hang, not a measure


def a_free_port() -> int:
    with socket.socket() as listening:
        listening.bind(("127.0.0.1", 0))
        return int(listening.getsockname()[1])


@pytest.fixture(scope="module")
def certificate(tmp_path_factory) -> tuple[str, str]:
    """A certificate and its key, made by openssl as a shed's keeper would."""
    folder = tmp_path_factory.mktemp("certificate")
    cert, key = folder / "cert.pem", folder / "key.pem"
    subprocess.run(
        ["openssl", "req", "-x509", "-newkey", "rsa:2048", "-nodes", "-days", "2",
         "-subj", "/CN=localhost", "-addext", "subjectAltName=DNS:localhost,IP:127.0.0.1",
         "-keyout", key, "-out", cert],
        check=True, capture_output=True,
    )  # fmt: skip
    return str(cert), str(key)


def test_a_port_that_is_free_will_do():
    check(Listening("127.0.0.1", a_free_port()))


def test_a_port_that_is_taken_is_said_with_what_would_do():
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        port = other.getsockname()[1]
        for address in ("127.0.0.1", "0.0.0.0"):
            with pytest.raises(Refused, match=f"Port {port} is taken .*; another one: --port"):
                check(Listening(address, port))


@pytest.mark.parametrize("port", [0, -1, 65536])
def test_what_is_no_port_is_not_understood(port):
    with pytest.raises(NotUnderstood, match="is no port"):
        check(Listening("127.0.0.1", port))


def test_a_certificate_and_its_key_will_do(certificate):
    check(Listening("127.0.0.1", a_free_port(), *certificate))


def test_a_certificate_without_its_key_will_not(certificate):
    for one in ((certificate[0], None), (None, certificate[1])):
        with pytest.raises(Refused, match="goes with its key"):
            check(Listening("127.0.0.1", a_free_port(), *one))


def test_files_that_are_none_are_named(certificate, tmp_path):
    text = tmp_path / "text.pem"
    text.write_text("no certificate")
    with pytest.raises(Refused, match="no certificate and its key"):
        check(Listening("127.0.0.1", a_free_port(), str(text), certificate[1]))
    with pytest.raises(FileNotFoundError):
        check(Listening("127.0.0.1", a_free_port(), str(tmp_path / "none"), certificate[1]))


class Program:
    """`shimstock serve`, as it is typed; `said` grows while it runs."""

    def __init__(self, shed: Path, *options: str) -> None:
        self.port = a_free_port()
        ours = {"DJANGO_SETTINGS_MODULE", "SHIMSTOCK_SHED", "SHIMSTOCK_SERVING"}
        self.program = subprocess.Popen(
            [sys.executable, "-m", "shimstock", "--shed", str(shed), "--who", "Ida",
             "serve", "--port", str(self.port), *options],
            stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, start_new_session=True,
            env={name: value for name, value in os.environ.items() if name not in ours},
        )  # fmt: skip
        self.said: list[str] = []
        self.ready = threading.Event()
        self.listener = threading.Thread(target=self._listen, daemon=True)
        self.listener.start()

    def _listen(self) -> None:
        for line in self.program.stderr:
            self.said.append(line)
            if "Ctrl-C ends it" in line:
                self.ready.set()

    def answers(self) -> None:
        assert self.ready.wait(PATIENCE), "".join(self.said)

    @property
    def text(self) -> str:
        """What it has said, as one line."""
        return " ".join("".join(self.said).split())

    def close(self) -> None:
        self.program.kill()
        self.program.wait()
        self.listener.join(PATIENCE)
        self.program.stdout.close()
        self.program.stderr.close()

    def ended(self) -> str:
        """What it printed; it must end, and everything that it started with it."""
        printed = self.program.stdout.read()
        self.program.wait(PATIENCE)
        self.listener.join(PATIENCE)
        return printed


@pytest.fixture
def serve(tmp_path):
    started = []

    def start(*options: str) -> Program:
        started.append(Program(tmp_path / "shed", *options))
        return started[-1]

    yield start
    for each in started:
        each.close()


def served_from(program: Program) -> list[int]:
    """The programs that this one started, and those that they started."""
    found, look_at = [], [program.program.pid]
    while look_at:
        pid = look_at.pop()
        for task in Path(f"/proc/{pid}/task").glob("*/children"):
            below = [int(each) for each in task.read_text().split()]
            found += below
            look_at += below
    return found


def there(pid: int) -> bool:
    status = Path(f"/proc/{pid}/stat")
    return status.exists() and status.read_text().rpartition(")")[2].split()[0] != "Z"


def wait_for_end(pids: list[int]) -> None:
    until = time.monotonic() + PATIENCE
    while any(there(pid) for pid in pids) and time.monotonic() < until:
        time.sleep(0.05)
    assert [pid for pid in pids if there(pid)] == []


LINUX = pytest.mark.skipif(sys.platform != "linux", reason="looks at programs in /proc")


@LINUX
@pytest.mark.parametrize("how", [signal.SIGINT, signal.SIGTERM])
def test_it_ends_whole_and_quietly_while_a_browser_holds_on(how, serve):
    program = serve()
    program.answers()
    started = served_from(program)
    with socket.create_connection(("127.0.0.1", program.port)) as browser:
        browser.sendall(b"GET / HTTP/1.1\r\nHost: localhost\r\n\r\n")
        assert browser.recv(20).startswith(b"HTTP/1.1 200")
        os.kill(program.program.pid, how)
        printed = program.ended()

    assert len(started) >= 2  # the server and a worker at least
    assert program.program.returncode == 0
    assert printed == "Ended. What was kept stays kept.\n"
    assert "Traceback" not in program.text
    wait_for_end(started)


@LINUX
def test_the_server_ends_also_where_what_started_it_is_killed(serve):
    program = serve()
    program.answers()
    started = served_from(program)
    program.program.kill()

    wait_for_end(started)


@LINUX
def test_a_server_that_is_killed_is_said(serve):
    program = serve()
    program.answers()
    started = served_from(program)
    os.kill(started[0], signal.SIGKILL)
    program.ended()

    assert program.program.returncode == 1
    assert "ended by itself" in program.text
    wait_for_end(started)


def test_it_says_where_it_is_only_when_it_answers(serve):
    program = serve()
    program.answers()
    [line] = [line for line in program.said if "pages" in line]
    address = line.split()[-1]

    assert address == f"http://localhost:{program.port}"
    with urllib.request.urlopen(address, timeout=PATIENCE) as page:
        assert page.status == 200


def test_a_port_that_is_taken_ends_it_with_words(serve):
    first = serve()
    first.answers()
    second = serve("--port", str(first.port))
    second.ended()

    assert second.program.returncode == 1
    assert "is taken by another program" in second.text


def test_https_makes_the_cookies_secure(serve, certificate):
    program = serve("--lan", "--cert", certificate[0], "--key", certificate[1])
    program.answers()
    trusting = ssl.create_default_context(cafile=certificate[0])
    address = f"https://localhost:{program.port}/sign-in/"
    with urllib.request.urlopen(address, timeout=PATIENCE, context=trusting) as page:
        [cookie] = page.headers.get_all("Set-Cookie")
        text = page.read().decode()

    assert "Secure" in cookie
    assert "not encrypted" not in program.text + text


def test_to_phones_it_shows_the_first_one_in_and_nobody_else(serve):
    program = serve("--lan")
    program.answers()
    said = program.text
    [join] = [word for word in said.split() if "/join/" in word]
    here = f"http://127.0.0.1:{program.port}"
    with urllib.request.urlopen(here + join[join.index("/join/") :], timeout=PATIENCE) as page:
        assert "Join the shed" in page.read().decode()
    with urllib.request.urlopen(here, timeout=PATIENCE) as page:
        assert "/sign-in/" in page.url

    assert "Nobody has joined yet" in said
    assert "Not encrypted" in said
