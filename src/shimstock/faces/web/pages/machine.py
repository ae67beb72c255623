"""One machine: its parts and joints as a drawing to tap, and finding things by name."""

from __future__ import annotations

from django.http import HttpResponse, HttpResponseRedirect
from django.urls import path, reverse

from shimstock.faces.web.act import do, page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.drawn import drawn
from shimstock.faces.web.pages.chains import chains_of
from shimstock.faces.web.pages.photos import last_photo
from shimstock.faces.web.places import address_of
from shimstock.faces.web.wrong import NOT_DONE, Wrong
from shimstock.trade.machine.starters import starter_names, starter_text
from shimstock.workshop import acts
from shimstock.workshop.looking import DEFERS, Seen, see
from shimstock.workshop.names import Called, names
from shimstock.workshop.places import joint_place, piece_place, reading_place
from shimstock.workshop.standing import where_was_i

MOST_FOUND = 40
MOST_SERIALS = 3


def machine(asked: Asked, slug: str) -> HttpResponse:
    """The machine as it stands, and its drawing."""
    seen = see(slug)
    last = seen.row.diary.defer("before", "after", "sent").order_by("-pk").first()
    return page(
        asked,
        "machine.html",
        here="machine",
        seen=seen,
        drawing=lambda: drawn(seen.now),
        where=where_was_i(seen, last),
        photo=last_photo(seen.row),
        todo=[(each.says, address_of(each.place, slug)) for each in seen.to_do],
        ways=chains_of(seen),
        defers=DEFERS,
    )


def find(asked: Asked, slug: str) -> HttpResponse:
    """Everything of a machine that bears the words asked for."""
    seen, words = see(slug), str(asked.GET.get("q", ""))
    found = names(seen.book, words.split()) if words.strip() else []
    found = [each for each in found if each.kind != "question"]
    template = "found.html" if asked.htmx else "find.html"
    return page(
        asked,
        template,
        seen=seen,
        words=words,
        found=[(each, _address(each, slug), _stands(seen, each)) for each in found[:MOST_FOUND]],
        more=max(0, len(found) - MOST_FOUND),
    )


def _address(each: Called, slug: str) -> str:
    match each.kind:
        case "joint":
            return address_of(joint_place(each.key), slug)
        case "part":
            return address_of(piece_place(each.key, ""), slug)
        case "train":
            return reverse("chain", args=[slug, each.key])
        case "gate":
            return reverse("gate", args=[slug, each.key])
    return address_of(reading_place(each.key, "", ""), slug)


def _stands(seen: Seen, each: Called) -> list[object]:
    """The states of what was found, each once."""
    if each.kind == "joint":
        return [seen.now.joint(each.key).word]
    if each.kind == "part":
        return list(dict.fromkeys(p.word for p in seen.now.pieces_of(each.key).values()))
    verdicts = [seen.now.latest(each.key, piece) for piece in each.pieces or ("",)]
    return list(dict.fromkeys(verdict.verdict for verdict in verdicts if verdict))


def new_machine(asked: Asked) -> HttpResponse:
    """Book a machine in, made to a starter or to a book of one's own."""
    if asked.method != "POST":
        return _new_shown(asked)
    text, name = _book_typed(asked)
    done = do(
        asked,
        lambda: acts.add_machine(
            slug=str(asked.POST.get("slug", "")).strip(),
            name=str(asked.POST.get("name", "")),
            book_text=text,
            book_name=name,
            serials=_serials(asked),
            notes=str(asked.POST.get("notes", "")),
            who=asked.who,
        ),
    )
    if done.wrong:
        return _new_shown(asked, done.wrong, text if name not in starter_names() else "")
    return HttpResponseRedirect(reverse("machine", args=[str(asked.POST["slug"]).strip()]))


def _new_shown(asked: Asked, wrong: Wrong | None = None, text: str = "") -> HttpResponse:
    return page(
        asked,
        "new_machine.html",
        status=NOT_DONE if wrong else 200,
        wrong=wrong,
        starters=starter_names(),
        typed=asked.POST,
        text=text,
        serials=[
            (number, asked.POST.get(f"where{number}", ""), asked.POST.get(f"serial{number}", ""))
            for number in range(1, MOST_SERIALS + 1)
        ],
    )


def _book_typed(asked: Asked) -> tuple[str, str]:
    """The book's text and name: of a file, of what was typed, else of a starter."""
    if (file := asked.FILES.get("file")) is not None:
        return file.read().decode("utf-8"), str(file.name)
    if text := str(asked.POST.get("text", "")).strip():
        return f"{text}\n", f"{asked.POST.get('slug', 'book')}.yaml"
    starter = str(asked.POST.get("starter", ""))
    return (starter_text(starter), starter) if starter in starter_names() else ("", "")


def _serials(asked: Asked) -> dict[str, str]:
    pairs = [
        (
            str(asked.POST.get(f"where{n}", "")).strip(),
            str(asked.POST.get(f"serial{n}", "")).strip(),
        )
        for n in range(1, MOST_SERIALS + 1)
    ]
    return {where: number for where, number in pairs if where and number}


URLS = [
    path("new/", new_machine, name="new-machine"),
    path("m/<slug:slug>/", machine, name="machine"),
    path("m/<slug:slug>/find/", find, name="find"),
]
