"""The strokes of a drawing as SVG: signs, lines, letters and the sheet around them; in points."""

from collections.abc import Iterable
from html import escape

from shimstock.faces.paper.lettering import FONT, Piece
from shimstock.faces.paper.signs import INK, Sign

STYLES = {
    "name": f'fill="{INK}"',
    "state": 'fill="#3a3a3a" font-style="italic"',
    "on": 'fill="#5a5a5a"',
}
NOT_IN_XML = dict.fromkeys(code for code in range(32) if code not in (9, 10, 13))


def draw_sign(sign: Sign, x: float, y: float) -> str:
    """A sign with its middle at x, y and its letter in it."""
    low = y + (3.4 if sign.shape == "triangle" else 2.1)
    letter = (
        f'<text x="{_n(x)}" y="{_n(low)}" font-family="{FONT}" font-size="5.6" font-weight="bold"'
        f' fill="{sign.ink}" text-anchor="middle">{sign.letter}</text>'
    )
    return _outline(sign, x, y) + letter


def _outline(sign: Sign, x: float, y: float) -> str:
    ink = f'fill="{sign.fill}" stroke="{INK}" stroke-width="0.6"'
    match sign.shape:
        case "circle":
            return f'<circle cx="{_n(x)}" cy="{_n(y)}" r="4.3" {ink}/>'
        case "diamond":
            return _polygon(((x, y - 5.4), (x + 5.4, y), (x, y + 5.4), (x - 5.4, y)), ink)
        case "triangle":
            return _polygon(((x, y - 5.6), (x + 5.4, y + 4.2), (x - 5.4, y + 4.2)), ink)
        case "square":
            return draw_box(x - 4, y - 4, 8, 8, ink)
    return draw_box(x - 3.8, y - 3.8, 7.6, 7.6, f'rx="1.6" {ink}')


def draw_box(x: float, y: float, width: float, height: float, ink: str) -> str:
    """A box with its upper left corner at x, y. ink: how it is filled and drawn."""
    place = f'x="{_n(x)}" y="{_n(y)}" width="{_n(width)}" height="{_n(height)}"'
    return f"<rect {place} {ink}/>"


def _polygon(points: Iterable[tuple[float, float]], ink: str) -> str:
    return f'<polygon points="{" ".join(f"{_n(x)},{_n(y)}" for x, y in points)}" {ink}/>'


def draw_rule(x1: float, y1: float, x2: float, y2: float) -> str:
    """A thin line from one point to another."""
    ends = f'x1="{_n(x1)}" y1="{_n(y1)}" x2="{_n(x2)}" y2="{_n(y2)}"'
    return f'<line {ends} stroke="#7a7a7a" stroke-width="0.7"/>'


def draw_text(
    x: float, y: float, size: float, pieces: Iterable[Piece], *, bold: bool = False
) -> str:
    """A line of words that stands on y and begins at x. size: of the type."""
    spans = "".join(f"<tspan {STYLES[style]}>{escaped(text)}</tspan>" for text, style in pieces)
    weight = ' font-weight="bold"' if bold else ""
    face = f'font-family="{FONT}, sans-serif" font-size="{_n(size)}"{weight}'
    return f'<text x="{_n(x)}" y="{_n(y)}" {face} xml:space="preserve">{spans}</text>'


def svg_of(inside: str, width: float, height: float) -> str:
    """A sheet with what is drawn on it."""
    size = f'width="{_n(width)}" height="{_n(height)}" viewBox="0 0 {_n(width)} {_n(height)}"'
    return f'<svg xmlns="http://www.w3.org/2000/svg" {size}>{inside}</svg>\n'


def escaped(text: str) -> str:
    """Text as it may stand in SVG, whatever was typed."""
    return escape(text.translate(NOT_IN_XML))


def _n(number: float) -> str:
    return f"{number:.2f}".rstrip("0").rstrip(".")
