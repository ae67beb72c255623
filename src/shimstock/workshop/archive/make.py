"""Makes the archive: a copy of the database as it stands, the photos and the books."""

from __future__ import annotations

import os
import secrets
import shutil
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing
from dataclasses import dataclass
from datetime import UTC, datetime
from hashlib import sha256
from pathlib import Path
from tempfile import TemporaryDirectory, TemporaryFile
from typing import IO, cast
from zipfile import ZIP_DEFLATED, ZIP_STORED, ZipFile, ZipInfo

import shimstock
from shimstock.workshop.archive.manifest import (
    DATABASE,
    FOLDERS,
    FORMAT,
    NAME,
    SECRET_TABLES,
    FileKept,
    Manifest,
    safe,
)
from shimstock.workshop.refused import Refused

AT_A_TIME = 2**20
"""Bytes held in memory."""
PATIENCE = 80
"""How often the database is asked again while somebody writes, each after a quarter second."""
ARRIVING = "photos/arriving/"
"""Where pictures lie that are still on their way."""
PACKED = frozenset({".jpg", ".jpeg", ".png", ".webp", ".heic", ".heif", ".avif", ".gif"})
"""Pictures are packed already: they are laid in as they are."""
COUNTED = {
    "machines": "SELECT COUNT(*) FROM workshop_machine WHERE NOT withdrawn",
    "diary entries": "SELECT COUNT(*) FROM workshop_diaryentry",
    "readings": "SELECT COUNT(*) FROM workshop_readingrow",
    "verdicts": "SELECT COUNT(*) FROM workshop_verdictrow",
    "bags": "SELECT COUNT(*) FROM workshop_bag WHERE NOT withdrawn",
    "notes": "SELECT COUNT(*) FROM workshop_note WHERE NOT withdrawn",
    "photos": "SELECT COUNT(*) FROM workshop_photo",
    "people": "SELECT COUNT(*) FROM workshop_person",
}
LEFT_OUT = (
    "the shed's secret",
    "passwords, codes to join, devices signed in",
    "pictures still on their way",
    "papers, which can be printed again",
)

Progress = Callable[[int, int], bool]
"""Told how many bytes of how many are done; answers False to stop."""


@dataclass(frozen=True)
class Made:
    """What went into an archive. missing: pictures that the book names and the folder lacks."""

    manifest: Manifest
    missing: tuple[str, ...]


def write_archive(shed: Path, file: Path, progress: Progress | None = None) -> Made:
    """Write the whole workshop into one file: all of it, or no file at all.

    shed: its folder. file: must not be there yet. Raises FileExistsError, Refused, and
    KeyboardInterrupt where `progress` says to stop.
    """
    if file.exists():
        raise FileExistsError(0, "is there already", str(file))
    half = file.with_name(f".{file.name}.{secrets.token_hex(4)}.part")
    try:
        with half.open("xb") as out:
            made = _fill(shed, out, progress)
            out.flush()
            os.fsync(out.fileno())
        half.rename(file)
    finally:
        half.unlink(missing_ok=True)
    return made


def archive_open(shed: Path) -> IO[bytes]:
    """The whole workshop as a file without a name, open at its start; closed, it is gone.

    shed: its folder, on whose disk it lies meanwhile. Raises Refused.
    """
    out = cast(IO[bytes], TemporaryFile(dir=shed))  # noqa: SIM115 - it is handed on open
    try:
        _fill(shed, out, None)
        out.seek(0)
    except BaseException:
        out.close()
        raise
    return out


def name_today(shed: Path) -> str:
    """How an archive made today is called."""
    return f"{shed.name or 'shed'}-{datetime.now().astimezone():%Y-%m-%d}.zip"


def size_now() -> int:
    """About as many bytes as the archive will have: of the database, and of the photos it names."""
    from django.db import connection
    from django.db.models import Sum

    from shimstock.workshop.models import Photo

    photos = Photo.objects.aggregate(all=Sum("size"))["all"] or 0
    with connection.cursor() as asked:
        pages, each = (
            asked.execute(f"PRAGMA {name}").fetchone()[0] for name in ("page_count", "page_size")
        )
    return int(pages * each + photos)


def _fill(shed: Path, out: IO[bytes], progress: Progress | None) -> Made:
    with TemporaryDirectory(dir=shed, prefix=".archive-") as bench:
        copy = Path(bench, DATABASE)
        _copy_database(copy)
        leave_secrets_out(copy)
        names = sorted(_files(shed))
        lying = {DATABASE: copy} | {name: shed / name for name in names}
        _check_room(shed, sum(path.stat().st_size for path in lying.values()))
        counts, migrations, photos = _told(copy)
        with ZipFile(out, "w") as packed:
            files = tuple(_pack(packed, lying, progress))
            manifest = Manifest(
                FORMAT,
                shimstock.__version__,
                datetime.now(UTC).isoformat(timespec="seconds"),
                migrations,
                counts,
                LEFT_OUT,
                files,
            )
            packed.writestr(_info(NAME, ZIP_DEFLATED), manifest.written())
    return Made(manifest, tuple(name for name in photos if f"photos/{name}" not in lying))


def _files(shed: Path) -> Iterator[str]:
    """Names of the pictures and books that lie in the shed; not what is half there."""
    for folder in FOLDERS:
        for path in (shed / folder).rglob("*"):
            name = path.relative_to(shed).as_posix()
            whole = safe(name) and not name.startswith(ARRIVING)
            if whole and path.is_file() and not path.is_symlink():
                yield name


def _copy_database(copy: Path) -> None:
    """Copy the database as it stands, also while others write to it."""
    from django.db import connection

    asked = 0

    def look(status: int, remaining: int, pages: int) -> None:
        nonlocal asked
        asked += status in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED)
        if asked > PATIENCE:
            raise Refused(["Somebody is writing to the book all the time; try again later"])

    connection.ensure_connection()
    with closing(sqlite3.connect(copy)) as target:
        connection.connection.backup(target, progress=look)


def leave_secrets_out(copy: Path) -> None:
    """Take out of a copy what lets people in; not a byte of it stays in the file."""
    with closing(sqlite3.connect(copy, isolation_level=None)) as database:
        database.execute("PRAGMA journal_mode=DELETE")
        for table in SECRET_TABLES:
            database.execute(f"DELETE FROM {table}")
        database.execute("UPDATE workshop_person SET password = '!'")
        database.execute("VACUUM")


def _told(copy: Path) -> tuple[dict[str, int], tuple[str, ...], tuple[str, ...]]:
    """Counts of rows, the steps the database has been through, and its pictures."""
    with closing(sqlite3.connect(copy)) as database:
        ask = database.execute
        counts = {name: int(ask(query).fetchone()[0]) for name, query in COUNTED.items()}
        steps = ask("SELECT app || '.' || name FROM django_migrations ORDER BY id").fetchall()
        photos = ask("SELECT DISTINCT file FROM workshop_photo ORDER BY file").fetchall()
    return counts, tuple(step for (step,) in steps), tuple(file for (file,) in photos)


def _check_room(shed: Path, wanted: int) -> None:
    free = shutil.disk_usage(shed).free
    if free < wanted:
        raise Refused(
            [
                f"The disk has {megabytes(free)} free and the archive needs {megabytes(wanted)}; "
                "make room first"
            ]
        )


def megabytes(size: int) -> str:
    """A size as people say it.

    >>> megabytes(1_310_720), megabytes(900), megabytes(5 * 10**9)
    ('1.3 MB', '1 kB', '5.0 GB')
    """
    if size < 10**6:
        return f"{max(1, round(size / 1000))} kB"
    return f"{size / 10**6:.1f} MB" if size < 10**9 else f"{size / 10**9:.1f} GB"


def _pack(packed: ZipFile, lying: dict[str, Path], progress: Progress | None) -> Iterator[FileKept]:
    total, done = sum(path.stat().st_size for path in lying.values()), 0
    for name, path in lying.items():
        info = _info(name, ZIP_STORED if path.suffix.lower() in PACKED else ZIP_DEFLATED)
        info.file_size = path.stat().st_size  # a hint, for files beyond 2 GB
        digest, size = sha256(), 0
        with path.open("rb") as lies, packed.open(info, "w") as into:
            while piece := lies.read(AT_A_TIME):
                into.write(piece)
                digest.update(piece)
                size += len(piece)
                if progress and not progress(done + size, total):
                    raise KeyboardInterrupt
        done += size
        yield FileKept(name, size, digest.hexdigest())


def _info(name: str, how: int) -> ZipInfo:
    info = ZipInfo(name, datetime.now().timetuple()[:6])
    info.compress_type = how
    info.external_attr = 0o644 << 16
    return info
