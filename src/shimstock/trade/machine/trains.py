"""Trains: chains of meshes and clearances whose play adds up at one end."""

from __future__ import annotations

from pydantic import Field, model_validator

from shimstock.trade.machine.entry import Entry
from shimstock.trade.machine.texts import Length


class Hold(Entry):
    """What is held so that everything before a link keeps still."""

    what: str
    open: str | None = Field(None, description="The joint to open to get a hand on it.")
    figure: str | None = Field(None, description="The figure read at the end with this held.")


class Link(Entry):
    """One place of play in a train: a gear mesh, or a plain clearance with its ratio."""

    name: str
    figure: str
    driver: str | None = None
    driver_teeth: int | None = Field(None, ge=1)
    driven: str | None = None
    driven_teeth: int | None = Field(None, ge=1)
    pitch: float | None = Field(None, gt=0, description="Teeth per inch of diameter.")
    ratio: float | None = Field(None, gt=0, description="Movement at the end for each unit here.")
    hold: Hold | None = Field(None, description="Left out where nothing can be held before it.")
    spread_by: str | None = Field(
        None, description="Joint whose gasket sets the centre distance, or lies in the play itself."
    )
    pressure_angles: tuple[float, ...] = Field((), description="Degrees; all that are possible.")
    only_by_holding: bool = Field(False, description="Its play cannot be read on the link itself.")
    look_first: tuple[str, ...] = Field((), description="What to look at before the gear.")

    @model_validator(mode="after")
    def _mesh_or_ratio(self) -> Link:
        mesh = (self.driver_teeth, self.driven_teeth, self.pitch)
        if all(mesh) == (self.ratio is not None) or any(mesh) != all(mesh):
            raise ValueError("give driver-teeth, driven-teeth and pitch, or else ratio")
        return self


class Train(Entry):
    """A chain of meshes or clearances whose play adds up at one end."""

    name: str
    figure: str = Field(description="The figure read at the end with everything in.")
    radius: Length | None = Field(None, description="Where it is read, from the last shaft.")
    piece: str | None = Field(None, description="Which piece, where its figure has several.")
    adjusted: bool = Field(
        False, description="The whole is taken up by adjusting, so that it has its own verdict."
    )
    links: tuple[Link, ...] = Field(min_length=1, description="From the driven-off end outwards.")
    page: int | str | None = Field(None, description="Page of the maker's book.")

    @model_validator(mode="after")
    def _whole_can_be_felt(self) -> Train:
        if self.links[0].hold is None:
            raise ValueError("say with `hold` what is held at the first link to feel the whole")
        return self
