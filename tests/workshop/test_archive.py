"""The whole workshop in one file, and back: the same rows and files, or nothing at all."""

from __future__ import annotations

import hashlib
import io
import json
import os
import shutil
import sqlite3
import zipfile
from contextlib import closing
from pathlib import Path

import pytest

from shimstock.workshop import acts
from shimstock.workshop.archive.make import archive_open, write_archive
from shimstock.workshop.archive.manifest import FORMAT, SECRET_TABLES, safe
from shimstock.workshop.archive.take_back import take_back
from shimstock.workshop.refused import Refused
from workshop.shed_book import LINER_1

pytestmark = pytest.mark.django_db(transaction=True)
SECRETS = (
    "scrypt$of-ida",
    "digest-of-a-code",
    "session-of-a-phone",
    "key-of-an-upload",
    "10.1.2.3",
)


@pytest.fixture
def shed(machine, tmp_path) -> Path:
    """A workshop's folder with everything that one can hold."""
    from django.utils.timezone import now

    from shimstock.workshop.models import Device, JoinCode, Person, Photo, SignInTry, Upload

    acts.open_joint(machine="grey", joint="J1", who="Ann")
    acts.take_reading(machine="grey", figure="bore", piece="1", typed=LINER_1, who="Ann")
    acts.put_in_bag(machine="grey", number="7", about="J1", shelf="B2", who="Ann")
    shed = tmp_path / "shed"
    for name, data in {
        "photos/ab/one.jpg": b"\xff\xd8" + bytes(range(256)) * 9000,
        "photos/ab/one-320.jpg": b"small",
        "books/grey.yaml": "book: ü\n".encode() * 999,
        "photos/arriving/key": b"half",
        "secret.key": b"the-sheds-secret",
        "papers/grey.pdf": b"%PDF",
        "workshop.sqlite3.before-0002": b"older",
    }.items():
        (shed / name).parent.mkdir(parents=True, exist_ok=True)
        (shed / name).write_bytes(data)
    times = {"at": now(), "taken_at": now(), "by": "Ann"}
    Photo(machine=machine, about="joint:hood-joint", file="ab/one.jpg", name="IMG_1.jpg",
          sha256="0" * 64, size=3, width=1, height=1, **times).save()  # fmt: skip
    ida = Person.objects.create(name="Ida", password=SECRETS[0], joined_at=now())
    JoinCode.objects.create(digest=SECRETS[1], made_by="Ida", made_at=now(), good_until=now())
    Device.objects.create(person=ida, session=SECRETS[2], called="phone", signed_in_at=now(),
                          seen_at=now())  # fmt: skip
    Upload.objects.create(key=SECRETS[3], by="Ida", name="a", length=9, for_what={},
                          begun_at=now())  # fmt: skip
    SignInTry.objects.create(name="Ida", address=SECRETS[4], at=now())
    return shed


@pytest.fixture
def packed(shed, tmp_path) -> Path:
    file = tmp_path / "workshop.zip"
    write_archive(shed, file)
    return file


@pytest.fixture
def new(tmp_path) -> Path:
    return tmp_path / "elsewhere" / "new"


def rows_here() -> dict[str, list[tuple[object, ...]]]:
    """Every row of the workshop, as it is stored."""
    from django.db import connection

    return rows_in(connection.settings_dict["NAME"])


def rows_in(database: Path | str) -> dict[str, list[tuple[object, ...]]]:
    with closing(sqlite3.connect(database, uri=True)) as asked:
        names = [n for (n,) in asked.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        return {
            n: sorted(asked.execute(f"SELECT * FROM {n}").fetchall(), key=repr)
            for n in names
            if not n.startswith("sqlite_")
        }


def digests(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in folder.rglob("*")
        if path.is_file()
    }


def test_every_row_and_file_that_travels_comes_back_as_it_was(shed, packed, new):
    before = rows_here()

    take_back(packed, new)

    after = rows_in(new / "workshop.sqlite3")
    assert after.keys() == before.keys()
    for table in before.keys() - {*SECRET_TABLES, "workshop_person"}:
        assert after[table] == before[table], table
    for table in ("machine", "diaryentry", "readingrow", "verdictrow", "bag", "photo"):
        assert before[f"workshop_{table}"], f"nothing in {table} shows nothing"
    wanted = ("photos/ab/one.jpg", "photos/ab/one-320.jpg", "books/grey.yaml")
    assert {n: d for n, d in digests(new).items() if n != "workshop.sqlite3"} == {
        name: digests(shed)[name] for name in wanted
    }


def test_names_of_people_travel_and_what_lets_them_in_does_not(packed, new):
    take_back(packed, new)
    rows = rows_in(new / "workshop.sqlite3")

    ((_, name, password, _),) = rows["workshop_person"]
    assert (name, password) == ("Ida", "!")
    assert all(rows[table] == [] for table in SECRET_TABLES)
    with zipfile.ZipFile(packed) as opened:
        whole = b"".join(opened.read(name) for name in opened.namelist())
    for secret in (*SECRETS, "the-sheds-secret"):
        assert secret.encode() not in whole, secret


def test_photos_are_laid_in_as_they_are_and_the_rest_is_packed(packed):
    with zipfile.ZipFile(packed) as opened:
        how = {info.filename: info.compress_type for info in opened.infolist()}

    assert how["photos/ab/one.jpg"] == zipfile.ZIP_STORED
    assert how["workshop.sqlite3"] == how["books/grey.yaml"] == zipfile.ZIP_DEFLATED


def test_the_manifest_tells_what_is_in_it(shed, packed):
    with zipfile.ZipFile(packed) as opened:
        said = json.loads(opened.read("manifest.json"))
        told = {each["name"]: (each["size"], each["sha256"]) for each in said["files"]}
        lying = {
            name: (len(opened.read(name)), hashlib.sha256(opened.read(name)).hexdigest())
            for name in opened.namelist()
            if name != "manifest.json"
        }

    assert told == lying
    assert said["counts"]["readings"] == 1 and said["counts"]["machines"] == 1
    assert "workshop.0002_pages" in said["migrations"]


def test_a_picture_that_is_not_in_the_folder_is_named(shed, tmp_path):
    (shed / "photos/ab/one.jpg").unlink()

    assert write_archive(shed, tmp_path / "a.zip").missing == ("ab/one.jpg",)


def test_the_archive_for_a_page_is_whole_and_leaves_no_file(shed, new, tmp_path):
    before = sorted(digests(shed))
    with archive_open(shed) as opened:
        (tmp_path / "got.zip").write_bytes(opened.read())

    take_back(tmp_path / "got.zip", new)
    assert sorted(digests(shed)) == before


def test_stopping_leaves_no_archive(shed, tmp_path):
    with pytest.raises(KeyboardInterrupt):
        write_archive(shed, tmp_path / "a.zip", lambda done, total: False)

    assert [path.name for path in tmp_path.iterdir()] == ["shed"]
    assert not [path for path in shed.iterdir() if path.name.startswith(".")]


def test_what_is_there_is_not_overwritten(shed, packed):
    before = packed.read_bytes()
    with pytest.raises(FileExistsError):
        write_archive(shed, packed)

    assert packed.read_bytes() == before


def test_progress_runs_to_the_end(shed, tmp_path, new):
    told: list[tuple[int, int]] = []
    write_archive(shed, tmp_path / "a.zip", lambda done, total: told.append((done, total)) or True)
    assert told[-1][0] == told[-1][1] > 2_000_000
    told.clear()
    take_back(tmp_path / "a.zip", new, lambda done, total: told.append((done, total)) or True)
    assert told[-1][0] == told[-1][1] > 2_000_000


# --- what is refused ---------------------------------------------------------------------


def refused(file: Path, new: Path, match: str) -> None:
    """Refused in words, and neither the folder nor anything beside it is there afterwards."""
    new.parent.mkdir(parents=True, exist_ok=True)
    before = sorted(digests(new.parent))
    with pytest.raises(Refused, match=match):
        take_back(file, new)
    assert sorted(digests(new.parent)) == before
    assert not new.exists() or not any(new.iterdir())
    assert not [path for path in new.parent.iterdir() if path.name.endswith(".part")]


def changed(packed: Path, change) -> Path:
    """The archive anew, with what `change` makes of its entries and its manifest."""
    with zipfile.ZipFile(packed) as opened:
        entries = {info.filename: opened.read(info) for info in opened.infolist()}
    manifest = json.loads(entries.pop("manifest.json"))
    change(entries, manifest)
    out = packed.with_name("changed.zip")
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as anew:
        for name, data in entries.items():
            anew.writestr(name, data)
        anew.writestr("manifest.json", json.dumps(manifest))
    return out


def told(name: str, data: bytes) -> dict[str, object]:
    return {"name": name, "size": len(data), "sha256": hashlib.sha256(data).hexdigest()}


def test_a_folder_that_is_not_empty_is_refused(packed, new):
    new.mkdir(parents=True)
    (new / "letter.txt").write_text("mine")

    with pytest.raises(Refused, match=r"not empty, it holds letter\.txt; name a new folder"):
        take_back(packed, new)
    assert (new / "letter.txt").read_text() == "mine"


def test_the_folder_one_stands_in_is_refused(packed, new, monkeypatch):
    new.mkdir(parents=True)
    monkeypatch.chdir(new)

    refused_in = r"is the folder you stand in; name a new folder"
    with pytest.raises(Refused, match=refused_in):
        take_back(packed, new)


def test_an_empty_folder_will_do(packed, new):
    new.mkdir(parents=True)
    take_back(packed, new)

    assert (new / "workshop.sqlite3").is_file()


def test_stopping_leaves_no_half_workshop(packed, new):
    with pytest.raises(KeyboardInterrupt):
        take_back(packed, new, lambda done, total: False)

    assert list(new.parent.iterdir()) == []


@pytest.mark.parametrize(
    "name",
    ["../evil", "photos/../../evil", "/etc/evil", "photos\\..\\evil", "C:/evil", "secret.key",
     "photos/../workshop.sqlite3", "photos//a", "photos/./a", "photos/a\x00b", "photos", ".x",
     "papers/evil", "workshop.sqlite3-wal"],
)  # fmt: skip
def test_a_file_outside_the_shed_is_refused(name, packed, new):
    def change(entries, manifest):
        entries[name] = b"evil"
        manifest["files"].append(told(name, b"evil"))

    assert not safe(name)
    refused(changed(packed, change), new, "no place in a shed|not what its manifest says")


def test_a_file_that_the_manifest_does_not_name_is_refused(packed, new):
    refused(
        changed(packed, lambda entries, _: entries.update({"photos/b.jpg": b"x"})),
        new, "not what its manifest says",
    )  # fmt: skip


def test_a_file_that_is_lacking_is_refused(packed, new):
    refused(changed(packed, lambda e, _: e.pop("books/grey.yaml")), new, "not what its manifest")


def test_a_byte_that_was_changed_is_refused(packed, new):
    def change(entries, _):
        data = bytearray(entries["photos/ab/one.jpg"])
        data[1000] ^= 1
        entries["photos/ab/one.jpg"] = bytes(data)

    refused(changed(packed, change), new, "photos/ab/one.jpg in it is damaged")


@pytest.mark.parametrize("share", [0.0, 0.01, 0.5, 0.999])
def test_a_file_that_was_cut_short_is_refused(share, packed, new):
    short = packed.with_name("short.zip")
    short.write_bytes(packed.read_bytes()[: int(packed.stat().st_size * share)])

    refused(short, new, "cut short")


def test_bytes_that_rotted_are_refused(packed, new):
    data = bytearray(packed.read_bytes())
    at = data.index(b"\xff\xd8\x00\x01") + 5000
    data[at : at + 20] = bytes(20)
    packed.write_bytes(data)

    refused(packed, new, "damaged")


def test_a_file_that_grows_beyond_all_measure_is_refused(packed, new):
    def change(entries, manifest):
        entries["photos/big.png"] = bytes(20 * 2**20)
        manifest["files"].append({"name": "photos/big.png", "size": 20 * 2**20, "sha256": ""})

    refused(changed(packed, change), new, "beyond all measure")


def test_a_file_that_is_longer_than_it_says_is_refused(packed, new):
    def change(entries, manifest):
        entries["books/grey.yaml"] += b"more"

    refused(changed(packed, change), new, "not as long as its manifest says")


def test_an_archive_of_a_newer_form_is_refused(packed, new):
    def change(_, manifest):
        manifest.update(format=FORMAT + 1, version="9.0")

    refused(changed(packed, change), new, "made by a newer shimstock, 9.0")


def test_an_archive_with_newer_tables_is_refused(packed, new):
    refused(
        changed(packed, lambda _, manifest: manifest["migrations"].append("workshop.0099_later")),
        new, "newer shimstock.*workshop.0099_later",
    )  # fmt: skip


def database_changed(packed: Path, *statements: str) -> Path:
    def change(entries, manifest):
        file = packed.with_name("other.sqlite3")
        file.write_bytes(entries["workshop.sqlite3"])
        with closing(sqlite3.connect(file)) as database:
            for statement in statements:
                database.execute(statement)
            database.commit()
        entries["workshop.sqlite3"] = file.read_bytes()
        files = [each for each in manifest["files"] if each["name"] != "workshop.sqlite3"]
        manifest["files"] = [told("workshop.sqlite3", file.read_bytes()), *files]

    return changed(packed, change)


@pytest.mark.parametrize(
    ("statement", "said"),
    [
        ("CREATE TRIGGER t AFTER INSERT ON workshop_note BEGIN SELECT 1; END", "act by itself"),
        ("CREATE VIEW v AS SELECT 1", "act by itself"),
        ("INSERT INTO django_migrations (app, name, applied) "
         "VALUES ('workshop', '0099_later', '2026-01-01')", "newer shimstock"),
        ("DELETE FROM workshop_bag", "other rows than its manifest"),
        ("DROP TABLE workshop_bag", "no database of a workshop"),
    ],
)  # fmt: skip
def test_a_database_that_is_not_what_it_says_is_refused(statement, said, packed, new):
    refused(database_changed(packed, statement), new, said)


def test_an_archive_brings_nobodys_way_in(packed, new):
    """Somebody who made it adds a device that is signed in, and writes the digests anew."""
    device = (
        "INSERT INTO workshop_device (person_id, session, called, trusted, signed_in_at, seen_at) "
        "SELECT id, 'a-session-of-mine', 'phone', 1, '2026-01-01', '2026-01-01' "
        "FROM workshop_person"
    )
    password = "UPDATE workshop_person SET password = 'a-digest-of-mine'"
    take_back(database_changed(packed, device, password), new)
    rows = rows_in(new / "workshop.sqlite3")

    assert rows["workshop_device"] == []
    assert [row[2] for row in rows["workshop_person"]] == ["!"]


@pytest.mark.skipif(os.name != "posix", reason="rights of files are told otherwise there")
def test_a_workshop_taken_back_is_its_owners_alone(packed, new):
    take_back(packed, new)

    assert new.stat().st_mode & 0o077 == 0


@pytest.mark.parametrize("manifest", [b"", b"[]", b"{}", b"nonsense", b'{"format": "x"}',
                                      b"[" * 100_000])  # fmt: skip
def test_a_manifest_that_cannot_be_read_is_refused(manifest, packed, new):
    out = packed.with_name("changed.zip")
    with zipfile.ZipFile(out, "w") as anew:
        anew.writestr("manifest.json", manifest)

    refused(out, new, "manifest cannot be read|other rows|no step")


def test_some_other_zip_is_refused(tmp_path, new):
    other = io.BytesIO()
    with zipfile.ZipFile(other, "w") as anew:
        anew.writestr("letter.txt", "dear")
    (tmp_path / "other.zip").write_bytes(other.getvalue())

    refused(tmp_path / "other.zip", new, "holds no manifest")


def test_a_full_disk_is_refused_before_anything_is_written(packed, new, shed, monkeypatch):
    monkeypatch.setattr(shutil, "disk_usage", lambda _: shutil._ntuple_diskusage(1, 1, 0))

    refused(packed, new, "0? ?kB free|make room first")
    with pytest.raises(Refused, match="make room first"):
        write_archive(shed, packed.with_name("second.zip"))
