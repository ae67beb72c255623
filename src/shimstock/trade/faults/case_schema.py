"""The form of a neutral case file as JSON Schema, which is also what the reader goes by."""

from __future__ import annotations

from typing import Any

Schema = dict[str, Any]

FORMAT = "diag-case/1"
SEEN, NOT_SEEN, NOT_LOOKED = "seen", "not seen", "not looked"
MOST, LARGEST, LONGEST = 2000, 1e12, 1e6
"""Entries of a section, the size of a reading, and minutes: no machine comes near them."""


def case_schema() -> Schema:
    """The form as JSON Schema, edition 2020-12.

    What one part of a file says of another (names that must be there, joints that need each other
    in a circle) cannot be said in it; the reader checks that besides.
    """
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A fault case",
        "description": "What can be wrong with a machine, how it shows, what can be checked, and "
        "what is known so far. Further fields are passed over.",
        "type": "object",
        "required": ["format", "causes", "findings"],
        "properties": {
            "format": {"enum": [FORMAT]},
            "joints": _section(_JOINT, "What must be opened to get at something."),
            "causes": _section(_CAUSE, "What can be wrong.") | {"minItems": 1},
            "exclusive": {
                "description": "Groups of causes of which at most one is there.",
                "type": "array",
                "maxItems": MOST,
                "items": _names() | {"minItems": 2, "uniqueItems": True},
            },
            "findings": _section(_FINDING, "What can show: a sign, a test, an inspection."),
            "checks": _section(_CHECK, "What can be done to find out more."),
            "reported": {
                "description": "What the person said at the start, by finding.",
                "type": "object",
                "additionalProperties": {"enum": [SEEN, NOT_SEEN, NOT_LOOKED]},
            },
            "observed": {
                "description": "Results of checks that were done, by finding; they go before what "
                "was reported. A number only where the finding has a reading.",
                "type": "object",
                "additionalProperties": {
                    "type": ["boolean", "number"],
                    "minimum": -LARGEST,
                    "maximum": LARGEST,
                },
            },
            "open": _names("Joints that stand open; all others are closed."),
        },
    }


def _section(entry: Schema, says: str) -> Schema:
    return {"description": says, "type": "array", "maxItems": MOST, "items": entry}


def _names(says: str = "") -> Schema:
    listed = {"type": "array", "maxItems": MOST, "items": _NAME}
    return {"description": says} | listed if says else listed


_NAME: Schema = {
    "type": "string",
    "minLength": 1,
    "maxLength": 100,
    "pattern": r"^[^\u0000-\u001f\u007f-\u009f\u2028\u2029\ud800-\udfff]+$",
}
_CHANCE: Schema = {"type": "number", "minimum": 0, "maximum": 1}
_MINUTES: Schema = {"type": "number", "minimum": 0, "maximum": LONGEST}
_SPREAD: Schema = {
    "description": "Mean and standard deviation.",
    "type": "array",
    "minItems": 2,
    "maxItems": 2,
    "prefixItems": [
        {"type": "number", "minimum": -LARGEST, "maximum": LARGEST},
        {"type": "number", "minimum": 1 / LARGEST, "maximum": LARGEST},
    ],
}
_JOINT: Schema = {
    "type": "object",
    "required": ["id", "minutes"],
    "properties": {
        "id": _NAME,
        "minutes": _MINUTES | {"description": "To open it, what it needs being open."},
        "needs": _names("Joints that must be open first."),
    },
}
_CAUSE: Schema = {
    "type": "object",
    "required": ["id", "prior"],
    "properties": {
        "id": _NAME,
        "prior": _CHANCE | {"description": "Chance that it is there, before anything is seen."},
    },
}
_FINDING: Schema = {
    "type": "object",
    "required": ["id", "leak", "causes"],
    "properties": {
        "id": _NAME,
        "kind": {"description": "Symptom, test, inspection; for people.", "type": "string"},
        "leak": _CHANCE | {"description": "Chance that it shows for a reason not listed."},
        "causes": {
            "description": "By cause: chance that this cause alone makes it show.",
            "type": "object",
            "additionalProperties": _CHANCE,
        },
        "reading": {
            "description": "How a reading of it falls, where it is read as a number.",
            "type": "object",
            "required": ["absent", "present"],
            "properties": {"absent": _SPREAD, "present": _SPREAD},
        },
    },
}
_CHECK: Schema = {
    "type": "object",
    "required": ["id", "minutes"],
    "properties": {
        "id": _NAME,
        "gives": _names("Findings whose result it tells."),
        "minutes": _MINUTES | {"description": "Of the check itself, without opening."},
        "joints": _names("Joints that must be open for it."),
        "confirms": _names("Causes that it settles."),
    },
}
