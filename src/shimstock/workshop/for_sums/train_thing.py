"""A train that is named for a sum, and what its meshes hold."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import prod

from shimstock.trade.machine.book import Link, Train
from shimstock.trade.sums.declare import Input
from shimstock.trade.sums.typed import Origin
from shimstock.workshop.for_sums.held import Held, with_unit
from shimstock.workshop.for_sums.which import meant_by, say_which

PRINTED = ("driver teeth", "driven teeth", "meshes", "pitch", "pressure angle", "end radius")
OF_TRAIN = (*PRINTED, "radius", "end ratio")
"""What the trade's sums look for in a train; radius is the pitch radius of the driven gear."""


@dataclass(frozen=True)
class TrainThing:
    """A train, and which of its links is meant; None for all."""

    held: Held
    key: str
    typed: str
    link: int | None = None
    words = OF_TRAIN

    def narrowed(self, text: str) -> TrainThing | None:
        """The same train with one link, by its number or name; None where the text names none."""
        names = [link.name for link in self._train.links]
        if text.strip().isdigit() and 1 <= int(text) <= len(names):
            return replace(self, link=int(text) - 1)
        name = meant_by(text, names)
        return replace(self, link=names.index(name)) if name else None

    def give(self, one: Input, asked: Sequence[str]) -> Origin | None:
        """What it holds for a parameter. Raises Refused where several could be meant."""
        if one.found not in OF_TRAIN:
            return None
        where = self.held.where("trains", self.key, "links", self._train.page)
        if one.found == "end radius":
            return Origin(self._train.radius.typed, where) if self._train.radius else None
        said = [_of_link(self._train.links[at:], one.found) for at in self._which]
        texts = [text for text in said if text]
        if one.many or one.found == "meshes":
            return Origin(", ".join(texts), where) if texts else None
        if len(set(said)) > 1:
            choices = [f"{n} ({link.name})" for n, link in enumerate(self._train.links, start=1)]
            raise say_which(self.typed, "meshes", choices)
        worked = "" if one.found in PRINTED else ", worked out from its teeth"
        return Origin(texts[0], f"{where}{worked}") if texts else None

    @property
    def angles_left_open(self) -> tuple[float, ...]:
        """Pressure angles between which the book leaves it open."""
        angles = (self._train.links[at].pressure_angles for at in self._which)
        return next((each for each in angles if each), ())

    @property
    def _train(self) -> Train:
        return self.held.book.trains[self.key]

    @property
    def _which(self) -> Sequence[int]:
        return range(len(self._train.links)) if self.link is None else [self.link]


def _of_link(links: Sequence[Link], word: str) -> str:
    """What is said of the first of some links, as it would be typed; "" where nothing is.

    links: it and those that follow it to the end of the train.
    """
    link = links[0]
    if word == "pressure angle":
        angles = link.pressure_angles
        return f"{angles[0]:g} deg" if len(angles) == 1 else ""
    if word == "end ratio":
        return _turns_of_end(links[1:])
    if link.driver_teeth is None or link.driven_teeth is None or link.pitch is None:
        return ""
    if word == "radius":
        return with_unit(link.driven_teeth / (2 * link.pitch), "in")
    return {
        "driver teeth": f"{link.driver_teeth}",
        "driven teeth": f"{link.driven_teeth}",
        "meshes": f"{link.driver_teeth}/{link.driven_teeth}",
        "pitch": f"{link.pitch:g}",
    }[word]


def _turns_of_end(links: Sequence[Link]) -> str:
    """Turns of the end of a train for one of the gear before these links; "" without teeth."""
    teeth = [(link.driver_teeth, link.driven_teeth) for link in links]
    meshes = [(driver, driven) for driver, driven in teeth if driver and driven]
    if len(meshes) < len(teeth):
        return ""
    return with_unit(prod(driver / driven for driver, driven in meshes), "count")
