"""Rows as plain values for the diary, and back again."""

from collections.abc import Iterable
from datetime import date
from enum import StrEnum
from typing import Any

from django.apps import apps

from shimstock.workshop.models import Kept

Fields = dict[str, Any]
"""Columns of one row and their values, as JSON can hold them."""


def row_name(row: Kept) -> str:
    """Name a saved row for the diary, as table and number."""
    return f"{row._meta.model_name}:{row.pk}"


def row_named(name: str) -> Kept:
    """Find the row that the diary names."""
    table, _, number = name.partition(":")
    found: Kept = _table(table)._default_manager.get(pk=int(number))
    return found


def rows_numbered(table: str, numbers: Iterable[int]) -> Iterable[Kept]:
    """Find rows of one table, in one SELECT."""
    rows: Iterable[Kept] = _table(table)._default_manager.filter(pk__in=set(numbers))
    return rows


def row_like(name: str) -> Kept:
    """An empty row of the table that the diary names, to be looked at and not saved."""
    return _table(name.partition(":")[0])()


def written(row: Kept) -> Fields:
    """A row's values as the diary writes them."""
    columns = (field.attname for field in row._meta.concrete_fields if not field.primary_key)
    return {name: _plain(getattr(row, name)) for name in columns if name not in row.NOT_IN_DIARY}


def stored(row: Kept) -> Fields:
    """A row's values as they stand in the database; those of an absent row if it is not there."""
    if row.pk is None:
        return dict(row.ABSENT)
    return written(type(row)._default_manager.get(pk=row.pk))


def put_back(row: Kept, values: Fields) -> None:
    """Give a row the values that the diary holds, without saving it."""
    columns = {field.attname: field for field in row._meta.concrete_fields}
    for name, value in values.items():
        setattr(row, name, columns[name].to_python(value))


def _table(name: str) -> type[Kept]:
    found: type[Kept] = apps.get_model("workshop", name)
    return found


def _plain(value: Any) -> Any:
    if isinstance(value, date):  # and so a date with a time
        return value.isoformat()
    return str(value) if isinstance(value, StrEnum) else value
