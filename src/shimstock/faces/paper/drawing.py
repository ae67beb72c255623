"""A drawing of a machine's parts and joints, each with the sign of its state, as SVG pages."""

from collections import Counter
from collections.abc import Iterable, Iterator

from shimstock.faces.paper.columns import COLUMNS, Block, Column, Line, even_columns
from shimstock.faces.paper.lettering import Piece, broken, width_of
from shimstock.faces.paper.shapes import (
    draw_box,
    draw_rule,
    draw_sign,
    draw_text,
    escaped,
    svg_of,
)
from shimstock.faces.paper.signs import JOINT_SIGNS, PART_SIGNS, Sign
from shimstock.faces.paper.tree import Panel, Row, joint_label, panels, row_pieces
from shimstock.trade.machine.state import MachineNow
from shimstock.trade.machine.words import PartWord
from shimstock.workshop.wording import called

# All sizes are in points.
TEXT, SMALL, TITLE = 7.0, 5.6, 8.4
FIRST_LINE, NEXT_LINE = 12.0, 8.4
INDENT, STEP, GAP = 8.0, 9.0, 14.0
SIGN, BOX = 9.0, 9.5
BOLD = 1.15  # how much wider bold letters run


def drawing(now: MachineNow, *, width: float, height: float) -> tuple[str, ...]:
    """The machine's parts as trees of who sits on whom, a panel a group, joints on the lines.

    width, height: of a page, in points. One SVG text a page; as many as it takes.
    """
    pen = _Pen(now, (width - GAP * (COLUMNS - 1)) / COLUMNS)
    columns = even_columns([pen.block(panel) for panel in panels(now.book)], height)
    pages = [columns[at : at + COLUMNS] for at in range(0, len(columns), COLUMNS)]
    return tuple(_page(pen, page, width) for page in pages)


def legend(now: MachineNow, *, width: float) -> str:
    """What the signs of the drawing mean and how many of each there are, as SVG text.

    width: in points. Signs that the drawing does not show are left out.
    """
    joints = Counter(JOINT_SIGNS[now.joint(key).word] for key in now.book.joints)
    pieces = Counter(PART_SIGNS[word] for word in _piece_words(now))
    out, y = [], 8.0
    for title, order, counts in (
        ("Joints", JOINT_SIGNS.values(), joints),
        ("Parts", dict.fromkeys(PART_SIGNS.values()), pieces),
    ):
        out.append(draw_text(0, y + 2.3, TEXT, [(title, "name")], bold=True))
        drawn, y = _counted([(sign, counts[sign]) for sign in order if counts[sign]], y, width)
        out.append(drawn)
        y += 15
    return svg_of("".join(out), width, y - 4)


def sign_alone(sign: Sign) -> str:
    """A sign by itself, as SVG text, to stand in a line of print."""
    return svg_of(draw_sign(sign, 6, 6), 12, 12)


def _counted(signs: Iterable[tuple[Sign, int]], y: float, width: float) -> tuple[str, float]:
    """Signs with their numbers and words, in lines of at most `width`; and the last line's y."""
    start = x = 36.0
    out = []
    for sign, count in signs:
        said = f"{count} {sign.word}"
        wide = 13 + width_of(said, TEXT) + 10
        if x + wide > width and x > start:
            x, y = start, y + 13
        out += [draw_sign(sign, x + 5, y), draw_text(x + 13, y + 2.3, TEXT, [(said, "name")])]
        x += wide
    return "".join(out), y


def _piece_words(now: MachineNow) -> Iterator[PartWord]:
    for key in now.book.parts:
        for piece in now.pieces_of(key).values():
            yield piece.word


class _Pen:
    """Draws the rows of one machine into columns of one width."""

    def __init__(self, now: MachineNow, width: float) -> None:
        self.now = now
        self.width = width
        self.labels = {key: joint_label(now.book, key) for key in now.book.joints}
        self.label = max((width_of(each, SMALL) for each in self.labels.values()), default=0.0)

    def block(self, panel: Panel) -> Block:
        """A panel with its words broken to the width, not yet placed."""
        return Block(panel.title, tuple(self._line(row) for row in panel.rows))

    def draw(self, line: Line, x: float, y: float) -> str:
        """One line of a column with its left edge at x and its top at y."""
        if line.row is not None:
            return self._row(line.row, line, x, y)
        if not line.title:
            return ""
        bar = draw_box(x, y, self.width, 12.5, 'fill="#e9e6df"')
        size = TITLE * min(1, (self.width - 8) / (BOLD * width_of(line.title, TITLE)))
        return bar + draw_text(x + 4, y + 9.2, size, [(line.title, "name")], bold=True)

    def _line(self, row: Row) -> Line:
        lines = broken(self._said(row), TEXT, self.width - self._text_at(row) - 4)
        text = tuple(tuple(pieces) for pieces in lines)
        return Line(FIRST_LINE + NEXT_LINE * (len(lines) - 1), row, text=text)

    def _said(self, row: Row) -> list[Piece]:
        book = self.now.book
        if row.part is None:
            return [(book.joints[row.joint or ""].name, "on")]
        said = [(called(book.parts[row.part].name, row.piece), "name")]
        if states := _states(self.now, row):
            said.append((f", {states}", "state"))
        if row.on is not None:
            said.append((f" (on {book.parts[row.on].name})", "on"))
        return said

    def _row(self, row: Row, line: Line, x: float, y: float) -> str:
        middle = y + FIRST_LINE / 2
        boxes = "".join(
            draw_sign(sign, x + self._boxes_at(row) + BOX * (place + 0.5), middle)
            for place, sign in enumerate(self._boxes(row))
        )
        words = "".join(
            draw_text(x + self._text_at(row), middle + 2.4 + NEXT_LINE * number, TEXT, pieces)
            for number, pieces in enumerate(line.text)
        )
        part = f'<g data-part="{escaped(row.part)}">{boxes}{words}</g>' if row.part else words
        return self._rails(row, x, y, line.height) + self._joint(row, x, middle) + part

    def _elbow_at(self, row: Row) -> float:
        return INDENT + STEP * len(row.rails)

    def _boxes_at(self, row: Row) -> float:
        return self._elbow_at(row) + 5 + (SIGN + self.label + 5 if row.joint else 0)

    def _text_at(self, row: Row) -> float:
        return self._boxes_at(row) + BOX * len(self._boxes(row)) + 2

    def _boxes(self, row: Row) -> list[Sign]:
        """The signs of a part's pieces, each once."""
        pieces = row_pieces(self.now, row).values()
        return list(dict.fromkeys(PART_SIGNS[piece.word] for piece in pieces))

    def _rails(self, row: Row, x: float, y: float, height: float) -> str:
        """The lines of the levels further out, and the elbow of the row's own."""
        middle, elbow = y + FIRST_LINE / 2, x + self._elbow_at(row)
        outer = [x + INDENT + STEP * level for level, runs_on in enumerate(row.rails) if runs_on]
        end = x + self._boxes_at(row) if row.part else elbow + 5
        rules = [draw_rule(at, y, at, y + height) for at in outer]
        rules.append(draw_rule(elbow, y, elbow, middle if row.last else y + height))
        return "".join([*rules, draw_rule(elbow, middle, end, middle)])

    def _joint(self, row: Row, x: float, middle: float) -> str:
        """The joint's sign on the line to its part, its number beside it on white."""
        if row.joint is None:
            return ""
        at = x + self._elbow_at(row) + 3 + SIGN / 2
        label = self.labels[row.joint]
        white = draw_box(at + 5, middle - 3.5, width_of(label, SMALL) + 1, 7, 'fill="#ffffff"')
        sign = draw_sign(JOINT_SIGNS[self.now.joint(row.joint).word], at, middle)
        words = draw_text(at + 5.8, middle + 2, SMALL, [(label, "on")])
        name = f"<title>{escaped(self.now.book.joints[row.joint].name)}</title>"
        return f'<g data-joint="{escaped(row.joint)}">{name}{white}{sign}{words}</g>'


def _states(now: MachineNow, row: Row) -> str:
    """The states of a row's pieces in words; empty while nobody has touched any."""
    by_word: dict[PartWord, list[str]] = {}
    for name, piece in row_pieces(now, row).items():
        by_word.setdefault(piece.word, []).append(name)
    if set(by_word) == {PartWord.FITTED}:
        return ""
    if len(by_word) == 1:
        return next(iter(by_word)).value
    return ", ".join(f"{' and '.join(names)} {word.value}" for word, names in by_word.items())


def _page(pen: _Pen, columns: list[Column], width: float) -> str:
    out, lowest = [], 0.0
    for number, column in enumerate(columns):
        y = 0.0
        for line in column:
            out.append(pen.draw(line, number * (pen.width + GAP), y))
            y += line.height
        lowest = max(lowest, y)
    return svg_of("".join(out), width, lowest)
