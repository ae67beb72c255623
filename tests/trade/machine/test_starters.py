"""The starters against the tables that they were drawn up from, and against themselves.

Source of every count, list and minute here: the club's own strip-down table, a stand-in for no
machine in particular.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from itertools import product

import pytest
import yaml

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.sheet import read_sheet
from shimstock.trade.machine.starters import starter_names, starter_text
from shimstock.trade.numbers.instruments import named

TRACTOR = "two-cylinder-diesel"
CRAWLER = "petrol-crawler"
MACHINES = (TRACTOR, CRAWLER)

PATHS = {
    TRACTOR: {
        "J01": (10, 15),
        "J02": (35, 50),
        "J03": (5, 10),
        "J04": (5, 10),
        "J05": (5, 10),
        "J06": (15, 20),
        "J07": (5, 5),
        "J08": (5, 5),
        "J09": (5, 10),
        "J10": (30, 35),
        "J11": (30, 35),
        "J12": (10, 15),
        "J13": (40, 65),
        "J14": (40, 65),
        "J15": (25, 35),
        "J16": (15, 20),
        "J17": (40, 55),
        "J18": (25, 30),
        "J19": (85, 110),
        "J20": (65, 95),
        "J21": (125, 170),
        "J22": (25, 35),
        "J23": (15, 20),
        "J24": (15, 20),
        "J25": (95, 125),
        "J26": (160, 210),
        "J27": (20, 30),
        "J28": (35, 55),
        "J29": (30, 40),
        "J30": (25, 35),
        "J31": (320, 435),
        "J32": (55, 75),
        "J33": (85, 120),
        "J34": (600, 830),
        "J35": (45, 60),
        "J36": (70, 95),
        "J37": (160, 215),
        "J38": (210, 275),
        "J39": (25, 35),
        "J40": (15, 20),
        "J41": (5, 5),
        "J42": (20, 30),
        "J43": (40, 55),
        "J44": (80, 105),
        "J45": (120, 155),
        "J46": (30, 40),
        "J47": (140, 175),
        "J48": (20, 25),
        "J49": (30, 35),
        "J50": (170, 215),
        "J51": (60, 75),
        "J52": (60, 75),
        "J53": (95, 120),
        "J54": (95, 120),
        "J55": (95, 120),
        "J56": (95, 120),
        "J57": (245, 310),
        "J58": (245, 310),
        "J59": (30, 35),
        "J60": (105, 135),
    },
    CRAWLER: {
        "J01": (10, 15),
        "J02": (20, 30),
        "J03": (40, 55),
        "J04": (5, 10),
        "J05": (35, 50),
        "J06": (10, 15),
        "J07": (10, 15),
        "J08": (25, 35),
        "J09": (85, 120),
        "J10": (120, 170),
        "J11": (120, 170),
        "J12": (55, 80),
        "J13": (20, 30),
        "J14": (30, 50),
        "J15": (55, 78),
        "J16": (25, 38),
        "J17": (10, 18),
        "J18": (30, 46),
        "J19": (140, 218),
        "J20": (65, 98),
        "J21": (10, 20),
        "J22": (3, 5),
        "J23": (13, 20),
        "J24": (3, 5),
        "J25": (43, 70),
        "J26": (120, 160),
        "J27": (283, 405),
        "J28": (45, 70),
        "J29": (60, 90),
        "J30": (85, 130),
        "J31": (115, 180),
        "J32": (5, 5),
        "J33": (40, 55),
        "J34": (60, 85),
        "J35": (80, 115),
        "J36": (140, 215),
        "J37": (40, 60),
        "J38": (60, 80),
        "J39": (25, 30),
        "J40": (35, 50),
        "J41": (55, 80),
        "J42": (55, 80),
        "J43": (115, 160),
        "J44": (115, 160),
        "J45": (145, 220),
        "J46": (145, 220),
        "J47": (45, 60),
        "J48": (45, 60),
        "J49": (105, 150),
        "J50": (105, 150),
        "J51": (195, 240),
        "J52": (195, 240),
        "J53": (370, 490),
        "J54": (370, 490),
        "J55": (20, 25),
        "J56": (25, 30),
        "J57": (65, 90),
    },
}
"""By mark: minutes to open and to close a joint with everything that must be open before it."""

TRACTOR_PAINT = """
    J03 J04 J05 J06 J07 J08 J09 J10 J11 J12 J13 J14 J15 J16 J17 J20 J21 J22 J24 J25 J26 J27
    J29 J31 J32 J34 J36 J37 J38 J39 J40 J41 J44 J45 J47 J48 J49 J50 J53 J54 J55 J56 J57 J58
    J59 J60
"""
CRAWLER_PAINT = """
    J04 J06 J07 J10 J11 J12 J13 J15 J16 J17 J18 J19 J20 J21 J23 J25 J27 J28 J32 J36 J37 J38
    J39 J51 J52 J53 J54 J55 J56
"""
ON_PAINT = {TRACTOR: TRACTOR_PAINT, CRAWLER: CRAWLER_PAINT}
ASBESTOS = {
    TRACTOR: "J42 J55 J56",
    CRAWLER: "J34 J40 J41 J42 J43 J44",
}
TWO_PEOPLE = {
    TRACTOR: "J19 J31 J34 J35 J37 J38 J47 J57 J58",
    CRAWLER: "J19 J28 J43 J44 J47 J48 J49 J50 J51 J52 J53 J54",
}
COUNTS = {TRACTOR: (100, 60), CRAWLER: (99, 57)}
FIGURES = {TRACTOR: range(1, 78), CRAWLER: range(78, 127)}


@pytest.fixture(scope="module")
def books() -> dict[str, Book]:
    return {name: read_book(starter_text(name), f"{name}.yaml") for name in starter_names()}


def marks(book: Book, keys: Iterable[str]) -> str:
    return " ".join(book.joints[key].mark or "" for key in keys)


def test_three_starters_ship() -> None:
    assert starter_names() == ("any-tractor", "petrol-crawler", "two-cylinder-diesel")


@pytest.mark.parametrize("name", MACHINES)
def test_strip_down_table_counts_of_parts_and_joints(books: dict[str, Book], name: str) -> None:
    book = books[name]

    assert (len(book.parts), len(book.joints)) == COUNTS[name]
    assert [joint.mark for joint in book.joints.values()] == list(PATHS[name])
    assert len({part.mark for part in book.parts.values()}) == len(book.parts)


@pytest.mark.parametrize("name", MACHINES)
def test_figures_table_is_whole_and_all_of_it_stand_in(books: dict[str, Book], name: str) -> None:
    measures = books[name].measures.values()

    found = sorted(figure.mark for figure in measures if figure.mark is not None)
    assert found == [f"F{number:03}" for number in FIGURES[name]]
    assert all(figure.stand_in for figure in measures)


@pytest.mark.parametrize("name", MACHINES)
def test_every_figure_names_an_instrument_known_here(books: dict[str, Book], name: str) -> None:
    for figure in books[name].measures.values():
        named(figure.with_ or "", figure.measured_in)


@pytest.mark.parametrize("name", MACHINES)
def test_figures_without_limits_feed_another_or_a_train(books: dict[str, Book], name: str) -> None:
    book = books[name]
    used = {
        source
        for figure in book.measures.values()
        for source in (figure.derive.sources if figure.derive else ())
    }
    links = [link for train in book.trains.values() for link in train.links]
    used |= {link.hold.figure or "" for link in links if link.hold}
    used |= {link.figure for link in links}

    bare = {key for key, figure in book.measures.items() if not figure.new and not figure.limit}
    assert bare <= used


@pytest.mark.parametrize("name", MACHINES)
def test_strip_down_table_joints_that_leak_onto_paint(books: dict[str, Book], name: str) -> None:
    assert marks(books[name], books[name].on_paint) == " ".join(ON_PAINT[name].split())


def test_strip_down_table_46_and_29_joints_leak_onto_paint(books: dict[str, Book]) -> None:
    assert [len(books[name].on_paint) for name in MACHINES] == [46, 29]


@pytest.mark.parametrize("name", MACHINES)
def test_strip_down_table_asbestos_and_two_people(books: dict[str, Book], name: str) -> None:
    joints = books[name].joints

    asbestos = [key for key, joint in joints.items() if "asbestos" in joint.dangers]
    two_people = [key for key, joint in joints.items() if joint.hands == 2]
    assert marks(books[name], asbestos) == ASBESTOS[name]
    assert marks(books[name], two_people) == TWO_PEOPLE[name]


def ways(book: Book) -> list[dict[str, list[str]]]:
    """Every choice among the alternatives of a book: what each joint then waits for."""
    choices = [
        (key, at, number)
        for key, joint in book.joints.items()
        for at, alternatives in enumerate(joint.needs)
        for number in range(len(alternatives))
        if len(alternatives) > 1
    ]
    entries = sorted({(key, at) for key, at, _ in choices})
    numbers = [[n for k, a, n in choices if (k, a) == entry] for entry in entries]
    return [_waiting(book, dict(zip(entries, picked, strict=True))) for picked in product(*numbers)]


def _waiting(book: Book, picked: dict[tuple[str, int], int]) -> dict[str, list[str]]:
    return {
        key: [
            other
            for at, alternatives in enumerate(joint.needs)
            for other in alternatives[picked.get((key, at), 0)]
        ]
        for key, joint in book.joints.items()
    }


def opened(key: str, waits: dict[str, list[str]], before: frozenset[str] = frozenset()) -> set[str]:
    assert key not in before, f"{key} waits for itself"
    found = {key}
    for other in waits[key]:
        if other not in found:
            found |= opened(other, waits, before | {key})
    return found


@pytest.mark.parametrize("name", MACHINES)
def test_strip_down_table_minutes_of_the_cheapest_way(books: dict[str, Book], name: str) -> None:
    book = books[name]
    every_way = ways(book)

    for key, joint in book.joints.items():
        minutes = [
            (
                sum(book.joints[other].open for other in opened(key, waits)),
                sum(book.joints[other].close for other in opened(key, waits)),
            )
            for waits in every_way
        ]
        assert min(minutes, key=sum) == PATHS[name][joint.mark or ""], key
        assert minutes[0] == PATHS[name][joint.mark or ""], key


@pytest.mark.parametrize(("name", "joints"), [(TRACTOR, 4), (CRAWLER, 3)])
def test_some_joints_have_another_way_in(books: dict[str, Book], name: str, joints: int) -> None:
    with_choice = [
        key
        for key, joint in books[name].joints.items()
        if any(len(alternatives) > 1 for alternatives in joint.needs)
    ]

    assert len(with_choice) == joints


@pytest.mark.parametrize("name", MACHINES)
def test_no_two_things_share_a_name(books: dict[str, Book], name: str) -> None:
    book = books[name]

    keys = [*book.parts, *book.joints, *book.figures, *book.settings]
    names = [entry.name.casefold() for entry in (*book.parts.values(), *book.joints.values())]
    assert [key for key, times in Counter(keys).items() if times > 1] == []
    assert [name for name, times in Counter(names).items() if times > 1] == []


@pytest.mark.parametrize("name", MACHINES)
def test_every_cause_is_linked_to_a_sign(books: dict[str, Book], name: str) -> None:
    book = books[name]

    linked = {cause for sign in book.signs.values() for cause in sign.causes}
    assert linked == set(book.causes)
    assert all(cause.part in book.parts for cause in book.causes.values())


@pytest.mark.parametrize("name", starter_names())
def test_all_36_cautions_ship_with_every_book(books: dict[str, Book], name: str) -> None:
    cautions = books[name].cautions.values()

    marks = [caution.mark for caution in cautions if caution.mark]
    assert marks == [f"H{number:02}" for number in range(1, 37)]
    ours = {caution.name for caution in cautions if not caution.mark}
    everywhere = {
        "Cutting out a cylinder of a running diesel",
        "High-tension ignition",
        "Air or water under pressure in an engine",
    }
    tracks = {"Recoil spring of a track"} if name == "petrol-crawler" else set()
    assert ours == everywhere | tracks
    assert all(caution.defer and caution.source for caution in cautions)


@pytest.mark.parametrize("name", MACHINES)
def test_every_danger_word_of_a_joint_calls_up_a_caution(books: dict[str, Book], name: str) -> None:
    book = books[name]
    known = {word for caution in book.cautions.values() for word in caution.dangers}

    assert {word for joint in book.joints.values() for word in joint.dangers} <= known


@pytest.mark.parametrize("name", starter_names())
def test_every_gate_names_cautions_that_exist(books: dict[str, Book], name: str) -> None:
    book = books[name]

    assert list(book.gates) == ["paint", "first-start", "road", "handing-over"]
    assert {key for gate in book.gates.values() for key in gate.cautions} <= set(book.cautions)


def test_the_refusals_are_hard(books: dict[str, Book]) -> None:
    gates = books[TRACTOR].gates

    hard = {
        (gate, point)
        for gate, what in gates.items()
        for point, question in what.points.items()
        if question.hard
    }
    assert hard == {
        ("paint", "paint-kind"),
        ("paint", "air-fed"),
        ("first-start", "stop-proved"),
        ("first-start", "inlet-plate"),
        ("road", "brake-test"),
        ("road", "linings"),
    }
    assert gates["road"].points["linings"].before_closing == ("asbestos",)
    assert gates["paint"].points["air-fed"].only_if == {"paint-kind": "two-pack"}


def test_a_petrol_engine_is_not_asked_for_an_inlet_plate(books: dict[str, Book]) -> None:
    points = books[CRAWLER].gates["first-start"].points

    assert "inlet-plate" not in points
    assert points["stop-proved"].hard


@pytest.mark.parametrize("name", starter_names())
def test_old_and_new_yaml_read_a_starter_alike(name: str) -> None:
    text = starter_text(name)

    assert yaml.load(text, Loader=yaml.CSafeLoader) == read_sheet(text, name).data


def test_the_fan_drive_is_as_the_tooth_counts_say(books: dict[str, Book]) -> None:
    links = books[TRACTOR].trains["fan-drive"].links

    assert [(link.driver_teeth, link.driven_teeth, link.pitch) for link in links] == [
        (40, 80, 8),
        (80, 32, 8),
        (24, 18, 8),
    ]
    assert [link.hold.open for link in links] == [None, "crankcase-cover", "governor-side-cover"]


def test_joints_that_set_a_measure_say_which(books: dict[str, Book]) -> None:
    settles = {
        joint.mark: [settled.figure for settled in joint.settles]
        for joint in books[TRACTOR].joints.values()
        if joint.settles
    }

    assert settles == {
        "J13": ["spill-timing"],
        "J14": ["spill-timing"],
        "J22": ["governor-shaft-end-float"],
        "J25": ["fan-bevel-lash"],
        "J26": ["governor-mesh-lash"],
        "J37": ["crankshaft-end-float"],
        "J53": ["axle-end-play"],
        "J54": ["axle-end-play"],
        "J60": ["steering-free-movement"],
    }
