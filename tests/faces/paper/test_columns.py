"""Rows put into columns."""

from shimstock.faces.paper.columns import Block, Line, even_columns, filled_columns

ROW = 12.0
LONG = Block("Engine", (Line(ROW),) * 40)
SHORT = Block("Fuel", (Line(ROW),) * 3)


def high(column) -> float:
    return sum(line.height for line in column)


def test_a_column_is_never_higher_than_the_page():
    for columns in (filled_columns([LONG, SHORT], 200), even_columns([LONG, SHORT], 200)):
        # the gap below the last panel may hang over the foot
        assert all(high(column) <= 205 for column in columns)
        assert sum(line.height == ROW for column in columns for line in column) == 43


def test_a_panel_that_is_cut_says_so_in_the_next_column():
    first, second, *_ = filled_columns([LONG], 200)

    assert first[0].title == "Engine"
    assert second[0].title == "Engine, continued"


def test_a_head_never_stands_alone_at_the_foot():
    columns = filled_columns([Block("Engine", (Line(ROW),) * 14), SHORT], 210)

    assert columns[1][0].title == "Fuel"


def test_columns_are_even_on_as_few_pages_as_full_ones():
    full, even = filled_columns([LONG, SHORT], 400), even_columns([LONG, SHORT], 400)

    assert len(full) == len(even) == 2
    assert abs(high(even[0]) - high(even[1])) < abs(high(full[0]) - high(full[1]))
