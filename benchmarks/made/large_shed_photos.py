"""Ten thousand photos in a large shed: some real pictures, each kept under many names."""

import io
import json
import os
import random
import sqlite3
from hashlib import sha256
from pathlib import Path

from PIL import Image

from made.large_shed import APART, MACHINES, PHOTOS
from shimstock.workshop.pictures.received import Picture, received
from shimstock.workshop.pictures.store import FOLDER, SIDES, keep

KINDS = (
    12  # pictures that are made and kept as the program keeps them; the others are links to them
)
SIDE = (2000, 1500)
TAKEN = "2026-09-18 18:00:00"


def take_photos(shed: Path) -> None:
    """Put photos of their joints on all machines, as many to each."""
    kept = [_kept(shed, number) for number in range(KINDS)]
    rows = sqlite3.connect(shed / "workshop.sqlite3")
    rows.execute("PRAGMA synchronous=OFF")
    machines = rows.execute("SELECT id FROM workshop_machine ORDER BY id").fetchall()
    for number, (machine,) in enumerate(machines):
        joints = rows.execute(
            "SELECT joint FROM workshop_jointstate WHERE machine_id = ?", [machine]
        ).fetchall()
        pick = random.Random(number)
        for count in range(PHOTOS // MACHINES):
            at = (2 * MACHINES + number) * APART + count
            _photo(rows, shed, machine, at, pick.choice(joints)[0], pick.choice(kept))
    rows.commit()
    rows.execute("ANALYZE")
    rows.close()


def _kept(shed: Path, number: int) -> tuple[str, Picture]:
    """A picture with as much in it as one of a shed, kept."""
    noise = random.Random(number).randbytes(400 * 300 * 3)
    picture = Image.frombytes("RGB", (400, 300), noise).resize(SIDE, Image.Resampling.BICUBIC)
    out = io.BytesIO()
    picture.save(out, "JPEG", quality=80)
    made = received(out.getvalue())
    return keep(shed, made), made


def _photo(
    rows: sqlite3.Connection, shed: Path, machine: int, at: int, joint: str,
    kept: tuple[str, Picture],
) -> None:  # fmt: skip
    name, picture = kept
    digest = sha256(str(at).encode()).hexdigest()
    file = f"{digest[:2]}/{digest}.{picture.kind}"
    _link(shed, name, file)
    place, says = f"joint:{joint}", f"Photo of {joint}, before."
    photo = {
        "id": at, "about": place, "moment": "before", "note": "", "file": file,
        "name": f"IMG_{at}.jpg", "sha256": digest, "size": len(picture.data),
        "width": picture.width, "height": picture.height, "taken_at": TAKEN, "by": "Ida",
        "at": TAKEN, "withdrawn": 0, "machine_id": machine,
    }  # fmt: skip
    entry = {
        "id": at, "act": "photo", "who": "Ida", "at": TAKEN, "says": says,
        "before": json.dumps({f"photo:{at}": {}}), "after": json.dumps({f"photo:{at}": {}}),
        "touched": json.dumps([f"photo:{at}"]), "places": json.dumps([f"photo:{place}:{file}"]),
        "rests_on": "[]", "machine_id": machine,
    }  # fmt: skip
    for table, row in (("photo", photo), ("diaryentry", entry)):
        columns, marks = ", ".join(f'"{name}"' for name in row), ", ".join("?" * len(row))
        rows.execute(
            f"INSERT INTO workshop_{table} ({columns}) VALUES ({marks})", list(row.values())
        )


def _link(shed: Path, from_: str, to: str) -> None:
    """Give a kept picture, and its smaller ones, one more name."""
    folder = shed / FOLDER
    (folder / to).parent.mkdir(parents=True, exist_ok=True)
    os.link(folder / from_, folder / to)
    for side in SIDES.values():
        stem, other = from_.rpartition(".")[0], to.rpartition(".")[0]
        os.link(folder / f"{stem}.{side}.jpg", folder / f"{other}.{side}.jpg")
