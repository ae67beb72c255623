"""What every entry of a book shares."""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict


def _hyphens(field: str) -> str:
    return field.rstrip("_").replace("_", "-")


class Entry(BaseModel):
    """What every entry of a book shares: frozen, hyphenated field names, no unknown fields."""

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        alias_generator=_hyphens,
        populate_by_name=True,
        arbitrary_types_allowed=True,
        coerce_numbers_to_str=True,
    )
