"""A photo is one entry in the diary, and its file is on the disk before the book says so."""

from __future__ import annotations

import os

import pytest

from shimstock.workshop.acts.photos import KeptAlready
from shimstock.workshop.models import DiaryEntry, Photo
from shimstock.workshop.pictures import store
from shimstock.workshop.pictures.kind import NotAPicture
from workshop.pictures_made import corners, exif, file


@pytest.fixture
def keep(do, settings, tmp_path):
    settings.SHED = tmp_path
    do.keep_photo.keywords.update(about="J2", data=file(), name="IMG_1.jpg")
    return do.keep_photo


@pytest.mark.parametrize(
    ("about", "moment", "says"),
    [
        ("J2", "before", "Photo of side cover to case (J2), before."),
        ("piece:pump:left", "after", "Photo of Pump (P5), left, after."),
        ("machine", "", "Photo of the whole machine."),
    ],
)
def test_the_diary_says_what_it_shows(keep, about, moment, says):
    entry = keep(about=about, moment=moment)

    assert (entry.act, entry.says) == ("photo", says)
    assert entry.touched == [f"photo:{Photo.objects.get().pk}"]


def test_what_is_kept_of_a_picture(keep, tmp_path):
    keep(data=file(picture=corners(90, 60), exif=exif(6).tobytes()))

    photo = Photo.objects.get()
    lies = tmp_path / "photos" / photo.sha256[:2]
    assert (photo.width, photo.height) == (60, 90)
    assert photo.size == (lies / f"{photo.sha256}.jpg").stat().st_size
    assert sorted(path.name for path in lies.iterdir()) == [
        f"{photo.sha256}.1600.jpg",
        f"{photo.sha256}.480.jpg",
        f"{photo.sha256}.jpg",
    ]


def test_undone_it_counts_no_more_and_may_be_kept_again(keep, do, tmp_path):
    entry = keep()
    with pytest.raises(KeptAlready):
        keep()
    do.undo(entry)

    withdrawn = Photo.objects.get()
    assert withdrawn.withdrawn
    assert (tmp_path / "photos" / withdrawn.file).is_file()
    keep()
    assert Photo.objects.filter(withdrawn=False).count() == 1


@pytest.mark.parametrize(
    ("taken", "offset"),
    [
        ("0001:01:01 00:00:00", "+14:00"),
        ("9999:12:31 23:59:59", "-14:00"),
        ("0001:01:01 00:00:00", ""),
    ],
)
def test_a_clock_that_no_camera_can_have_is_not_believed(keep, taken, offset):
    entry = keep(data=file(exif=exif(taken=taken, offset=offset).tobytes()))

    assert Photo.objects.get().taken_at == entry.at


def test_one_picture_at_two_places_is_undone_at_each_by_itself(keep, do):
    at_cover, _ = keep(about="J2"), keep(about="J3")
    do.undo(at_cover)

    assert [photo.about for photo in Photo.objects.filter(withdrawn=False)] == ["joint:sump-joint"]


def test_a_joints_own_diary_tells_of_its_photos(keep, machine):
    from shimstock.workshop.told import told_of

    keep(about="J3")
    entry = keep(about="J2")

    assert told_of(machine, "joint:cover-joint", 5) == [entry]


def test_what_is_no_picture_leaves_nothing_behind(keep, tmp_path):
    with pytest.raises(NotAPicture):
        keep(data=b"the pump, before")

    assert DiaryEntry.objects.filter(act="photo").count() == Photo.objects.count() == 0
    assert not list(tmp_path.rglob("*"))


def test_files_wait_for_the_disk_before_the_book_says_they_are_kept(keep, monkeypatch):
    synced: list[tuple[str, int]] = []

    def note(held: int) -> None:
        name = os.readlink(f"/proc/self/fd/{held}") if os.path.isdir("/proc/self") else "?"
        synced.append((name, Photo.objects.count()))

    monkeypatch.setattr(store.os, "fsync", note)
    keep()

    photo = Photo.objects.get()
    assert {rows for _, rows in synced} == {0}, "each before the row was there"
    assert len([name for name, _ in synced if photo.sha256 in name]) == 3
    assert len([name for name, _ in synced if name.endswith("/photos")]) == 3


def test_where_the_disk_is_full_the_book_says_nothing(keep, monkeypatch, tmp_path):
    def full(held: int) -> None:
        raise OSError("no space left on the disk")

    monkeypatch.setattr(store.os, "fsync", full)
    with pytest.raises(OSError, match="no space"):
        keep()

    assert Photo.objects.count() == 0
    assert not [path for path in tmp_path.rglob("*") if path.is_file()]


def test_a_file_that_was_written_half_is_written_anew(keep, do, tmp_path):
    do.undo(keep())
    original = tmp_path / "photos" / Photo.objects.get().file
    original.write_bytes(original.read_bytes()[:100])
    keep()

    assert original.read_bytes() == file()
