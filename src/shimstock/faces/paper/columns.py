"""Rows of a drawing put into columns and pages."""

from dataclasses import dataclass

from shimstock.faces.paper.lettering import Piece
from shimstock.faces.paper.tree import Row

COLUMNS = 2
HEAD, BETWEEN = 16.0, 5.0  # points: the head of a panel, and the gap below it


@dataclass(frozen=True)
class Line:
    """One row, the head of a panel or a gap, ready to be placed; its height in points."""

    height: float
    row: Row | None = None
    title: str = ""
    text: tuple[tuple[Piece, ...], ...] = ()


Column = list[Line]


@dataclass(frozen=True)
class Block:
    """A panel: its title and its rows."""

    title: str
    rows: tuple[Line, ...]


def even_columns(blocks: list[Block], height: float) -> list[Column]:
    """Columns of even length, on as few pages as full columns would take.

    height: that a column may have at most, in points.
    """
    columns = filled_columns(blocks, height)
    room = -(-len(columns) // COLUMNS) * COLUMNS
    while height > 10 * HEAD:
        height -= HEAD / 2
        shorter = filled_columns(blocks, height)
        if len(shorter) > room:
            break
        columns = shorter
    return columns


def filled_columns(blocks: list[Block], height: float) -> list[Column]:
    """Columns as full as they go; a panel that is cut says so again at the next column's head."""
    columns: list[Column] = [[]]
    used = 0.0
    for block in blocks:
        if used and used + HEAD + sum(row.height for row in block.rows[:2]) > height:
            columns.append([])
            used = 0.0
        columns[-1].append(Line(HEAD, title=block.title))
        used += HEAD
        for row in block.rows:
            if used + row.height > height:
                columns.append([Line(HEAD, title=f"{block.title}, continued")])
                used = HEAD
            columns[-1].append(row)
            used += row.height
        columns[-1].append(Line(BETWEEN))
        used += BETWEEN
    return columns
