"""Photos a piece at a time: the core of the open tus protocol, version 1.0, as its text has it.

Source: the protocol's specification, tus 1.0.0 (2016-03-25), sections "Core Protocol" and
"Creation".
"""

from __future__ import annotations

import os
import time
from base64 import b64encode
from dataclasses import replace
from urllib.parse import unquote

import pytest
from django.test import Client

from shimstock.faces.web.pages.photos import photos_of
from shimstock.workshop.looking import see
from workshop.pictures_made import corners, file

ARRIVING = "/m/grey/photos/arriving/"
J2 = "joint:cover-joint"
PICTURE = file(picture=corners(300, 200))


@pytest.fixture
def shed(settings, tmp_path):
    settings.SHED = tmp_path
    return tmp_path


@pytest.fixture
def client(pages, shed):
    return pages


def asked(client, method: str, address: str, body: bytes = b"", **headers):
    named = {"HTTP_TUS_RESUMABLE": "1.0.0", **headers}
    content_type = named.pop("content_type", "application/offset+octet-stream")
    return client.generic(method, address, body, CONTENT_TYPE=content_type, **named)


def metadata(**told: str) -> str:
    return ",".join(f"{name} {b64encode(value.encode()).decode()}" for name, value in told.items())


def begun(client, length: int = len(PICTURE), **told):
    what = metadata(**{"about": J2, "moment": "before", "filename": "IMG 1.jpg", **told})
    return asked(
        client, "POST", ARRIVING, HTTP_UPLOAD_LENGTH=str(length), HTTP_UPLOAD_METADATA=what
    )


def piece(client, address: str, offset: int, data: bytes, **headers):
    return asked(client, "PATCH", address, data, HTTP_UPLOAD_OFFSET=str(offset), **headers)


def kept():
    return photos_of(see("grey").row, J2)


def test_a_picture_in_three_pieces_is_kept_with_the_last(client, shed):
    answer = begun(client, note="at the dowel")
    address = answer["Location"]
    assert answer.status_code == 201

    for begins in (0, 500, 1000):
        assert kept() == []
        told = asked(client, "HEAD", address)
        assert (told.status_code, told["Upload-Offset"]) == (200, str(begins))
        assert (told["Upload-Length"], told["Cache-Control"]) == (str(len(PICTURE)), "no-store")
        ends = begins + 500 if begins < 1000 else len(PICTURE)
        answer = piece(client, address, begins, PICTURE[begins:ends])
        assert (answer.status_code, answer["Upload-Offset"]) == (204, str(ends))
        assert answer["Tus-Resumable"] == "1.0.0"

    (photo,) = kept()
    assert (photo.moment, photo.note, photo.name) == ("before", "at the dowel", "IMG 1.jpg")
    assert (shed / "photos" / photo.file).read_bytes() == PICTURE
    assert answer["Photo-Page"] == f"/m/grey/photos/{photo.pk}/"
    assert unquote(answer["Photo-Says"]) == "Photo of side cover to case (J2), before."
    assert list((shed / "photos" / "arriving").iterdir()) == []


def test_a_last_piece_whose_answer_was_lost_may_come_again(client):
    address = begun(client)["Location"]
    piece(client, address, 0, PICTURE)

    assert asked(client, "HEAD", address)["Upload-Offset"] == str(len(PICTURE))
    answer = piece(client, address, len(PICTURE), b"")
    assert answer.status_code == 204
    assert answer["Photo-Page"] == f"/m/grey/photos/{kept()[0].pk}/"
    assert len(kept()) == 1


def test_the_last_piece_sent_twice_at_once_is_kept_once(client, monkeypatch):
    from shimstock.workshop.pictures import arriving

    address = begun(client)["Location"]
    add = arriving.add

    def the_other_one_first(shed, key, offset, data):
        monkeypatch.setattr(arriving, "add", add)
        assert piece(client, address, 0, PICTURE).status_code == 204
        return add(shed, key, offset, data)

    monkeypatch.setattr(arriving, "add", the_other_one_first)
    answer = piece(client, address, 0, PICTURE)

    assert answer.status_code == 204
    assert answer["Photo-Page"] == f"/m/grey/photos/{kept()[0].pk}/"
    assert len(kept()) == 1


def test_one_that_was_whole_when_the_power_went_is_kept_after_all(client, shed):
    address = begun(client)["Location"]
    (part,) = (shed / "photos" / "arriving").iterdir()
    part.write_bytes(PICTURE)

    assert piece(client, address, len(PICTURE), b"").status_code == 204
    assert len(kept()) == 1


def test_a_piece_that_is_not_next_is_not_taken(client):
    address = begun(client)["Location"]
    piece(client, address, 0, PICTURE[:500])

    for offset in (0, 499, 501):
        answer = piece(client, address, offset, PICTURE[500:])
        assert (answer.status_code, answer["Upload-Offset"]) == (409, "500")
    assert piece(client, address, 500, PICTURE).status_code == 409, "more than was to come"
    assert asked(client, "HEAD", address)["Upload-Offset"] == "500"


def test_what_turns_out_to_be_no_picture_is_refused_and_thrown_away(client, shed):
    text = b"the pump, before"
    address = begun(client, len(text))["Location"]
    answer = piece(client, address, 0, text)

    assert (answer.status_code, answer["Content-Type"]) == (422, "text/plain; charset=utf-8")
    assert b"It is no picture" in answer.content
    assert list((shed / "photos" / "arriving").iterdir()) == []
    assert asked(client, "HEAD", address).status_code == 404


def test_the_same_picture_again_is_told_and_not_doubled(client):
    for _ in range(2):
        answer = piece(client, begun(client)["Location"], 0, PICTURE)

    assert "is kept already, by Ann" in unquote(answer["Photo-Says"])
    assert len(kept()) == 1


@pytest.mark.parametrize(
    ("length", "told", "status", "says"),
    [
        (40_000_001, {}, 422, "40 MB is the most"),
        (0, {}, 422, "empty"),
        (9, {"about": "joint:gone"}, 404, "gone"),
        (9, {"moment": "meanwhile"}, 404, "meanwhile"),
    ],
)
def test_what_cannot_be_kept_is_not_begun(client, shed, length, told, status, says):
    answer = begun(client, length, **told)

    assert answer.status_code == status
    assert says in answer.content.decode()
    assert not (shed / "photos").exists()


def test_what_the_protocol_does_not_allow(client):
    address = begun(client)["Location"]

    other_version = client.head(address, HTTP_TUS_RESUMABLE="0.2.2")
    assert (other_version.status_code, other_version["Tus-Version"]) == (412, "1.0.0")
    assert piece(client, address, 0, b"x", content_type="image/jpeg").status_code == 415
    assert asked(client, "PATCH", address, b"x").status_code == 400
    assert asked(client, "DELETE", address).status_code == 405
    assert asked(client, "GET", ARRIVING).status_code == 405
    assert asked(client, "POST", ARRIVING, HTTP_UPLOAD_LENGTH="-1").status_code == 400
    mangled = {"HTTP_UPLOAD_LENGTH": "9", "HTTP_UPLOAD_METADATA": "about ***"}
    assert asked(client, "POST", ARRIVING, **mangled).status_code == 400
    assert piece(client, address, 0, bytes(512_001)).status_code == 413


def test_what_is_spoken_here(client):
    answer = client.options(ARRIVING)

    assert answer.status_code == 204
    assert answer["Tus-Version"] == "1.0.0"
    assert answer["Tus-Extension"] == "creation"
    assert answer["Tus-Max-Size"] == "40000000"


@pytest.mark.parametrize("key", ["../../workshop.sqlite3", "nothing"])
def test_no_such_photo_on_its_way(client, key):
    assert asked(client, "HEAD", f"{ARRIVING}{key}/").status_code == 404


def test_nobody_else_sends_pieces_of_it(client, settings):
    address = begun(client)["Location"]
    settings.SERVING = replace(settings.SERVING, who="Bob")

    assert asked(client, "HEAD", address).status_code == 404
    assert piece(client, address, 0, PICTURE).status_code == 404


def test_what_was_begun_long_ago_is_thrown_away_and_begun_anew(client, shed):
    address = begun(client)["Location"]
    (part,) = (shed / "photos" / "arriving").iterdir()
    long_ago = time.time() - 31 * 24 * 3600
    os.utime(part, (long_ago, long_ago))
    begun(client)

    assert not part.exists()
    assert asked(client, "HEAD", address).status_code == 404


def test_a_page_from_elsewhere_sends_nothing(client):
    address = begun(client)["Location"]
    strict = Client(enforce_csrf_checks=True)

    assert piece(strict, address, 0, PICTURE).status_code == 403
    assert begun(strict).status_code == 403
    assert asked(client, "HEAD", address)["Upload-Offset"] == "0"
