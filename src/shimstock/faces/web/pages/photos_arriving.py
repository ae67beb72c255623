"""Photos arriving from a phone a piece at a time, so that a broken line costs one piece.

The core of the open tus protocol, version 1.0, and its extension for beginning a file: POST
begins, HEAD tells how much is here, PATCH brings the next piece.
"""

from __future__ import annotations

from base64 import b64decode
from collections.abc import Callable
from functools import wraps
from urllib.parse import quote

from django.http import HttpResponse
from django.urls import reverse

from shimstock.faces.web.asked import Asked
from shimstock.faces.web.whole_number import whole_number
from shimstock.faces.web.wrong import NOT_DONE, NOT_THERE, explained
from shimstock.workshop.acts.arriving import Arrived, add_piece, begin_photo, offset_of
from shimstock.workshop.models import Upload
from shimstock.workshop.pictures.arriving import PIECE, NotNext
from shimstock.workshop.pictures.limits import MOST_BYTES
from shimstock.workshop.refused import NotFound

VERSION = "1.0.0"
PIECES = "application/offset+octet-stream"
View = Callable[..., HttpResponse]


def _spoken(view: View) -> View:
    """Answer in the protocol's words: its version on all, an error in plain text."""

    @wraps(view)
    def answer(asked: Asked, slug: str, **key: str) -> HttpResponse:
        if asked.method != "OPTIONS" and asked.headers.get("Tus-Resumable") != VERSION:
            response = _said(412, f"This address speaks tus {VERSION} only.")
            response["Tus-Version"] = VERSION
        else:
            try:
                response = view(asked, slug, **key)
            except NotNext as error:
                response = _said(409, f"Another piece is next: {error}.")
                response["Upload-Offset"] = str(error.offset)
            except Exception as error:
                if (wrong := explained(error)) is None:
                    raise
                response = _said(NOT_THERE if wrong.not_there else NOT_DONE, *wrong.reasons)
        response["Tus-Resumable"] = VERSION
        response["Cache-Control"] = "no-store"
        return response

    return answer


@_spoken
def arriving(asked: Asked, slug: str) -> HttpResponse:
    """Begin to take in a photo; or tell what is spoken here."""
    if asked.method == "OPTIONS":
        return _spoken_here()
    if asked.method != "POST":
        return _said(405, "Begin with POST.")
    length = _count(asked, "Upload-Length")
    about = _metadata(asked)
    if length is None or about is None:
        return _said(400, "Upload-Length and Upload-Metadata are not as the protocol has them.")
    upload = begin_photo(
        machine=slug,
        about=about.get("about", ""),
        moment=about.get("moment", ""),
        note=about.get("note", ""),
        keep_place=bool(about.get("keep_place")),
        name=about.get("filename", ""),
        length=length,
        who=asked.who,
    )
    response = HttpResponse(status=201)
    response["Location"] = reverse("arriving-pieces", args=[upload.for_what["machine"], upload.key])
    return response


@_spoken
def arriving_pieces(asked: Asked, slug: str, key: str) -> HttpResponse:
    """Tell how much of a photo is here, or take the next piece of it."""
    if asked.method == "OPTIONS":
        return _spoken_here()
    upload = _upload(asked, slug, key)
    if asked.method == "HEAD":
        response = HttpResponse(status=200)
        response["Upload-Offset"] = str(offset_of(upload))
        response["Upload-Length"] = str(upload.length)
        return response
    if asked.method != "PATCH":
        return _said(405, "HEAD asks how much is here, PATCH brings more.")
    if asked.content_type != PIECES:
        return _said(415, f"A piece comes as {PIECES}.")
    offset = _count(asked, "Upload-Offset")
    if offset is None:
        return _said(400, "Upload-Offset is no count of bytes.")
    if int(asked.headers.get("Content-Length") or 0) > PIECE:
        return _said(413, f"A piece is of {PIECE} bytes at most.")
    return _taken(upload, offset, asked.body)


def _taken(upload: Upload, offset: int, piece: bytes) -> HttpResponse:
    arrived = add_piece(upload, offset, piece)
    response = HttpResponse(status=204)
    response["Upload-Offset"] = str(upload.length if arrived else offset + len(piece))
    if arrived is not None:
        _say_kept(response, arrived)
    return response


def _say_kept(response: HttpResponse, arrived: Arrived) -> None:
    """What the page tells its reader, beside what the protocol asks for."""
    photo = arrived.photo
    response["Photo-Page"] = reverse("photo-page", args=[photo.machine.slug, photo.pk])
    response["Photo-Says"] = quote(arrived.says)


def _upload(asked: Asked, slug: str, key: str) -> Upload:
    """A photo on its way from the one who asks. Raises NotFound."""
    rows = Upload.objects.select_related("kept_as__machine")
    upload = rows.filter(key=key, by=asked.who, for_what__machine=slug).first()
    if upload is None:
        raise NotFound("photo on its way", key, [])
    return upload


def _spoken_here() -> HttpResponse:
    response = HttpResponse(status=204)
    response["Tus-Version"] = VERSION
    response["Tus-Extension"] = "creation"
    response["Tus-Max-Size"] = str(MOST_BYTES)
    return response


def _said(status: int, *reasons: str) -> HttpResponse:
    return HttpResponse("\n".join(reasons), status=status, content_type="text/plain; charset=utf-8")


def _count(asked: Asked, header: str) -> int | None:
    return whole_number(asked.headers.get(header, ""))


def _metadata(asked: Asked) -> dict[str, str] | None:
    """What the file is: names, each with a value in base64; None for what is not written so."""
    told: dict[str, str] = {}
    for pair in filter(None, asked.headers.get("Upload-Metadata", "").split(",")):
        name, _, value = pair.strip().partition(" ")
        try:
            told[name] = b64decode(value, validate=True).decode()
        except ValueError:  # neither base64 nor text
            return None
    return told
