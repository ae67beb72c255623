"""Things of a book as people call them, and the pages that show them, for templates."""

from __future__ import annotations

from django import template

from shimstock.faces.web.places import address_of
from shimstock.workshop.looking import Seen
from shimstock.workshop.place_typed import place_called
from shimstock.workshop.wording import figure_named, joint_named, piece_named

register = template.Library()


@register.simple_tag
def joint_called(seen: Seen, joint: str) -> str:
    """A joint with its mark."""
    return joint_named(seen.book, joint)


@register.simple_tag
def part_called(seen: Seen, part: str) -> str:
    """A part with its mark."""
    return piece_named(seen.book, part, "")


@register.simple_tag
def figure_called(seen: Seen, figure: str) -> str:
    """A figure with its mark."""
    return figure_named(seen.book, figure, "")


@register.simple_tag
def called(seen: Seen, place: str) -> str:
    """A place as a person calls it."""
    return place_called(seen.book, place)


@register.simple_tag
def address(seen: Seen, place: str) -> str:
    """The address of the page that shows a place; "" where there is none."""
    return address_of(place, seen.row.slug) if place else ""
