"""What a machine holds for a sum: which value goes where, and where each comes from."""

from collections.abc import Sequence
from datetime import timedelta
from typing import Annotated

import pytest

from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.starters import starter_text
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, Read, a_sum, declared
from shimstock.trade.sums.find import find_sum
from shimstock.trade.sums.typed import Origin, value_of, work_out
from shimstock.workshop.for_sums import found_for, work_out_for
from shimstock.workshop.refused import NotFound, Refused
from workshop.shed_book import LINER_1, LINER_2, MONDAY, TEXT

STARTER = "stand-in figure of the starter"
NO_PAGE = "stand-in figure, no page given"

DATA = """\
data:
  bore: {value: 5 3/4 in, page: 9}
  stroke: {value: 6 3/4 in}
  cylinders: {value: 2, page: 9}
  displacement: {value: 350 cu.in}
  compression-ratio: {value: "16:1", page: 10}
"""
JOINTS = """\
joints:
  strap-joint:
    name: tank to its straps
    mark: J4
    between: [cover, case]
    seals: nothing
    open: 5 min
    close: 5 min
    uses:
      - {gasket: pad, thickness: 1/16 in, page: 30}
      - {gasket: strip, thickness: 1/8 in}
    fasteners:
      - {count: 4, what: bolt, thread: 3/8-16 UNC, grade: SAE J429 grade 5, page: 31}
      - {count: 2, what: stud nut, thread: 1/2-13 UNC, torque: 55 lbf.ft}
      - {count: 3, what: strap}
  flange-joint:
    name: flange to case
    mark: J5
    between: [cover, case]
    seals: oil
    open: 5 min
    close: 5 min
    uses: [{gasket: flange gasket, thickness: 0.015 in}]
    fasteners:
      - {count: 6, what: bolt, thread: 3/8-16 UNC, grade: SAE J429 grade 5}
      - {count: 2, what: clip}
"""
TRAINS = """\
trains:
  drive:
    name: drive to the pump
    figure: end-float
    radius: 10 in
    page: 77
    links:
      - {name: first mesh, figure: end-float, driver-teeth: 20, driven-teeth: 50, pitch: 8,
         pressure-angles: [14.5, 20], hold: {what: crank}}
      - {name: second mesh, figure: end-float, driver-teeth: 25, driven-teeth: 75, pitch: 8,
         pressure-angles: [20], hold: {what: crank}}
  belt:
    name: belt to the fan
    figure: end-float
    links: [{name: belt run, figure: end-float, ratio: 2, hold: {what: crank}}]
"""
FULL = (
    TEXT.replace("joints:\n", JOINTS, 1)
    .replace("parts:\n", f"{DATA}parts:\n", 1)
    .replace("gates:\n", f"{TRAINS}gates:\n", 1)
    .replace("    of: liner\n    new:", "    of: liner\n    gives: bore\n    new:", 1)
    .replace("name: idle speed,", "name: idle speed, gives: low-idle,")
)


def _thread(text: str) -> str:
    if "UN" not in text:
        raise NotUnderstood(text, "is no thread", ("3/8-16 UNC",))
    return text


Thread = Annotated[str, Read(_thread, "3/8-16 UNC", found="thread")]


@a_sum(example="")
def bolt_sum(
    *,
    thread: Thread,
    grade: Annotated[str, Read(str, "5", found="grade")],
    count: Annotated[int, Of("", least=1, found="count")] = 1,
    share: Annotated[float, Of("")],
) -> Worked[float]:
    """A sum of the fasteners of a joint.

    share: how much of the proof load, no unit.
    """
    return Worked(1.0, Working())


@a_sum(example="")
def nut_sum(
    *, thread: Thread, torque: Annotated[float, Of("lbf.ft", found="torque")]
) -> Worked[float]:
    """A sum of a fastener that is tightened."""
    return Worked(1.0, Working())


@a_sum(example="")
def gasket_sum(
    *,
    thickness: Annotated[float, Of("length", found="gasket thickness")],
    count: Annotated[int, Of("", found="count")] = 1,
    unit: str = "in",
) -> Worked[float]:
    """A sum of a gasket."""
    return Worked(1.0, Working())


@a_sum(example="")
def mesh_sum(
    *,
    driver: Annotated[int, Of("", found="driver teeth")],
    driven: Annotated[int, Of("", found="driven teeth")],
    pitch: Annotated[float, Of("", found="pitch")] = 10,
    angle: Annotated[float, Of("deg", found="pressure angle")] = 20,
) -> Worked[float]:
    """A sum of one mesh."""
    return Worked(1.0, Working())


@a_sum(example="")
def drive_sum(
    *,
    drivers: Annotated[Sequence[int], Of("", found="driver teeth")],
    driven: Annotated[Sequence[int], Of("", found="driven teeth")],
    radius: Annotated[float, Of("in", found="end radius")],
) -> Worked[float]:
    """A sum of a whole train."""
    return Worked(1.0, Working())


@a_sum(example="")
def engine_sum(
    *,
    bore: Annotated[float, Of("in", found="bore")],
    ratio: Annotated[float, Of("", found="compression ratio")],
    speed: Annotated[float, Of("rpm", found="low idle")],
    weight: Annotated[float, Of("lb", found="weight")] = 1,
) -> Worked[float]:
    """A sum of the whole engine."""
    return Worked(1.0, Working())


@a_sum(example="")
def spread_sum(*, readings: Annotated[Sequence[float], Of("in")]) -> Worked[float]:
    """A sum of all places of one reading."""
    return Worked(1.0, Working())


@a_sum(example="")
def fits_sum(
    *, hole: Annotated[float, Of("mm")], shaft: Annotated[float, Of("mm")]
) -> Worked[float]:
    """A sum of two lengths that no book has a word for."""
    return Worked(1.0, Working())


@a_sum(example="")
def share_sum(
    *, bore: Annotated[float, Of("in", found="bore")], gap: Annotated[float, Of("mm")]
) -> Worked[float]:
    """A sum of a length that books have a word for, and one that they have none for."""
    return Worked(1.0, Working())


@a_sum(example="")
def size_sum(
    *,
    volume: Annotated[float, Of("l", found="displacement")] | None = None,
    bore: Annotated[float, Of("mm", found="bore")] | None = None,
    stroke: Annotated[float, Of("mm", found="stroke")] | None = None,
    cylinders: Annotated[int, Of("", found="cylinders")] = 1,
) -> Worked[float]:
    """A sum that takes the size of an engine in one of two ways."""
    return Worked(1.0, Working())


@a_sum(example="")
def mill_sum(
    *,
    now: Annotated[float, Of("", found="compression ratio")],
    wanted: Annotated[float, Of("", found="compression ratio")],
) -> Worked[float]:
    """A sum that looks for one thing twice."""
    return Worked(1.0, Working())


@a_sum(example="")
def angle_sum(*, angle: Annotated[float, Of("deg", found="pressure angle")]) -> Worked[float]:
    """A sum that needs the pressure angle."""
    return Worked(1.0, Working())


@a_sum(example="")
def twice_sum(
    *,
    before: Annotated[float, Of("in", found="bore")],
    after: Annotated[float, Of("in", found="bore")],
) -> Worked[float]:
    """A sum of a bore before and after."""
    return Worked(1.0, Working())


@a_sum(example="")
def rock_sum(
    *,
    radius: Annotated[float, Of("in", found="radius")],
    ratio: Annotated[float, Of("", found="end ratio")],
    meshes: Annotated[str, Read(str, "20/50, 25/75", found="meshes")],
) -> Worked[float]:
    """A sum of what follows from the teeth of a train."""
    return Worked(1.0, Working())


BOLT, NUT, GASKET = declared(bolt_sum), declared(nut_sum), declared(gasket_sum)
MESH, DRIVE, ENGINE = declared(mesh_sum), declared(drive_sum), declared(engine_sum)
ANGLE, TWICE = declared(angle_sum), declared(twice_sum)
SIZE, MILL, ROCK = declared(size_sum), declared(mill_sum), declared(rock_sum)
SPREAD, FITS, SHARE = declared(spread_sum), declared(fits_sum), declared(share_sum)


@pytest.fixture
def full(db):
    from shimstock.workshop import acts
    from shimstock.workshop.models import Machine

    acts.add_machine(slug="red", name="The red one", book_text=FULL, who="Ann", at=MONDAY)
    return Machine.objects.get(slug="red")


@pytest.fixture
def read(full):
    from shimstock.workshop import acts

    def take(figure, typed, piece="", days=0, **more):
        at = MONDAY + timedelta(days=days)
        acts.take_reading(
            machine=full, figure=figure, typed=typed, piece=piece, who="Ida", at=at, **more
        )

    return take


def wrong(machine, sum_, *where, **typed) -> str:
    with pytest.raises(Refused) as caught:
        found_for(machine, sum_, where, typed=typed)
    return str(caught.value)


def test_data_of_the_machine_need_no_naming(full):
    assert found_for(full, find_sum("displacement"), []) == {
        "bore": Origin("5 3/4 in", "book, page 9"),
        "stroke": Origin("6 3/4 in", NO_PAGE),
        "cylinders": Origin("2", "book, page 9"),
    }


def test_what_is_typed_is_not_looked_for(full):
    found = found_for(full, find_sum("displacement"), [], typed={"bore": "6 in"})

    assert set(found) == {"stroke", "cylinders"}


def test_the_sum_takes_what_was_found_and_names_its_origin(full):
    sum_ = find_sum("displacement")

    done = work_out(sum_, {"stroke": "7 in"}, found=found_for(full, sum_, []))

    assert [(each.name, each.typed, each.origin) for each in done.given] == [
        ("bore", "5 3/4 in", "book, page 9"),
        ("stroke", "7 in", "typed now"),
        ("cylinders", "2", "book, page 9"),
    ]
    assert done.results["displacement"].unit == "in3"


def test_the_newest_reading_of_what_a_figure_gives_goes_before_the_book(full, read):
    read("bore", LINER_2, "2", days=2)
    read("bore", LINER_1, "1", days=1)

    found = found_for(full, find_sum("ring-gap"), [])

    assert found["bore"] == Origin("5.7560 in", "reading 2026-03-04 by Ida (bore 2, worst of 6)")


def test_a_reading_as_finished_goes_before_one_as_found(full, read):
    read("bore", LINER_1, "1", days=1)
    read("bore", ["5.7701"] * 6, "1", stage="as finished", meant=True)

    found = found_for(full, find_sum("ring-gap"), ["bore", "1"])

    origin = "reading 2026-03-02 by Ida (bore 1, worst of 6, as finished)"
    assert found["bore"] == Origin("5.7701 in", origin)


def test_a_figure_is_named_with_the_piece_that_is_meant(full, read):
    read("bore", LINER_1, "1", days=1)
    read("bore", LINER_2, "2", days=2)

    assert found_for(full, find_sum("ring-gap"), ["F1", "1"])["bore"].text == "5.7592 in"
    assert found_for(full, find_sum("ring-gap"), ["liner bore"])["bore"].text == "5.7560 in"


def test_what_a_figure_gives_is_the_books_datum_until_it_is_read(full):
    found = found_for(full, find_sum("ring-gap"), ["bore"])

    assert found["bore"] == Origin("5 3/4 in", "book, page 9")


def test_a_figure_on_a_piece_that_was_not_read_is_its_nominal_size(full, read):
    read("bore", LINER_2, "2")

    found = found_for(full, find_sum("ring-gap"), ["bore", "1"])

    assert found["bore"] == Origin("5.7500 in", NO_PAGE)


def test_a_figure_worked_out_from_another_says_so(full, read):
    read("bore", LINER_1, "1", days=3)

    found = found_for(full, FITS, ["taper", "1"], typed={"hole": "1 in"})

    assert found["shaft"].text == "0.0060 in"
    assert found["shaft"].origin == "reading 2026-03-05 by Ida (taper 1, worked out)"


def test_a_figure_that_was_read_itself_is_not_worked_out(full, read):
    read("bore", LINER_1, "1")
    read("taper", "0.0041", "1", days=1)

    found = found_for(full, FITS, ["taper", "1"], typed={"hole": "1 in"})

    assert found["shaft"] == Origin("0.0041 in", "reading 2026-03-03 by Ida (taper 1)")


def test_all_places_of_a_reading_go_into_a_list(full, read):
    read("bore", LINER_1, "1")

    found = found_for(full, SPREAD, ["bore"])

    assert found["readings"].text == "; ".join(f"{each} in" for each in LINER_1)
    assert found["readings"].origin == "reading 2026-03-02 by Ida (bore 1, all 6)"


def test_a_figure_that_could_be_two_things_is_refused_by_naming_them(full, read):
    read("end-float", "0.006")

    assert wrong(full, FITS, "end-float") == (
        "end-float could be --hole or --shaft; type all of them but one"
    )
    found = found_for(full, FITS, ["F3"], typed={"hole": "1 mm"})
    assert found == {"shaft": Origin("0.0060 in", "reading 2026-03-02 by Ida (end-float)")}


def test_a_figure_that_was_never_read_and_has_no_one_size_is_refused(full):
    assert wrong(full, FITS, "end-float", hole="1 mm") == (
        "end float (F3) has not been read yet; read it first, or type the value"
    )


def test_a_ratio_is_given_as_a_plain_number(full, read):
    read("idle", "603")

    found = found_for(full, ENGINE, [])

    assert found["ratio"] == Origin("16", "book, page 10")
    assert found["speed"] == Origin("603 rpm", "reading 2026-03-02 by Ida (idle)")
    assert "weight" not in found


def test_a_joint_gives_what_its_only_telling_fastener_has(full):
    found = found_for(full, BOLT, ["J5"])

    assert found == {
        "thread": Origin("3/8-16 UNC", NO_PAGE),
        "grade": Origin("SAE J429 grade 5", NO_PAGE),
        "count": Origin("6", NO_PAGE),
    }


def test_thread_and_grade_are_never_of_two_fasteners(full):
    said = wrong(full, BOLT, "J4")

    assert said == "J4 has 2 kinds of fastener: bolt and stud nut; say which, such as J4 bolt"
    found = found_for(full, BOLT, ["J4", "bolts"[:-1]])
    assert (found["count"], found["thread"].text) == (Origin("4", "book, page 31"), "3/8-16 UNC")


def test_a_kind_of_fastener_is_meant_by_some_of_its_words(full):
    found = found_for(full, NUT, ["strap-joint", "stud"])

    assert found == {
        "thread": Origin("1/2-13 UNC", NO_PAGE),
        "torque": Origin("55 lbf.ft", NO_PAGE),
    }


def test_what_the_book_does_not_hold_is_named_with_the_option_to_type(full):
    said = wrong(full, BOLT, "J4", "stud nut")

    assert said.split("; ") == [
        "The book gives no grade for J4",
        "type --grade",
        "bolt-sum still needs how much of the proof load",
        "type --share",
    ]
    assert found_for(full, BOLT, ["J4", "stud nut"], typed={"grade": "8", "share": "0.7"})


def test_a_sum_that_only_lacks_what_is_always_typed_is_left_to_say_so(full):
    assert "share" not in found_for(full, BOLT, ["J5"])


def test_a_joint_that_was_not_named_is_asked_for(full):
    assert wrong(full, NUT) == (
        "No joint was named to take the thread from; name one, or type --thread; "
        "No joint was named to take the torque from; name one, or type --torque"
    )


def test_a_datum_that_is_not_there_names_the_machine(full):
    said = wrong(full, ENGINE)

    assert said == ("The book of The red one gives no low idle, and no reading does; type --speed")


def test_a_gasket_is_meant_by_its_name_where_there_are_two(full):
    assert wrong(full, GASKET, "J4") == (
        "J4 has 2 gaskets: pad and strip; say which, such as J4 pad"
    )
    found = found_for(full, GASKET, ["J4", "pad"], typed={"count": "1"})
    assert found["thickness"] == Origin("1/16 in", "book, page 30")


def test_a_train_gives_its_meshes_one_by_one_or_all(full):
    page = "book, page 77"

    assert wrong(full, MESH, "drive") == (
        "drive has 2 meshes: 1 (first mesh) and 2 (second mesh); say which, such as drive 1"
    )
    second = {"driver": Origin("25", page), "driven": Origin("75", page),
              "pitch": Origin("8", page), "angle": Origin("20 deg", page)}  # fmt: skip
    assert found_for(full, MESH, ["drive", "2"]) == second
    assert found_for(full, MESH, ["second mesh"]) == second
    assert found_for(full, DRIVE, ["drive to the pump"]) == {
        "drivers": Origin("20, 25", page),
        "driven": Origin("50, 75", page),
        "radius": Origin("10 in", page),
    }


def test_an_angle_that_only_some_meshes_have_is_asked_for(full):
    assert "drive has 2 meshes" in wrong(full, ANGLE, "drive")


def test_an_angle_that_the_book_leaves_open_is_not_taken(full):
    assert "angle" not in found_for(full, MESH, ["drive", "first"])
    assert wrong(full, ANGLE, "drive", "1") == (
        "The book leaves open whether the pressure angle of drive is 14.5 or 20 deg; type --angle"
    )
    assert wrong(full, ANGLE, "belt") == "The book gives no pressure angle for belt; type --angle"


def test_a_link_without_teeth_gives_none(full):
    assert wrong(full, MESH, "belt") == (
        "The book gives no driver teeth for belt; type --driver; "
        "The book gives no driven teeth for belt; type --driven"
    )


def test_a_thing_that_the_sum_takes_nothing_from_is_refused(full):
    assert wrong(full, find_sum("displacement"), "J5") == (
        "displacement takes nothing from J5: it looks for bore, stroke and cylinders; leave it out"
    )
    assert wrong(full, FITS, "J5") == (
        "fits-sum takes nothing from J5: its values are typed; leave it out"
    )


def test_an_unknown_name_says_what_is_near(full):
    with pytest.raises(NotFound, match="There is no joint, train or figure 'flange-jiont'"):
        found_for(full, BOLT, ["flange-jiont"])


def test_what_the_sum_cannot_read_says_where_it_stands(db):
    from shimstock.workshop import acts
    from shimstock.workshop.models import Machine

    text = FULL.replace("thread: 1/2-13 UNC", "thread: half inch", 1)
    acts.add_machine(slug="odd", name="Odd", book_text=text, who="Ann", at=MONDAY)

    said = wrong(Machine.objects.get(slug="odd"), NUT, "J4", "stud nut")

    assert said == (f"half inch is given as thread ({NO_PAGE}), but it is no thread; type --thread")


@pytest.fixture
def over(db):
    from shimstock.workshop import acts
    from shimstock.workshop.models import Machine

    text = (
        "book: ours\ntitle: Ours\nextends: two-cylinder-diesel\n"
        "data:\n  stroke: {value: 7 in, page: 9}\n  cylinders: {value: 2}\n"
        "joints:\n  timing-cover:\n    fasteners:\n"
        "      {count: 12, thread: 3/8-16 UNC, grade: SAE J429 grade 5}\n"
    )
    acts.add_machine(slug="hill", name="Hill", book_text=text, who="Ann", at=MONDAY)
    return Machine.objects.get(slug="hill")


def test_a_starters_stand_in_is_told_from_ones_own_without_a_page(over):
    assert found_for(over, find_sum("displacement"), []) == {
        "bore": Origin("5 3/4 in", STARTER),
        "stroke": Origin("7 in", "book, page 9"),
        "cylinders": Origin("2", NO_PAGE),
    }
    assert found_for(over, BOLT, ["J36"])["thread"].origin == NO_PAGE
    assert found_for(over, BOLT, ["J32"])["thread"].origin == STARTER


def test_a_machine_made_to_a_starter_itself_has_the_starters_stand_ins(db):
    from shimstock.workshop import acts
    from shimstock.workshop.models import Machine

    name = "petrol-crawler"
    acts.add_machine(slug="c", name="C", book_text=starter_text(name), book_name=name, who="Ann",
                     at=MONDAY)  # fmt: skip

    found = found_for(Machine.objects.get(slug="c"), find_sum("displacement"), [])

    assert {origin.origin for origin in found.values()} == {STARTER}


def test_a_figure_never_goes_where_something_else_is_looked_for(full, read):
    read("bore", LINER_1, "1")

    found = found_for(full, find_sum("displacement"), ["bore"], typed={"bore": "6 in"})

    assert found["stroke"] == Origin("6 3/4 in", NO_PAGE)


def test_a_figure_goes_first_where_the_book_has_no_word_for_it(full, read):
    read("end-float", "0.006")

    found = found_for(full, SHARE, ["end-float"])

    assert {name: each.text for name, each in found.items()} == {
        "bore": "5 3/4 in",
        "gap": "0.0060 in",
    }


def test_a_name_that_two_kinds_of_thing_bear_is_refused(db):
    from shimstock.workshop import acts
    from shimstock.workshop.models import Machine

    text = FULL.replace("  flange-joint:", "  drive:", 1)
    acts.add_machine(slug="two", name="Two", book_text=text, who="Ann", at=MONDAY)
    machine = Machine.objects.get(slug="two")

    assert wrong(machine, DRIVE, "drive") == (
        "'drive' names a joint and a train; type the mark or the full name"
    )
    assert found_for(machine, BOLT, ["J5"])["count"].text == "6"


def test_the_size_of_an_engine_is_said_one_way_only(full):
    assert set(found_for(full, SIZE, [])) == {"bore", "stroke", "cylinders"}
    assert set(found_for(full, SIZE, [], typed=["stroke"])) == {"bore", "cylinders"}
    assert set(found_for(full, SIZE, [], typed=["volume"])) == set()


@pytest.mark.parametrize(
    ("line", "found"),
    [
        ("  stroke: {value: 6 3/4 in}\n", {"volume"}),
        ("  cylinders: {value: 2, page: 9}\n", {"bore", "stroke"}),
    ],
)
def test_the_size_that_the_book_prints_counts_where_bore_or_stroke_is_missing(db, line, found):
    from shimstock.workshop import acts
    from shimstock.workshop.models import Machine

    text = FULL.replace(line, "", 1)
    acts.add_machine(slug="two", name="Two", book_text=text, who="Ann", at=MONDAY)

    assert set(found_for(Machine.objects.get(slug="two"), SIZE, [])) == found


def test_a_sum_is_done_with_what_is_found_and_typed(full):
    done = work_out_for(full, find_sum("displacement"), [], typed={"bore": "5 in"}, wanted=["l"])

    assert done.results["displacement"].unit == "l"
    assert [each.origin for each in done.given] == ["typed now", NO_PAGE, "book, page 9"]


def test_a_sum_that_cannot_be_done_says_what_the_book_does_not_hold(full):
    with pytest.raises(Refused) as caught:
        work_out_for(full, find_sum("torque"), ["J4", "stud"], typed={})

    nothing, why = caught.value.reasons
    assert nothing == "The book gives no grade for J4; type --grade"
    assert "grade" in why


def test_a_sum_that_cannot_be_done_though_nothing_is_missing_says_only_why(full):
    with pytest.raises(NotPossible, match="share 2 must be"):
        work_out_for(full, find_sum("torque"), ["J5"], typed={"share": "2"})


def test_one_value_goes_to_one_parameter(full):
    assert wrong(full, MILL) == "The machine's compression ratio went to --now; type --wanted"
    assert set(found_for(full, MILL, [], typed=["wanted"])) == {"now"}
    assert set(found_for(full, MILL, [], typed=["now"])) == {"wanted"}


def test_the_book_never_fills_what_a_named_figure_has_filled(full, read):
    read("bore", LINER_1, "1")

    assert wrong(full, TWICE, "bore") == "The machine's bore went to --before; type --after"


def test_what_follows_from_the_teeth_of_a_train_is_worked_out(full):
    worked = "book, page 77, worked out from its teeth"

    found = found_for(full, ROCK, ["drive", "1"])

    assert found["radius"] == Origin("3.1250 in", worked)  # 50 teeth, 8 to the inch
    assert found["ratio"] == Origin("0.33333333", worked)  # 25/75
    assert found["meshes"] == Origin("20/50", "book, page 77")
    assert found_for(full, ROCK, ["drive", "2"])["ratio"].text == "1"
    whole = found_for(full, ROCK, ["drive"], typed=["radius", "ratio"])
    assert whole["meshes"] == Origin("20/50, 25/75", "book, page 77")


def test_a_better_book_is_looked_into_at_once(full):
    from shimstock.workshop import acts

    better = FULL.replace("stroke: {value: 6 3/4 in}", "stroke: {value: 6 7/8 in, page: 9}")
    acts.change_book(machine=full, book_text=better, book_name="better.yaml", who="Ann")
    full.refresh_from_db()

    found = found_for(full, find_sum("displacement"), [])

    assert found["stroke"] == Origin("6 7/8 in", "book, page 9")


@pytest.mark.parametrize("name", ["two-cylinder-diesel", "petrol-crawler"])
def test_the_sums_read_every_thread_and_grade_of_the_starters(name):
    sum_ = find_sum("bolt-strength")
    fasteners = [
        each for joint in read_book(starter_text(name)).joints.values() for each in joint.fasteners
    ]

    for word in ("thread", "grade"):
        texts = {text for each in fasteners if (text := getattr(each, word))}
        assert len(texts) > 1
        for text in texts:
            assert value_of(sum_.input(word), text)


@pytest.mark.parametrize("name", ["two-cylinder-diesel", "petrol-crawler"])
@pytest.mark.parametrize(
    "sum_name", ["displacement", "mean-pressure", "piston-speed", "lamp-current"]
)
def test_the_sums_read_the_data_of_the_starters(name, sum_name):
    sum_, data = find_sum(sum_name), read_book(starter_text(name)).data
    asked = [one for one in sum_.inputs if one.found]

    assert asked
    for one in asked:
        assert value_of(one, data[one.found.replace(" ", "-")].text, sum_.unit) > 0
