"""Photos: sent from the phone, seen at their place."""

from __future__ import annotations

from hashlib import sha256
from itertools import groupby
from typing import TYPE_CHECKING

from django.conf import settings
from django.contrib import messages
from django.core.files.uploadedfile import UploadedFile
from django.core.paginator import Paginator
from django.db.models import TextField
from django.db.models.functions import Cast
from django.http import FileResponse, Http404, HttpResponse, HttpResponseRedirect
from django.http.response import HttpResponseBase
from django.urls import path, reverse
from django.utils.timezone import localdate

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.pages.photos_arriving import arriving, arriving_pieces
from shimstock.faces.web.places import address_of
from shimstock.faces.web.wrong import NOT_DONE, Wrong, explained
from shimstock.workshop import acts
from shimstock.workshop.looking import see
from shimstock.workshop.pictures.kind import NotAPicture
from shimstock.workshop.pictures.limits import MOST_BYTES, too_many_bytes
from shimstock.workshop.place_typed import place_called
from shimstock.workshop.places import MACHINE
from shimstock.workshop.refused import NotFound
from shimstock.workshop.sending import Sending, send_once

if TYPE_CHECKING:
    from shimstock.workshop.looking import Seen
    from shimstock.workshop.models import DiaryEntry, Machine, Photo

A_PAGE = 48
"""Photos shown at a time."""

FOR_GOOD = "private, max-age=31536000, immutable"
"""A picture under its number is never another one."""


def photos_of(machine: Machine, about: str) -> list[Photo]:
    """Photos of a place, the newest first."""
    return list(machine.photos.filter(about=about, withdrawn=False).order_by("-taken_at", "-pk"))


def last_photo(machine: Machine) -> Photo | None:
    """The photo of a machine that was kept last; None where there is none."""
    found: Photo | None = machine.photos.filter(withdrawn=False).order_by("-pk").first()
    return found


def photos(asked: Asked, slug: str) -> HttpResponse:
    """A machine's photos by day; or, of a form, keep those that it brings."""
    return _kept(asked, slug) if asked.method == "POST" else _shown(asked, slug)


def _shown(asked: Asked, slug: str, wrong: Wrong | None = None) -> HttpResponse:
    seen = see(slug)
    about = asked.POST.get("about") or asked.GET.get("about", "")
    held = seen.row.photos.filter(withdrawn=False).order_by("-taken_at", "-pk")
    wanted = held.filter(about=about) if about else held
    at_a_time = Paginator(wanted, A_PAGE).get_page(asked.GET.get("page"))
    return page(
        asked,
        "photos.html",
        seen=seen,
        status=NOT_DONE if wrong else 200,
        wrong=wrong,
        about=about,
        add_to=about or MACHINE,
        places=_places(seen),
        by_day=[(day, list(those)) for day, those in groupby(at_a_time, key=_day)],
        at_a_time=at_a_time,
        photos_typed=asked.POST,
    )


def _day(photo: Photo) -> object:
    return localdate(photo.taken_at)


def _places(seen: Seen) -> list[tuple[str, str]]:
    """The places of which there are photos, each with what it is called."""
    of = seen.row.photos.filter(withdrawn=False).order_by().values_list("about", flat=True)
    named = [(place, place_called(seen.book, place)) for place in of.distinct()]
    return sorted(named, key=lambda each: each[1].casefold())


def _kept(asked: Asked, slug: str) -> HttpResponse:
    """Keep what a form brings, each photo for itself: one that is none keeps no other back."""
    files = [file for file in asked.FILES.getlist("files") if file]
    if not files:
        return _shown(asked, slug, Wrong(("No picture was chosen.",), ("Choose one, or more.",)))
    not_kept: list[str] = []
    for number, file in enumerate(files):
        try:
            entry = _keep(asked, slug, number, file)
        except Exception as error:
            if (wrong := explained(error)) is None:
                raise
            not_kept += [f"{file.name}: {reason}" for reason in wrong.reasons]
        else:
            messages.success(asked, entry.says, extra_tags=str(entry.pk))
    if not_kept:
        return _shown(asked, slug, Wrong(tuple(not_kept)))
    return HttpResponseRedirect(_back(asked, slug))


def _keep(asked: Asked, slug: str, number: int, file: UploadedFile) -> DiaryEntry:
    """Keep one photo of a form, once however often the form comes."""
    if (file.size or 0) > MOST_BYTES:
        raise NotAPicture(too_many_bytes(file.size or 0))
    data = file.read()
    typed = {name: asked.POST.get(name, "") for name in ("about", "moment", "note", "keep_place")}
    key = asked.POST.get("form", "")
    told = {"page": [asked.path], "picture": [sha256(data).hexdigest()]}
    sending = Sending(
        f"{key}:{number}" if key else "", {**told, **{k: [v] for k, v in typed.items()}}
    )
    return send_once(
        sending,
        lambda: acts.keep_photo(
            machine=slug,
            about=typed["about"],
            moment=typed["moment"],
            note=typed["note"],
            keep_place=bool(typed["keep_place"]),
            data=data,
            name=file.name or "",
            who=asked.who,
        ),
    ).entry


def _back(asked: Asked, slug: str) -> str:
    """The page whose form it was: that of the place, else all photos."""
    about = asked.POST.get("about", MACHINE)
    if asked.POST.get("then") == "place" and about != MACHINE:
        return f"{address_of(about, slug)}#photos-shown"
    return reverse("photos", args=[slug])


def photo_page(asked: Asked, slug: str, pk: int) -> HttpResponse:
    """One photo: what it shows, beside what was there before or after."""
    seen = see(slug)
    photo = _photo(seen.row, pk)
    others = [each for each in photos_of(seen.row, photo.about) if each.pk != pk]
    opposite = {"before": "after", "after": "before"}.get(photo.moment)
    return page(
        asked,
        "photo.html",
        seen=seen,
        photo=photo,
        opposite=next((each for each in others if opposite and each.moment == opposite), None),
        others=others,
        entry=_entry_of(seen.row, pk),
    )


def _photo(machine: Machine, pk: int) -> Photo:
    """A photo of a machine. Raises NotFound."""
    found: Photo | None = machine.photos.filter(pk=pk).first()
    if found is None:
        raise NotFound("photo", str(pk), [], f" of {machine.name}")
    return found


def _entry_of(machine: Machine, pk: int) -> int | None:
    """The number of the diary's entry that kept a photo."""
    entries = machine.diary.alias(rows=Cast("touched", TextField()))
    kept = entries.filter(act="photo", rows__contains=f'"photo:{pk}"')
    found: int | None = kept.values_list("pk", flat=True).first()
    return found


def photo(asked: Asked, pk: int, size: str) -> HttpResponseBase:
    """A picture's file: small or large to be looked at, or the original to be taken away."""
    from shimstock.workshop.models import Photo
    from shimstock.workshop.pictures.store import file_of

    row = Photo.objects.filter(pk=pk).first()
    if row is None or size not in ("small", "large", "original"):
        raise Http404
    file, content_type = file_of(settings.SHED, row.file, size)
    if not file.is_file():
        raise Http404
    original = size == "original"
    answer = FileResponse(
        file.open("rb"),
        content_type=content_type,
        as_attachment=original,
        filename=f"{row.name.rpartition('.')[0] or 'photo'}{file.suffix}" if original else "",
    )
    answer["Cache-Control"] = FOR_GOOD
    return answer


URLS = [
    path("m/<slug:slug>/photos/", photos, name="photos"),
    path("m/<slug:slug>/photos/arriving/", arriving, name="arriving"),
    path("m/<slug:slug>/photos/arriving/<str:key>/", arriving_pieces, name="arriving-pieces"),
    path("m/<slug:slug>/photos/<int:pk>/", photo_page, name="photo-page"),
    path("photos/<int:pk>/<str:size>/", photo, name="photo"),
]
