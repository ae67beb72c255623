"""The shed: every machine, where it stands, its next thing, what waits and what is unsafe."""

from __future__ import annotations

from dataclasses import dataclass

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.places import address_of
from shimstock.workshop.looking import Seen, see_all
from shimstock.workshop.wording import count_of


@dataclass(frozen=True)
class InTheShed:
    """One machine in a card."""

    seen: Seen

    @property
    def stands(self) -> str:
        """What is open and what is away, in a sentence."""
        opened, away = self.seen.standing["open"], self.seen.standing["away"]
        said = [f"{count_of(len(opened), 'joint')} open"] if opened else ["Nothing stands open"]
        said += [f"{count_of(len(away), 'piece')} away or wanted"] if away else []
        return f"{', '.join(said)}."

    @property
    def bare(self) -> list[dict[str, object]]:
        """What stands open and is not covered."""
        return [each for each in self.seen.standing["open"] if not each["covered"]]

    @property
    def todo(self) -> tuple[str, str] | None:
        """The next thing, and the address where it is done."""
        first = next(iter(self.seen.to_do), None)
        return (first.says, address_of(first.place, self.seen.row.slug)) if first else None


def shed(asked: Asked) -> HttpResponse:
    """All machines."""
    machines = [InTheShed(seen) for seen in see_all()]
    latest = max((each.seen.latest for each in machines), default=0)
    return page(asked, "shed.html", here="shed", machines=machines, latest=latest)


URLS = [path("", shed, name="shed")]
