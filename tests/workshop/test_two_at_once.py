"""Two programs write into one shed at once, and nothing is lost."""

import os
import sqlite3
import subprocess
import sys
from pathlib import Path

from workshop.shed_book import TEXT

EACH = 15

PROGRAM = """
import sys
from pathlib import Path
from shimstock.site.start import start

shed, who, count = Path(sys.argv[1]), sys.argv[2], int(sys.argv[3])
start(shed)
from shimstock.workshop import acts

print("ready", flush=True)
sys.stdin.readline()
for number in range(count):
    value = f"0.00{6000 + number}"
    acts.take_reading(machine="grey", figure="end-float", typed=value, who=who)
    acts.take_reading(
        machine="grey", figure="delivery", piece="left", typed="24.5", who=who,
        client_key=f"same-{number}",
    )
"""

BOOK_IN = """
import sys
from pathlib import Path
from shimstock.site.start import start

start(Path(sys.argv[1]))
from shimstock.workshop import acts

acts.add_machine(slug="grey", name="Grey", book_text=sys.stdin.read(), who="Ann")
"""


def test_two_programs_lose_nothing_and_store_no_sending_twice(tmp_path: Path):
    shed = tmp_path / "shed"
    subprocess.run(
        [sys.executable, "-c", BOOK_IN, str(shed)],
        input=TEXT,
        text=True,
        check=True,
        env=without_settings(),
    )
    both = [started(shed, who) for who in ("Ann", "Bob")]
    for program in both:
        assert program.stdout.readline() == "ready\n"
    for program in both:
        program.stdin.write("go\n")
        program.stdin.flush()
    for program in both:
        _, errors = program.communicate(timeout=120)
        assert (program.returncode, errors) == (0, "")

    database = sqlite3.connect(shed / "workshop.sqlite3")
    assert rows(database, "figure = 'end-float'") == 2 * EACH
    assert rows(database, "figure = 'delivery'") == EACH
    assert rows(database, "not superseded") == 2
    entries = "select count(*), count(distinct client_key) from workshop_diaryentry"
    assert database.execute(entries).fetchone() == (1 + 3 * EACH, EACH)
    database.close()


def started(shed: Path, who: str) -> "subprocess.Popen[str]":
    return subprocess.Popen(
        [sys.executable, "-c", PROGRAM, str(shed), who, str(EACH)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env=without_settings(),
    )


def without_settings() -> dict[str, str]:
    ours = ("DJANGO_SETTINGS_MODULE", "SHIMSTOCK_SHED")
    return {name: value for name, value in os.environ.items() if name not in ours}


def rows(database: sqlite3.Connection, where: str) -> int:
    query = f"select count(*) from workshop_readingrow where {where}"
    return int(database.execute(query).fetchone()[0])
