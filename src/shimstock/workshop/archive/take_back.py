"""Takes a workshop back from its archive: every file whole and as it was, or nothing at all."""

from __future__ import annotations

import os
import secrets
import shutil
import sqlite3
from collections.abc import Iterable
from contextlib import closing
from hashlib import sha256
from importlib.resources import files
from pathlib import Path
from zipfile import ZIP_DEFLATED, ZIP_STORED, BadZipFile, ZipFile, ZipInfo
from zlib import error as DamagedPacking

from shimstock.workshop.archive.make import (
    AT_A_TIME,
    COUNTED,
    Progress,
    leave_secrets_out,
    megabytes,
)
from shimstock.workshop.archive.manifest import (
    DATABASE,
    NAME,
    FileKept,
    Manifest,
    manifest_read,
)
from shimstock.workshop.refused import Refused, refuse

LONGEST_MANIFEST = 64 * 2**20
"""Bytes: some hundred thousand pictures."""
TIGHTEST = 200
"""No file of ours packs smaller than this many times; what claims to is made to fill a disk."""


def take_back(file: Path, shed: Path, progress: Progress | None = None) -> Manifest:
    """Take the workshop in an archive back into a folder that is new or empty.

    Everything is checked beside that folder first, so that nothing half-done ever stands in it.
    Raises Refused with what is wrong and what would do, OSError where the file cannot be read, and
    KeyboardInterrupt where `progress` says to stop.
    """
    _check_empty(shed)
    try:
        with ZipFile(file) as packed:
            manifest = look_through(packed)
            _check_room(shed, manifest)
            _unpack_beside(packed, manifest, shed, progress)
    except (BadZipFile, EOFError, DamagedPacking, NotImplementedError) as error:
        raise Refused(
            [f"{file.name} is damaged or cut short, or no archive; take another copy of it"]
        ) from error
    return manifest


def look_through(packed: ZipFile) -> Manifest:
    """Read what an archive says of itself, and hold it against what is in it. Raises Refused."""
    lying = packed.infolist()
    names = [info.filename for info in lying]
    if NAME not in names:
        raise Refused(["It holds no manifest: it is no archive of a workshop, or it is cut short"])
    refuse(_unlike(info) for info in lying if _unlike(info))
    manifest = manifest_read(packed.read(NAME))
    _check_known(manifest.migrations)
    told = [each.name for each in manifest.files]
    if sorted(names) != sorted([NAME, *told]) or DATABASE not in told:
        raise Refused(["What it holds is not what its manifest says: it was changed or cut short"])
    sizes = {info.filename: info.file_size for info in lying}
    refuse(
        f"{each.name} is not as long as its manifest says: it was changed"
        for each in manifest.files
        if sizes[each.name] != each.size
    )
    return manifest


def _unlike(info: ZipInfo) -> str:
    """Why an entry is none that an archive of ours has; "" for one that may be."""
    if info.flag_bits & 1 or info.compress_type not in (ZIP_STORED, ZIP_DEFLATED):
        return f"{info.filename!r} in it is packed in a way that no archive of ours is"
    if info.file_size > TIGHTEST * max(info.compress_size, 1) + AT_A_TIME:
        return f"{info.filename!r} in it would grow beyond all measure"
    if info.filename == NAME and info.file_size > LONGEST_MANIFEST:
        return "Its manifest is too long"
    return ""


def _check_known(migrations: Iterable[str]) -> None:
    """Refuse the tables of a newer version, which would be read wrongly here."""
    folder = files("shimstock.workshop").joinpath("migrations")
    known = {f"workshop.{each.name.removesuffix('.py')}" for each in folder.iterdir()}
    steps = {step for step in migrations if step.startswith("workshop.")}
    if not steps:
        raise Refused(["It names no step of its tables: it is damaged, or no archive"])
    if newer := sorted(steps - known):
        raise Refused(
            [
                f"It was made by a newer shimstock: its tables have been through "
                f"{', '.join(newer)}, unknown here; install that version"
            ]
        )


def _check_empty(shed: Path) -> None:
    if not shed.exists() and not shed.is_symlink():
        return
    if not shed.is_dir():
        raise Refused([f"{shed} is no folder; name a new one: --shed DIR"])
    if shed.resolve() == Path.cwd().resolve():
        raise Refused([f"{shed} is the folder you stand in; name a new folder: --shed DIR"])
    if there := sorted(path.name for path in shed.iterdir()):
        more = f" and {len(there) - 3} more" if len(there) > 3 else ""
        raise Refused(
            [
                f"{shed} is not empty, it holds {', '.join(there[:3])}{more}; "
                "name a new folder: --shed DIR"
            ]
        )


def _check_room(shed: Path, manifest: Manifest) -> None:
    near = next(folder for folder in shed.absolute().parents if folder.exists())
    free = shutil.disk_usage(near).free
    if free < manifest.size:
        raise Refused(
            [
                f"The disk has {megabytes(free)} free and the workshop needs "
                f"{megabytes(manifest.size)}; make room first"
            ]
        )


def _unpack_beside(
    packed: ZipFile, manifest: Manifest, shed: Path, progress: Progress | None
) -> None:
    shed.parent.mkdir(parents=True, exist_ok=True)
    half = shed.with_name(f".{shed.name}.{secrets.token_hex(4)}.part")
    half.mkdir(mode=0o700)
    try:
        _unpack(packed, manifest, half, progress)
        _check_database(half / DATABASE, manifest)
        leave_secrets_out(half / DATABASE)  # whoever made the archive brings no way in
        if shed.exists():
            shed.rmdir()  # empty, or this refuses
        half.rename(shed)
    finally:
        shutil.rmtree(half, ignore_errors=True)


def _unpack(packed: ZipFile, manifest: Manifest, half: Path, progress: Progress | None) -> None:
    done = 0
    for each in manifest.files:
        into = half.joinpath(*each.name.split("/"))
        into.parent.mkdir(parents=True, exist_ok=True)
        for size in _unpacked(packed, each, into):
            if progress and not progress(done + size, manifest.size):
                raise KeyboardInterrupt
        done += each.size


def _unpacked(packed: ZipFile, each: FileKept, into: Path) -> Iterable[int]:
    """Unpack one file and hold it against its digest; yields the bytes done so far."""
    digest, size = sha256(), 0
    with packed.open(each.name) as lies, into.open("xb") as out:
        while piece := lies.read(min(AT_A_TIME, each.size - size + 1)):
            size += len(piece)
            if size > each.size:
                break
            digest.update(piece)
            out.write(piece)
            yield size
        out.flush()
        os.fsync(out.fileno())
    if size != each.size or digest.hexdigest() != each.sha256:
        raise Refused([f"{each.name} in it is damaged; take another copy of the archive"])


def _check_database(database: Path, manifest: Manifest) -> None:
    """Refuse a database that is damaged, says otherwise than the manifest, or acts by itself."""
    try:
        with closing(sqlite3.connect(database)) as asked:
            whole = asked.execute("PRAGMA quick_check").fetchone()[0] == "ok"
            kinds = {kind for (kind,) in asked.execute("SELECT type FROM sqlite_master")}
            if kinds - {"table", "index"}:
                raise Refused([f"{DATABASE} in it would act by itself; no archive of ours does"])
            steps = asked.execute("SELECT app || '.' || name FROM django_migrations").fetchall()
            counts = {name: asked.execute(query).fetchone()[0] for name, query in COUNTED.items()}
    except sqlite3.Error as error:
        raise Refused([f"{DATABASE} in it is no database of a workshop: {error}"]) from error
    if not whole:
        raise Refused([f"{DATABASE} in it is damaged; take another copy of the archive"])
    _check_known(step for (step,) in steps)
    if counts != dict(manifest.counts):
        raise Refused(["Its database holds other rows than its manifest says: it was changed"])
