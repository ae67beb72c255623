"""A small invented book for the tests of the ways in."""

from datetime import date

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.state import Answer, JointNow, MachineNow, PieceNow
from shimstock.trade.machine.words import JointWord, PartWord

TODAY = date(2026, 6, 1)
OPEN = JointNow(JointWord.OPEN, since=TODAY)

PARTS = {
    "case": {"name": "Case", "heavy": True},
    "hood": {"name": "Hood", "sits-on": "case"},
    "tank": {"name": "Tank", "sits-on": "case"},
    "cover": {"name": "Governor cover", "sits-on": "case"},
    "governor": {"name": "Governor", "sits-on": "case", "wear": True},
    "spring": {"name": "Governor spring", "sits-on": "governor"},
    "rod": {"name": "Throttle rod", "sits-on": "hood"},
    "pump": {"name": "Pump", "sits-on": "case", "each": ["left", "right"], "set": "pumps"},
    "head": {"name": "Head", "sits-on": "case", "heavy": True},
    "badge": {"name": "Badge", "sits-on": "hood"},
}
JOINTS = {
    "hood-bolts": {
        "name": "Hood to case",
        "mark": "J1",
        "between": ["hood", "case"],
        "seals": "nothing",
        "open": 10,
        "close": 15,
        "reaches": ["tank"],
    },
    "tank-straps": {
        "name": "Tank to case",
        "mark": "J2",
        "between": ["tank", "case"],
        "seals": "fuel",
        "after": ["hood-bolts"],
        "open": 20,
        "close": 25,
        "dangers": ["fuel"],
        "uses": [{"fluid": "diesel", "amount": "5 gal"}],
    },
    "cover-face": {
        "name": "Governor cover to case",
        "mark": "J3",
        "between": ["cover", "case"],
        "seals": "oil",
        "on-paint": True,
        "after": ["hood-bolts"],
        "open": 15,
        "close": 20,
        "reaches": ["governor"],
        "uses": [{"gasket": "cover gasket", "thickness": "0.015 in"}],
        "fasteners": {"count": 12},
        "settles": [{"figure": "mesh"}],
    },
    "governor-base": {
        "name": "Governor to case",
        "mark": "J4",
        "between": ["governor", "case"],
        "seals": "oil",
        "on-paint": True,
        "after": [{"any-of": [["cover-face"], ["tank-straps", "rod-pin"]]}],
        "open": 45,
        "close": 60,
        "reaches": ["spring"],
        "uses": [{"gasket": "base gasket"}, {"seal": "O-ring", "count": 2}],
        "dangers": ["spring"],
        "cover-same-night": True,
    },
    "rod-pin": {
        "name": "Throttle rod to governor",
        "mark": "J5",
        "between": ["rod", "governor"],
        "seals": "nothing",
        "open": 5,
        "close": 5,
    },
    "left-pump-seat": {
        "name": "Left pump to its seat",
        "mark": "J6",
        "between": ["pump", "case"],
        "seals": ["oil", "fuel"],
        "on-paint": True,
        "open": 25,
        "close": 45,
        "uses": [{"seal": "O-ring"}],
        "dangers": ["lining"],
    },
    "head-face": {
        "name": "Head to case",
        "mark": "J7",
        "between": ["head", "case"],
        "seals": "combustion",
        "on-paint": True,
        "after": ["hood-bolts", "tank-straps"],
        "open": 120,
        "close": 180,
        "hands": 2,
        "uses": [{"gasket": "head gasket"}, {"fluid": "coolant", "amount": "3 gal"}],
        "dangers": ["fuel", "lift"],
        "seal-inside-first": True,
    },
}
REST = {
    "sets": {"pumps": {"name": "Pumps", "same": ["maker"], "proof": "the pump bench's sheet"}},
    "figures": {
        "mesh": {"name": "Mesh", "of": "governor", "limit": "max 0.012 in"},
        "delivery": {
            "name": "Delivery",
            "of": "pump",
            "limit": "min 1.0 mm",
            "sizes": ["+0.010 in"],
        },
    },
    "cautions": {
        "fuel": {"name": "Fuel", "dangers": ["fuel"], "do": "drain it", "never": "near a flame"},
        "lift": {"name": "Lifting", "dangers": ["lift"], "do": "sling it", "never": "stand under"},
        "paint": {"name": "Two-pack", "do": "air-fed mask", "never": "a filter mask"},
    },
    "gates": {
        "paint": {
            "name": "paint",
            "joints": "paint joints dry",
            "points": {
                "kind": {"ask": "Which paint?", "answers": ["single-pack", "two-pack"]},
                "air-fed": {
                    "ask": "Who has the air-fed mask?",
                    "answers": [],
                    "hard": True,
                    "only-if": {"kind": "two-pack"},
                },
            },
            "cautions": ["paint"],
        },
        "first-start": {
            "name": "first start",
            "joints": "all closed",
            "parts": True,
            "sets": True,
            "readings": True,
            "points": {
                "stop": {"ask": "Stop proved?", "hard": True},
                "plate": {"ask": "Inlet plate in hand?", "hard": True},
                "oil": {"ask": "Oil primed?", "minutes": 15},
            },
        },
        "road": {
            "name": "road",
            "figures": ["mesh"],
            "passed-before": ["first-start"],
            "points": {
                "brake-test": {"ask": "Brake test done?", "hard": True},
                "linings": {
                    "ask": "Linings: asbestos?",
                    "answers": ["new", "tested", "treated as asbestos"],
                    "hard": True,
                    "before-closing": ["lining"],
                },
            },
        },
    },
}


def book(joints=None, parts=None):
    """The small book, with some of its joints or parts changed."""
    of = {"book": "small", "title": "Small", "parts": {**PARTS, **(parts or {})}}
    return Book.model_validate({**of, "joints": {**JOINTS, **(joints or {})}, **REST})


BOOK = book()


def machine(*opened, of=BOOK, joints=None, pieces=None, verdicts=None, answers=None, passed=()):
    """A machine made to the small book, with some joints open."""
    return MachineNow(
        of,
        TODAY,
        {**{key: OPEN for key in opened}, **(joints or {})},
        pieces or {},
        verdicts or {},
        {key: Answer(said, "Ann", TODAY, why) for key, (said, why) in (answers or {}).items()},
        frozenset(passed),
    )


def piece(word=PartWord.PASSED, **more):
    """A piece in a state."""
    return PieceNow(word, **more)


def whats(reasons):
    """What some reasons are about and why, for comparing."""
    return [(reason.what, reason.why) for reason in reasons]
