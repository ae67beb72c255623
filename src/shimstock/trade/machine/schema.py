"""The format of a book as JSON Schema, so that an editor can complete and check it."""

from __future__ import annotations

from typing import Any

from pydantic.json_schema import GenerateJsonSchema
from pydantic_core import core_schema

from shimstock.trade.machine.book import Book

Schema = dict[str, Any]
LAID_OVER = ("points", "causes")
"""Fields whose own entries may be given in part, or taken away, over those of a starter."""


class _AsTyped(GenerateJsonSchema):
    """What may be typed: yes and no for truth, and a number wherever a word may stand."""

    def bool_schema(self, schema: core_schema.BoolSchema) -> Schema:
        """Truth, in the words that a book uses."""
        return {"enum": [True, False, "yes", "no"]}

    def str_schema(self, schema: core_schema.StringSchema) -> Schema:
        """A word; a number is taken as it is written."""
        return {"type": ["string", "number"]}


def schema() -> Schema:
    """The format of a book as JSON Schema: for a whole book, and for one over a starter.

    A book that extends a starter may leave out anything, and take away what the starter has by
    leaving it empty; one that extends none must be whole.
    """
    described = Book.model_json_schema(by_alias=True, schema_generator=_AsTyped)
    described["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    described["title"] = "A shimstock book"
    entries = {name: each for name, each in described["properties"].items() if _holds(each)}
    described["if"] = {"not": {"required": ["extends"]}}
    described["then"] = {
        "required": described.pop("required"),
        "properties": {name: _whole(described, each) for name, each in entries.items()},
    }
    for each in entries.values():
        _may_be_in_part(described, each)
    return described


def _holds(field: Schema) -> bool:
    """Whether a field holds named entries."""
    return "additionalProperties" in field


def _entry(described: Schema, field: Schema) -> Schema:
    """What one named entry of a field is; nothing to look into where it is a plain value."""
    name = field["additionalProperties"].get("$ref", "").rpartition("/")[2]
    entry: Schema = described["$defs"].get(name, {})
    return entry


def _whole(described: Schema, field: Schema) -> Schema:
    """What a field's entries must have where there is no starter below them."""
    entry = _entry(described, field)
    rule: Schema = {"required": entry["required"]} if "required" in entry else {}
    inner = {key: each for key, each in entry.get("properties", {}).items() if key in LAID_OVER}
    if inner:
        rule["properties"] = {key: _whole(described, each) for key, each in inner.items()}
    return {"additionalProperties": {"not": {"type": "null"}, **rule}}


def _may_be_in_part(described: Schema, field: Schema) -> None:
    """Let a field, its entries and their fields be left out or left empty."""
    field["type"] = ["object", "null"]
    entry = _entry(described, field)
    entry.pop("required", None)
    for key, each in entry.get("properties", {}).items():
        if key in LAID_OVER:
            _may_be_in_part(described, each)
        else:
            entry["properties"][key] = _or_nothing(each)
    field["additionalProperties"] = _or_nothing(field["additionalProperties"])


def _or_nothing(field: Schema) -> Schema:
    if {"type": "null"} in field.get("anyOf", ()):
        return field
    said = {key: field[key] for key in ("description", "title") if key in field}
    return {"anyOf": [field, {"type": "null"}], **said}
