"""How long pages take with twenty phones in a shed of 50 machines, 100,000 readings, 10,000 photos.

Every phone looks at one page after another of a machine of its own, as people do, and asks every
three seconds what others did; one page in ten is a reading that is sent and judged. Budget: 100 ms
at the 95th percentile for each kind of page, sent from the first byte asked to the last received.
Beside it stands the time of a plain file from the same server in the same minute.

Run: python benchmarks/pages_with_twenty_phones.py [SECONDS]
"""

import http.client
import random
import re
import socket
import subprocess
import sys
import tempfile
import threading
import time
from collections import defaultdict
from pathlib import Path
from statistics import median
from urllib.parse import urlencode

from made.large_shed import grow
from made.large_shed_photos import take_photos

PHONES, SECONDS, BUDGET = 20, 60.0, 0.100
THINKING, POLLING = (2.0, 6.0), 3.0  # seconds between pages, and between questions
LONGEST_WARMING, STILL = 240.0, 8.0  # seconds

PAGES = {
    "shed": "/",
    "machine": "/m/{m}/",
    "search": "/m/{m}/find/?q=pump",
    "joint": "/m/{m}/joint/{joint}/",
    "part": "/m/{m}/part/{part}/",
    "readings": "/m/{m}/readings/",
    "reading": "/m/{m}/reading/{figure}/",
    "gates": "/m/{m}/gates/",
    "gate": "/m/{m}/gates/paint/",
    "diary": "/m/{m}/diary/",
    "book": "/m/{m}/book/",
    "photos": "/m/{m}/photos/",
    "bags": "/m/{m}/bags/",
    "searches": "/m/{m}/faults/",
    "fault": "/m/{m}/faults/1/",
    "sums": "/sums/",
    "sum": "/sums/ring-gap/?bore=3.5+in",
}
OF = {
    "brackwater": {
        "joint": ("J06", "J17", "J36", "J39", "J47", "J56"),
        "part": ("injection-pump-1", "liner", "crankshaft"),
        "figure": ("fan-rock", "lost-motion", "flywheel-run-out"),
        "read": ("lost-motion", ("0.044", "0.045", "0.043", "0.046")),
    },
    "lowmere": {
        "joint": ("J01", "J02", "J05"),
        "part": ("cylinder-head", "magneto"),
        "figure": ("F098", "F099"),
        "read": None,
    },
}
PLAIN = "/static/web/style.css"
Times = dict[str, list[float]]


class Phone(threading.Thread):
    """One phone: looks, thinks, looks again, and notes how long each answer took."""

    def __init__(self, port: int, machine: str, seed: int, until: float, cookie: str) -> None:
        super().__init__()
        self.times: Times = defaultdict(list)
        self.wrong: list[str] = []
        self._until, self._machine = until, machine
        self._of = OF[machine.partition("-")[0]]
        self._pick = random.Random(seed)
        self._line = http.client.HTTPConnection("localhost", port, timeout=30)
        self._cookie = cookie
        self._since = "1"

    def run(self) -> None:
        """Look at pages until the time is over."""
        time.sleep(self._pick.uniform(0, THINKING[1]))
        asked = 0.0
        while time.monotonic() < self._until:
            self._next_page()
            rest = time.monotonic() + self._pick.uniform(*THINKING)
            while time.monotonic() < min(rest, self._until):
                if time.monotonic() - asked > POLLING:
                    asked = time.monotonic()
                    about = urlencode({"machine": self._machine, "since": self._since})
                    self._ask("what is new", f"/live/?{about}")
                time.sleep(0.1)

    def _next_page(self) -> None:
        if self._of["read"] and self._pick.random() < 0.1:
            self._send_reading()
            return
        kind = self._pick.choice(list(PAGES))
        words = {
            name: self._pick.choice(of) for name, of in self._of.items() if of and name != "read"
        }
        self._ask(kind, PAGES[kind].format(m=self._machine, **words))
        if self._pick.random() < 0.2:
            self._ask("a plain file", PLAIN)

    def _send_reading(self) -> None:
        figure, values = self._of["read"]
        path = f"/m/{self._machine}/reading/{figure}/"
        page = self._ask("reading", path)
        hidden = dict(re.findall(r'name="(csrfmiddlewaretoken|form|seen)" value="([^"]*)"', page))
        box = re.search(r'<input[^>]*name="(value[^"]*|typed[^"]*)"', page)
        if not box:
            self.wrong.append(f"no box for a value on {path}")
            return
        sent = {**hidden, box[1]: self._pick.choice(values), "stage": "as found"}
        self._ask("a reading sent", path, urlencode(sent))

    def _ask(self, kind: str, path: str, body: str | None = None) -> str:
        headers = {"Accept-Encoding": "gzip", "Cookie": self._cookie}
        if body is not None:
            headers["Content-Type"] = "application/x-www-form-urlencoded"
        began = time.perf_counter()
        self._line.request("GET" if body is None else "POST", path, body, headers)
        answer = self._line.getresponse()
        came = answer.read()
        self.times[kind].append(time.perf_counter() - began)
        for header in answer.headers.get_all("Set-Cookie") or ():
            name = header.partition("=")[0]
            others = [c for c in self._cookie.split("; ") if c and not c.startswith(f"{name}=")]
            self._cookie = "; ".join([*others, header.partition(";")[0]])
        if answer.status not in (200, 204, 302, 303):
            self.wrong.append(f"{answer.status} {path}")
        if answer.headers.get("Content-Encoding") == "gzip":
            import gzip

            came = gzip.decompress(came)
        text = came.decode("utf-8", "replace")
        if found := re.search(r'data-since="(\d+)"', text):
            self._since = found[1]
        return text


def main() -> int:
    """Print the figures; 1 where a kind of page is over the budget."""
    seconds = float(sys.argv[1]) if len(sys.argv) > 1 else SECONDS
    with tempfile.TemporaryDirectory() as folder:
        shed = Path(folder, "shed")
        machines = _made(shed)
        port = _free_port()
        command = [sys.executable, "-m", "shimstock", "--shed", str(shed), "--who", "Ida"]
        server = subprocess.Popen([*command, "serve", "--port", str(port)])
        try:
            _wait_for(port)
            print(f"warm after {_warm_after(server.pid):.0f} s")
            times, wrong = _measured(port, machines, seconds)
        finally:
            server.terminate()
            server.wait(20)
    return _told(times, wrong)


def _made(shed: Path) -> list[str]:
    command = [sys.executable, "-m", "shimstock", "--shed", str(shed), "--who", "Ida", "demo"]
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    machines = grow(shed / "workshop.sqlite3")
    take_photos(shed)
    return machines


def _measured(port: int, machines: list[str], seconds: float) -> tuple[Times, list[str]]:
    until = time.monotonic() + seconds
    phones = [Phone(port, machines[n], n, until, "") for n in range(PHONES)]
    for phone in phones:
        phone.start()
    times: Times = defaultdict(list)
    for phone in phones:
        phone.join()
        for kind, took in phone.times.items():
            times[kind] += took
    return times, [line for phone in phones for line in phone.wrong]


def _told(times: Times, wrong: list[str]) -> int:
    plain = _at(times["a plain file"], 0.95)
    print(f"{'':16}   asked  median    95th   slowest   95th beside a plain file")
    over = []
    for kind, took in sorted(times.items(), key=lambda item: _at(item[1], 0.95)):
        high = _at(took, 0.95)
        print(
            f"{kind:16} {len(took):7} {median(took) * 1000:5.0f} ms {high * 1000:4.0f} ms"
            f" {max(took) * 1000:6.0f} ms   {high / plain:5.1f} times"
        )
        over += [kind] * (high > BUDGET)
    print(f"budget: {BUDGET * 1000:.0f} ms at the 95th; over it: {', '.join(over) or 'none'}")
    for line in sorted(set(wrong)):
        print(f"wrong: {line} ({wrong.count(line)} times)")
    return 1 if over or wrong else 0


def _at(took: list[float], share: float) -> float:
    return sorted(took)[min(len(took) - 1, int(share * len(took)))]


def _free_port() -> int:
    with socket.socket() as listening:
        listening.bind(("127.0.0.1", 0))
        return int(listening.getsockname()[1])


def _wait_for(port: int) -> None:
    for _ in range(300):
        try:
            socket.create_connection(("localhost", port), timeout=1).close()
            return
        except OSError:
            time.sleep(0.1)
    raise SystemExit("the server does not answer")


def _warm_after(server: int) -> float:
    """Wait until the workers have read fifty books and rest; gives the seconds that it took."""
    began = time.monotonic()
    worked, since = -1, began
    while time.monotonic() - since < STILL and time.monotonic() - began < LONGEST_WARMING:
        time.sleep(0.5)
        if (now := _worked(server)) > worked + 1:  # the looks that they take each second are short
            worked, since = now, time.monotonic()
    return since - began


def _worked(server: int) -> int:
    """Seconds that a program and those that it started have worked."""
    listed = subprocess.run(["ps", "-eo", "pid=,ppid=,cputimes="], capture_output=True, check=True)
    programs = [tuple(map(int, line.split())) for line in listed.stdout.splitlines()]
    own, worked = {server}, 0
    for program, parent, seconds in sorted(programs):  # what is started later has a higher number
        if program in own or parent in own:
            own.add(program)
            worked += seconds
    return worked


if __name__ == "__main__":
    sys.exit(main())
