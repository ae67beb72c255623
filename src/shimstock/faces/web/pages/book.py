"""The machine's book: its figures seen and corrected, a book file taken in and given out."""

from __future__ import annotations

from dataclasses import dataclass

from django.http import HttpResponse
from django.urls import path, reverse

from shimstock.faces.web.act import do_and_show, page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.faults import with_lines
from shimstock.faces.web.wrong import NOT_DONE, Wrong, explained
from shimstock.trade.machine.book import Book
from shimstock.trade.machine.sheet import BookErrors
from shimstock.trade.machine.typed_figure import FIELDS, as_typed
from shimstock.workshop import acts, book_told
from shimstock.workshop.acts.figures import faults_at_fields
from shimstock.workshop.books import newer_starters, own_text
from shimstock.workshop.find import find_figure, find_joint
from shimstock.workshop.looking import Seen, see
from shimstock.workshop.refused import NotFound
from shimstock.workshop.what_if import Look, look_at, look_at_figure, look_at_torque


def book(asked: Asked, slug: str) -> HttpResponse:
    """Everything the book says, to be found by words; how much of it is a stand-in still."""
    seen = see(slug)
    words = str(asked.GET.get("q", ""))
    only = asked.GET.get("only") == "stand-in"
    return page(
        asked,
        "book.html",
        seen=seen,
        here="book",
        q=words,
        only=only,
        progress=book_told.progress(seen.book),
        starters=list(seen.row.starters),
        newer=newer_starters(seen.row),
        lines=_Lines(seen.book, words, only),
    )


@dataclass(frozen=True)
class _Lines:
    """What a book says, where it has the words asked for; told when it is shown."""

    book: Book
    words: str
    stand_in: bool

    def figures(self) -> object:
        """Figures by group."""
        return book_told.figures_by_group(self.book, self.words, stand_in=self.stand_in)

    def joints(self) -> object:
        """Torques by group."""
        return book_told.joints_by_group(self.book, self.words, stand_in=self.stand_in)

    def data(self) -> object:
        """What is said of the whole machine."""
        return book_told.data_lines(self.book, self.words, stand_in=self.stand_in)

    def causes(self) -> object:
        """What can be wrong."""
        return book_told.cause_lines(self.book, self.words, stand_in=self.stand_in)

    def signs(self) -> object:
        """How it shows."""
        return book_told.sign_lines(self.book, self.words, stand_in=self.stand_in)


def figure(asked: Asked, slug: str, figure: str) -> HttpResponse:
    """All that the book says of a figure, and a form to correct it; looked at before it is kept."""
    seen = see(slug)
    key = find_figure(seen.book, figure)
    if asked.method != "POST":
        return _figure(asked, seen, key, as_typed(seen.book.measures[key]))
    typed = {name: str(asked.POST.get(name, "")).replace("\r\n", "\n") for name in FIELDS}
    note = str(asked.POST.get("note", ""))
    if "look" in asked.POST:
        return _look_at_figure(asked, seen, key, typed)
    return do_and_show(
        asked,
        lambda: acts.correct_figure(
            machine=seen.row, figure=key, typed=typed, note=note, meant="meant" in asked.POST,
            who=asked.who,
        ),
        then=reverse("figure", args=[slug, key]),
        again=lambda wrong: _not_done(asked, seen, key, typed, wrong),
    )  # fmt: skip


def _look_at_figure(asked: Asked, seen: Seen, key: str, typed: dict[str, str]) -> HttpResponse:
    """The figure's page with what the correction would change, or what is wrong with it."""
    try:
        look = look_at_figure(seen.row, seen.book, key, typed, meant=_looks_as_meant(asked))
    except Exception as error:
        wrong = explained(error)
        if wrong is None:
            raise
        return _not_done(asked, seen, key, typed, wrong)
    return _figure(asked, seen, key, typed, look=look)


def _looks_as_meant(asked: Asked) -> bool:
    """Whether what looks like a slip is to be looked at all the same."""
    return asked.POST.get("look") == "meant"


def _not_done(
    asked: Asked, seen: Seen, key: str, typed: dict[str, str], wrong: Wrong
) -> HttpResponse:
    at = faults_at_fields(seen.row, seen.book, key, typed)
    return _figure(asked, seen, key, typed, wrong=wrong, at=at, status=NOT_DONE)


def _figure(
    asked: Asked,
    seen: Seen,
    key: str,
    typed: dict[str, str],
    *,
    look: Look | None = None,
    wrong: Wrong | None = None,
    at: dict[str, str] | None = None,
    status: int = 200,
) -> HttpResponse:
    entry = seen.book.measures[key]
    return page(
        asked,
        "figure.html",
        seen=seen,
        here="book",
        status=status,
        wrong=wrong,
        key=key,
        figure=entry,
        told=book_told.in_words(seen.book, key),
        puts="meant" if _looks_as_meant(asked) else "put",
        typed=typed,
        note=str(asked.POST.get("note", "")),
        at=at or {},
        look=look,
    )


def torque(asked: Asked, slug: str, joint: str, number: int) -> HttpResponse:
    """How tight a fastening is, and a form to correct it; looked at before it is kept."""
    seen = see(slug)
    key = find_joint(seen.book, joint)
    if asked.method != "POST":
        return _torque(asked, seen, key, number)
    tight, on, note = (str(asked.POST.get(name, "")) for name in ("torque", "page", "note"))
    if "look" in asked.POST:
        return _look_at_torque(asked, seen, key, number, tight, on)
    return do_and_show(
        asked,
        lambda: acts.correct_torque(
            machine=seen.row, joint=key, number=number, torque=tight, page=on, note=note,
            meant="meant" in asked.POST, who=asked.who,
        ),
        then=reverse("torque", args=[slug, key, number]),
        again=lambda wrong: _torque(asked, seen, key, number, wrong=wrong),
    )  # fmt: skip


def _look_at_torque(
    asked: Asked, seen: Seen, key: str, number: int, tight: str, on: str
) -> HttpResponse:
    try:
        look = look_at_torque(
            seen.row, seen.book, key, number, tight, on, meant=_looks_as_meant(asked)
        )
    except Exception as error:
        wrong = explained(error)
        if wrong is None:
            raise
        return _torque(asked, seen, key, number, wrong=wrong)
    return _torque(asked, seen, key, number, look=look)


def _torque(
    asked: Asked,
    seen: Seen,
    key: str,
    number: int,
    *,
    look: Look | None = None,
    wrong: Wrong | None = None,
) -> HttpResponse:
    joint = seen.book.joints[key]
    if not 1 <= number <= len(joint.fasteners):
        raise NotFound("fastening", str(number), [], f" at {joint.name}")
    each = joint.fasteners[number - 1]
    return page(
        asked,
        "figure_torque.html",
        seen=seen,
        here="book",
        status=NOT_DONE if wrong else 200,
        wrong=wrong,
        key=key,
        joint=joint,
        each=each,
        told=book_told.fastening_in_words(each),
        puts="meant" if _looks_as_meant(asked) else "put",
        typed=asked.POST or {"torque": each.torque.typed if each.torque else "", "page": each.page},
        look=look,
    )


def book_file(asked: Asked, slug: str) -> HttpResponse:
    """The whole text of the book: mended or replaced, looked at before it is taken."""
    seen = see(slug)
    if asked.method != "POST":
        return _book_file(asked, seen, seen.row.book_text, seen.row.book_name)
    text, name = _sent(asked, seen)
    if "take" not in asked.POST or "file" in asked.FILES:
        return _look_at_book(asked, seen, text, name)
    return do_and_show(
        asked,
        lambda: acts.change_book(machine=seen.row, book_text=text, book_name=name, who=asked.who),
        then=reverse("book", args=[slug]),
        again=lambda wrong: _look_at_book(asked, seen, text, name, wrong=wrong),
    )


def _sent(asked: Asked, seen: Seen) -> tuple[str, str]:
    """The text and file name that were sent: a file goes before the form; else the own book."""
    if (sent := asked.FILES.get("file")) is not None:
        return sent.read().decode("utf-8", errors="replace").replace("\r\n", "\n"), str(sent.name)
    if "text" not in asked.POST:
        return own_text(seen.row)
    text = str(asked.POST["text"]).replace("\r\n", "\n")
    return text, str(asked.POST.get("name", "")) or seen.row.book_name


def _look_at_book(
    asked: Asked, seen: Seen, text: str, name: str, wrong: Wrong | None = None
) -> HttpResponse:
    """The text as it was sent, with all its faults, or with what it would change."""
    try:
        look = look_at(seen.row, text, name)
    except BookErrors as errors:
        found = with_lines(errors, text, name)
        return _book_file(asked, seen, text, name, faults=found, status=NOT_DONE)
    except Exception as error:
        wrong = wrong or explained(error)
        if wrong is None:
            raise
        return _book_file(asked, seen, text, name, wrong=wrong, status=NOT_DONE)
    status = NOT_DONE if wrong else 200
    return _book_file(asked, seen, text, name, look=look, wrong=wrong, status=status)


def _book_file(
    asked: Asked, seen: Seen, text: str, name: str, *, status: int = 200, **shown: object
) -> HttpResponse:
    newer = newer_starters(seen.row)
    return page(
        asked,
        "book_file.html",
        seen=seen,
        here="book",
        status=status,
        text=text,
        name=name,
        newer=newer,
        **shown,
    )


def book_download(asked: Asked, slug: str) -> HttpResponse:
    """The machine's own book, to the letter."""
    row = see(slug).row
    file = row.book_name if row.book_name.endswith((".yaml", ".yml")) else f"{row.book_name}.yaml"
    return HttpResponse(
        row.book_text,
        content_type="text/yaml; charset=utf-8",
        headers={"Content-Disposition": f'attachment; filename="{_plain_name(file)}"'},
    )


def _plain_name(file: str) -> str:
    return "".join(letter for letter in file if letter.isalnum() or letter in "._- ")


URLS = [
    path("m/<slug:slug>/book/", book, name="book"),
    path("m/<slug:slug>/book/<str:figure>/", figure, name="figure"),
    path("m/<slug:slug>/book/<str:joint>/<int:number>/", torque, name="torque"),
    path("m/<slug:slug>/book-file/", book_file, name="book-file"),
    path("m/<slug:slug>/book.yaml", book_download, name="book-download"),
]
