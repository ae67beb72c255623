"""Photos of places on a machine."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from django.conf import settings
from django.utils.timezone import is_naive, make_aware

from shimstock.workshop.books import book_of
from shimstock.workshop.find import find_machine
from shimstock.workshop.ledger import Pen, writing
from shimstock.workshop.models import DiaryEntry, Machine, Photo
from shimstock.workshop.place_typed import place_called, place_typed
from shimstock.workshop.refused import NotFound, Refused

if TYPE_CHECKING:
    from shimstock.workshop.pictures.received import Picture

MOMENTS = ("before", "after", "")
NAME_LETTERS = 200
FIRST_CAMERA = 1975  # the year of the first digital one


class KeptAlready(Refused):
    """The same picture is kept at this place already."""

    def __init__(self, photo: Photo, place: str) -> None:
        self.photo = photo
        super().__init__([f"This picture of {place} is kept already, by {photo.by}."])


def keep_photo(
    *,
    machine: str | Machine,
    about: str,
    data: bytes,
    name: str,
    who: str,
    moment: str = "",
    note: str = "",
    keep_place: bool = False,
    at: datetime | None = None,
) -> DiaryEntry:
    """Keep a photo of a joint, a part or the whole machine.

    data: the file as it came. name: what it was called on the phone. moment: before or after the
    work, or neither. keep_place: leave in it where on earth it was taken.
    Raises NotAPicture where it is none, KeptAlready where the same is kept at the place already,
    UnknownName for a place the book does not know, NotFound for an unknown moment.
    """
    from shimstock.workshop.pictures.received import received
    from shimstock.workshop.pictures.store import keep

    row, place = what_it_shows(machine, about, moment)
    picture = received(data, keep_place=keep_place)
    file = keep(settings.SHED, picture)  # on the disk before the book says so
    with writing("photo", who=who, machine=row, at=at) as pen:
        called = place_called(pen.book, place)
        _refuse_a_second(pen, place, picture, called)
        pen.save(
            Photo(
                machine=pen.machine,
                about=place,
                moment=moment,
                note=note.strip(),
                file=file,
                name=name.strip()[-NAME_LETTERS:],
                sha256=picture.sha256,
                size=len(picture.data),
                width=picture.width,
                height=picture.height,
                taken_at=_taken(picture, pen),
                by=pen.who,
                at=pen.at,
            )
        )
        pen.says = f"Photo of {called}{f', {moment}' if moment else ''}."
    return pen.entry


def what_it_shows(machine: str | Machine, about: str, moment: str) -> tuple[Machine, str]:
    """The machine and the place on it that a photo is to show, found before anything is written.

    Raises UnknownName for a place the book does not know, NotFound for an unknown moment.
    """
    row = find_machine(machine)
    place = place_typed(book_of(row), about)
    if moment not in MOMENTS:
        raise NotFound("moment of a photo", moment, MOMENTS)
    return row, place


def _refuse_a_second(pen: Pen, place: str, picture: Picture, called: str) -> None:
    there = pen.machine.photos.filter(about=place, sha256=picture.sha256, withdrawn=False)
    if (photo := there.first()) is not None:
        raise KeptAlready(photo, called)


def _taken(picture: Picture, pen: Pen) -> datetime:
    """When it was taken; by the clock in the shed where the camera named no offset.

    When it was kept, where the camera says nothing or a time that no camera can have seen.
    """
    if picture.taken is None or not FIRST_CAMERA <= picture.taken.year <= pen.at.year + 1:
        return pen.at
    return make_aware(picture.taken) if is_naive(picture.taken) else picture.taken
