"""Photos that arrive from a phone a piece at a time, over a line that breaks."""

from __future__ import annotations

import secrets
from dataclasses import dataclass

from django.conf import settings
from django.utils import timezone

from shimstock.workshop.acts.photos import NAME_LETTERS, KeptAlready, keep_photo, what_it_shows
from shimstock.workshop.models import DiaryEntry, Photo, Upload
from shimstock.workshop.pictures import arriving
from shimstock.workshop.pictures.kind import NotAPicture
from shimstock.workshop.pictures.limits import MOST_BYTES, too_many_bytes
from shimstock.workshop.refused import NotFound


@dataclass(frozen=True)
class Arrived:
    """A photo that has arrived whole, and what there is to say of it."""

    photo: Photo
    says: str


def begin_photo(
    *,
    machine: str,
    about: str,
    name: str,
    length: int,
    who: str,
    moment: str = "",
    note: str = "",
    keep_place: bool = False,
) -> Upload:
    """Make ready for a photo that will arrive a piece at a time.

    length: of the file, in bytes. The rest is as `keep_photo` takes it, and raises the same.
    """
    row, place = what_it_shows(machine, about, moment)
    if not 0 < length <= MOST_BYTES:
        raise NotAPicture(too_many_bytes(length) if length > 0 else "The file is empty.")
    key = secrets.token_urlsafe(24)
    arriving.begin(settings.SHED, key)
    for_what = {
        "machine": row.slug,
        "about": place,
        "moment": moment,
        "note": note,
        "keep_place": keep_place,
    }
    return Upload.objects.create(
        key=key,
        by=who,
        name=name.strip()[-NAME_LETTERS:],
        length=length,
        for_what=for_what,
        begun_at=timezone.now(),
    )


def offset_of(upload: Upload) -> int:
    """Bytes of a photo that have arrived. Raises NotFound where it must be begun anew."""
    if upload.kept_as_id is not None:
        return upload.length
    offset = arriving.arrived(settings.SHED, upload.key)
    if offset is None:
        raise NotFound("photo on its way", upload.name, [])
    return offset


def add_piece(upload: Upload, offset: int, piece: bytes) -> Arrived | None:
    """Take the next piece of a photo; keep the photo with its last piece.

    offset: where in the file the piece begins. Returns None while more is to come.
    Raises arriving.NotNext where another piece is next, NotAPicture where it is not kept.
    """
    if upload.kept_as is not None:
        return Arrived(upload.kept_as, "It is kept already.")
    if offset + len(piece) > upload.length:
        raise arriving.NotNext(offset_of(upload))
    offset_of(upload)
    try:
        if arriving.add(settings.SHED, upload.key, offset, piece) < upload.length:
            return None
        return _keep(upload)
    except FileNotFoundError:  # the same piece came twice at once, and the other one kept it
        upload.refresh_from_db()
        if upload.kept_as is None:
            raise NotFound("photo on its way", upload.name, []) from None
        return Arrived(upload.kept_as, "It is kept already.")


def _keep(upload: Upload) -> Arrived:
    """Keep a photo that is here whole; one that came whole before is not kept twice."""
    data = arriving.whole(settings.SHED, upload.key)
    try:
        entry = keep_photo(data=data, name=upload.name, who=upload.by, **upload.for_what)
        arrived = Arrived(_photo_of(entry), entry.says)
    except KeptAlready as there:
        arrived = Arrived(there.photo, str(there))
    except NotAPicture:
        arriving.done(settings.SHED, upload.key)
        raise
    upload.kept_as = arrived.photo
    upload.save(update_fields=["kept_as"])
    arriving.done(settings.SHED, upload.key)
    return arrived


def _photo_of(entry: DiaryEntry) -> Photo:
    (name,) = entry.touched
    return Photo.objects.get(pk=int(name.partition(":")[2]))
