"""Photos from the pages: kept with the form alone, shown by day, looked at one by one."""

from __future__ import annotations

import re
from datetime import datetime
from hashlib import sha256

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile

from shimstock.faces.web.pages.photos import last_photo, photos_of
from shimstock.workshop import acts
from shimstock.workshop.looking import see
from workshop.pictures_made import corners, exif, file, read

PHOTOS = "/m/grey/photos/"
J2 = "joint:cover-joint"
MOST = 12


@pytest.fixture
def shed(settings, tmp_path):
    settings.SHED = tmp_path
    return tmp_path


@pytest.fixture
def client(pages, shed):
    return pages


def picture(number: int = 0, day: int = 3, **options) -> bytes:
    made = exif(taken=f"2026:10:{day:02d} 20:14:{number:02d}", **options)
    return file(picture=corners(80 + number, 60), exif=made.tobytes())


def sent(client, *files: bytes, **typed):
    named = [SimpleUploadedFile(f"IMG_{n}.jpg", data) for n, data in enumerate(files)]
    return client.post(PHOTOS, {"files": named, "about": J2, **typed})


def kept(**typed):
    """A photo kept by the act itself."""
    from shimstock.workshop.models import Photo

    given = {"about": J2, "data": picture(), "name": "IMG_1.jpg", "who": "Ann", **typed}
    acts.keep_photo(machine="grey", **given)
    return Photo.objects.order_by("-pk").first()


def row():
    return see("grey").row


def test_many_at_once_are_kept_with_the_form_alone(client, shed):
    answer = sent(
        client, picture(1), picture(2), moment="before", note="at the dowel", then="place"
    )

    assert (answer.status_code, answer.url) == (302, "/m/grey/joint/cover-joint/#photos-shown")
    second, first = photos_of(row(), J2)
    assert [(p.moment, p.note, p.by, p.name) for p in (first, second)] == [
        ("before", "at the dowel", "Ann", "IMG_0.jpg"),
        ("before", "at the dowel", "Ann", "IMG_1.jpg"),
    ]
    assert (shed / "photos" / first.file).read_bytes() == picture(1)
    assert first.file == f"{first.sha256[:2]}/{sha256(picture(1)).hexdigest()}.jpg"
    page = client.get(answer.url).content.decode()
    assert page.count("Photo of side cover to case (J2), before.") == 4  # said, and in its diary
    assert 'alt="side cover to case (J2), before, 3 Oct 2026, by Ann"' in page


def test_one_that_is_none_keeps_no_other_back(client):
    answer = sent(client, picture(1), b"no picture at all", picture(2), note="at the dowel")
    page = answer.content.decode()

    assert answer.status_code == 422
    assert "IMG_1.jpg: It is no picture" in page
    assert 'value="at the dowel"' in page
    assert len(photos_of(row(), J2)) == 2


def test_the_same_form_twice_keeps_no_photo_twice(client):
    for _ in range(2):
        assert sent(client, picture(1), picture(2), form="k1").status_code == 302

    assert len(photos_of(row(), J2)) == 2


def test_the_same_picture_twice_at_one_place_is_told(client):
    sent(client, picture(1), form="k1")
    answer = sent(client, picture(1), form="k2")

    assert "This picture of side cover to case (J2) is kept already" in answer.content.decode()
    assert len(photos_of(row(), J2)) == 1
    assert sent(client, picture(1), about="joint:hood-joint").status_code == 302


def test_a_form_without_a_picture_says_so(client):
    assert "No picture was chosen" in sent(client).content.decode()


@pytest.mark.parametrize(("about", "moment"), [("joint:gone", ""), (J2, "meanwhile")])
def test_what_the_form_cannot_mean_keeps_nothing(client, shed, about, moment):
    answer = sent(client, picture(1), about=about, moment=moment)

    assert answer.status_code == 422
    assert last_photo(row()) is None
    assert not list(shed.rglob("*.jpg"))


@pytest.mark.parametrize("ticked", [False, True])
def test_the_place_is_cut_out_unless_it_is_to_be_kept(client, ticked):
    sent(client, picture(place=True), **({"keep_place": "yes"} if ticked else {}))

    original = client.get(f"/photos/{last_photo(row()).pk}/original/")
    told = read(b"".join(original.streaming_content)).getexif()
    assert bool(told.get_ifd(0x8825)) is ticked
    assert told.get_ifd(0x8769)[0x9003] == "2026:10:03 20:14:00"


@pytest.mark.parametrize(
    ("offset", "when"), [("", "2026-10-03T20:14:00"), ("+05:00", "2026-10-03T20:14:00+05:00")]
)
def test_the_time_is_that_of_the_camera(client, offset, when):
    photo = kept(data=picture(offset=offset))

    assert photo.taken_at == datetime.fromisoformat(when).astimezone()


@pytest.mark.parametrize(
    ("kind", "size", "content_type", "away"),
    [
        ("PNG", "small", "image/jpeg", "inline"),
        ("PNG", "large", "image/jpeg", "inline"),
        ("PNG", "original", "image/png", 'attachment; filename="the cover.png"'),
        ("WEBP", "original", "image/webp", 'attachment; filename="the cover.webp"'),
    ],
)
def test_a_file_is_sent_as_what_it_is_and_kept_by_the_browser(
    client, kind, size, content_type, away
):
    photo = kept(data=file(kind), name="the cover.html")
    answer = client.get(f"/photos/{photo.pk}/{size}/")
    data = b"".join(answer.streaming_content)

    assert answer["Content-Type"] == content_type
    assert answer["X-Content-Type-Options"] == "nosniff"
    assert answer["Cache-Control"] == "private, max-age=31536000, immutable"
    assert "default-src 'self'" in answer["Content-Security-Policy"]
    assert answer["Content-Disposition"].startswith(away)
    assert (data == file(kind)) is (size == "original")


@pytest.mark.parametrize("address", ["/photos/99/small/", "/photos/1/huge/"])
def test_no_such_file(client, address):
    kept()
    assert client.get(address).status_code == 404


def test_photos_stand_by_day_newest_first(client):
    for number, day in ((1, 2), (2, 5), (3, 2)):
        kept(data=picture(number, day), moment="after")
    page = client.get(PHOTOS).content.decode()

    days = [page.index("<h2>5 Oct 2026</h2>"), page.index("<h2>2 Oct 2026</h2>")]
    assert days == sorted(days)
    numbers = [page.index(f'width="{80 + number}" height="60"') for number in (2, 3, 1)]
    assert numbers == sorted(numbers)
    assert page.count('loading="lazy"') == 3


def test_photos_of_one_place_alone(client):
    kept(data=picture(1))
    kept(data=picture(2), about="piece:pump:left")
    page = client.get(f"{PHOTOS}?about=piece:pump:left").content.decode()

    assert page.count("<img") == 1
    assert "<h1>Photos of Pump (P5), left</h1>" in page
    assert '<input type="hidden" name="about" value="piece:pump:left">' in page


def test_a_page_holds_48_photos(client):
    from shimstock.workshop.models import Photo

    first = kept()
    others = [Photo.objects.get(pk=first.pk) for _ in range(49)]
    for photo in others:
        photo.pk = None
    Photo.objects.bulk_create(others)

    assert client.get(PHOTOS).content.decode().count("<img") == 48
    assert client.get(f"{PHOTOS}?page=2").content.decode().count("<img") == 2


def test_one_photo_with_what_was_there_before_beside_it(client):
    before = kept(data=picture(1), moment="before")
    after = kept(data=picture(2), moment="after", note="new gasket")
    page = client.get(f"{PHOTOS}{after.pk}/").content.decode()

    assert f'src="/photos/{before.pk}/large/"' in page
    assert f'src="/photos/{after.pk}/large/"' in page
    assert "new gasket" in page
    assert 'href="/m/grey/joint/cover-joint/"' in page


def test_not_this_one(client, shed):
    photo = kept()
    page = client.get(f"{PHOTOS}{photo.pk}/").content.decode()
    undo = re.search('href="([^"]+)">Not this one<', page)[1]
    client.post(undo, {"form": "k1"})

    assert photos_of(row(), J2) == []
    assert last_photo(row()) is None
    assert "was withdrawn" in client.get(f"{PHOTOS}{photo.pk}/").content.decode()
    assert (shed / "photos" / photo.file).is_file()
    assert kept().pk != photo.pk, "it may be kept again"


def test_a_photo_of_another_machine_is_not_there(client):
    assert client.get(f"{PHOTOS}{kept().pk + 1}/").status_code == 404


@pytest.mark.parametrize("address", [PHOTOS, f"{PHOTOS}?about={J2}", "one"])
def test_pages_of_photos_ask_little(client, django_assert_max_num_queries, address):
    photos = [kept(data=picture(n), moment="before") for n in range(3)]
    with django_assert_max_num_queries(MOST):
        client.get(f"{PHOTOS}{photos[0].pk}/" if address == "one" else address)


def test_at_its_place_before_stands_first_and_then_after(client):
    for number, moment in ((1, "after"), (2, "before"), (3, ""), (4, "before")):
        kept(data=picture(number), moment=moment)
    page = client.get("/m/grey/joint/cover-joint/").content.decode()

    order = ["<h3>Before</h3>", 'width="84"', 'width="82"', "<h3>After</h3>", 'width="81"']
    found = [page.index(each) for each in [*order, "<h3>Other</h3>", 'width="83"']]
    assert found == sorted(found)
