"""A book is read whole, or everything that is wrong with it is said at once."""

import json

import pytest

from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.schema import schema
from shimstock.trade.machine.sheet import BookErrors

SMALL = """\
book: shed-engine
title: Shed engine (invented)
prints: inch
parts:
  case: {name: Main case}
  cover: {name: Side cover, sits-on: case}
  pump: {name: Pump, sits-on: case, each: [left, right], set: pumps}
joints:
  hood: {name: hood to case, between: [cover, case], seals: nothing, open: 10 min, close: 15 min}
  side:
    name: side cover to case
    between: [cover, case]
    seals: oil
    on-paint: yes
    after: {any-of: [[hood], [panel, strap]]}
    open: 25 min
    close: 50 min
    reaches: [pump]
    uses: [{gasket: side gasket, thickness: 0.015 in}]
    fasteners: {count: 12, what: bolt, thread: 3/8-16 UNC, torque: 24 lbf.ft}
  panel: {name: panel, between: [cover, case], seals: nothing, open: 5 min, close: 5 min}
  strap: {name: strap, between: [cover, case], seals: nothing, open: 5, close: 5}
sets:
  pumps: {same: [maker], proof: bench sheet}
figures:
  bore:
    name: bore
    of: pump
    new: 6.1250 .. 6.1260 in
    limit: max 6.1350 in
    at: {depths: [top, bottom], across: [thrust, pin]}
    sizes: [+0.020 in, +0.040 in]
    page: 41
  gap: {name: gap, of: cover, new: 0.2 .. 0.3 mm}
settings:
  idle: {name: idle speed, of: pump, new: 580 .. 620 rpm}
"""


def faults_of(text: str) -> list[str]:
    with pytest.raises(BookErrors) as caught:
        read_book(text, "shed.yaml")
    return [str(problem) for problem in caught.value.problems]


def line_with(text: str, words: str) -> int:
    return next(n for n, line in enumerate(text.splitlines(), 1) if words in line)


def test_a_small_book_is_read_as_written():
    book = read_book(SMALL)

    side = book.joints["side"]
    assert side.needs == ((("hood",), ("panel", "strap")),)
    assert (side.open, side.close, side.on_paint) == (25, 50, True)
    assert side.uses[0].thickness.value == 0.015 and side.uses[0].thickness.unit == "in"
    assert side.fasteners[0].torque.value == 24
    assert book.parts["pump"].instances == ("left", "right")
    bore = book.figures["bore"]
    assert (bore.new.low, bore.new.high, bore.allowed.high) == (6.125, 6.126, 6.135)
    assert bore.at.labels == ("thrust top", "thrust bottom", "pin top", "pin bottom")
    assert [size.value for size in bore.sizes] == [0.02, 0.04]
    assert book.settings["idle"].kind == "setting"


def test_a_figure_is_a_stand_in_until_its_page_is_given():
    book = read_book(SMALL)

    assert not book.figures["bore"].stand_in
    assert book.figures["gap"].stand_in


def test_words_that_old_yaml_takes_for_truth_stay_words():
    book = read_book(SMALL.replace("name: Side cover", "name: off"))

    assert book.parts["cover"].name == "off"


def test_all_faults_are_told_at_once_with_their_lines():
    broken = (
        SMALL.replace("sits-on: case, each", "sits-on: cases, each")
        .replace("open: 25 min", "open: 25 psi")
        .replace("seals: oil", "seals: oil and water")
        .replace("max 6.1350 in", "6.1350 in")
        .replace("    on-paint: yes", "    on-pain: yes")
    )

    faults = faults_of(broken)

    lines = [int(fault.split(":")[1]) for fault in faults]
    marks = ("sits-on: cases", "seals: oil and", "on-pain:", "25 psi", "limit: 6.1350")
    assert lines == [line_with(broken, mark) for mark in marks]
    told = "\n".join(faults)
    assert "'cases'" in told and "did you mean 'case'?" in told
    assert "25 psi" in told and "pressure" in told
    assert "oil and water" in told
    assert "on-pain" in told and "did you mean 'on-paint'?" in told


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("after: {any-of: [[hood], [panel, strap]]}", "after: [hod]", "did you mean 'hood'?"),
        ("reaches: [pump]", "reaches: [pmp]", "did you mean 'pump'?"),
        ("set: pumps}", "set: pump}", "did you mean 'pumps'?"),
        ("limit: max 6.1350 in", "limit: max 6.1255 in", "inside the new range"),
        ("new: 580 .. 620 rpm", "new: 580 .. 620 rpm, nominal: 5 in", "but the figure is measured"),
        ("limit: max 6.1350 in", "limit: [max 6.1350 in, max 6.2 in]", "twice on one side"),
        ("  idle:", "  gap:", "also among the figures"),
        ("  hood:", "  Hood Top:", "cannot be typed easily"),
        ("  strap:", "  case:", "a part and of a joint"),
        ("  gap:", "  bore:", "stands twice"),
        ("thickness: 0.015 in", "thickness: 0.015", "has no unit"),
        ("name: idle speed, of: pump", "name: idle speed", "is missing"),
        ("new: 0.2 .. 0.3 mm", "page: 3", "needs new, limit or at least unit"),
    ],
)
def test_each_fault_says_where_what_and_what_would_do(old, new, says):
    text = SMALL.replace(old, new, 1)

    faults = faults_of(text)

    line = max(n for n, row in enumerate(text.splitlines(), 1) if new in row)
    assert any(f"shed.yaml:{line}:" in fault and says in fault for fault in faults), faults


def test_joints_that_wait_for_each_other_are_found():
    ring = SMALL.replace("panel: {name: panel,", "panel: {name: panel, after: [side],").replace(
        "hood: {name: hood to case,", "hood: {name: hood to case, after: [side],"
    )

    faults = faults_of(ring)

    assert any("can never be opened" in fault for fault in faults)


def test_a_ring_that_an_alternative_breaks_is_no_fault():
    ring = SMALL.replace("panel: {name: panel,", "panel: {name: panel, after: [side],")

    assert read_book(ring).joints["panel"].needs == ((("side",),),)


def test_text_that_is_not_yaml_names_the_line():
    assert "shed.yaml:4" in faults_of("book: a\ntitle: b\nparts:\n  case: {name: x\n")[0]


def test_an_unknown_starter_names_those_there_are():
    assert "petrol-crawler" in faults_of("book: a\ntitle: b\nextends: two-stroke\n")[0]


def test_the_published_format_is_json_schema_with_hyphens():
    described = schema()

    json.dumps(described)
    joint = described["$defs"]["Joint"]["properties"]
    assert {"on-paint", "after", "uses", "open"} <= joint.keys()
    assert described["additionalProperties"] is False


def test_starters_may_be_taken_from_elsewhere_than_the_program():
    kept = {"kept-only-here": SMALL}
    text = "book: ours\ntitle: Ours\nextends: kept-only-here\n"

    book = read_book(text, starter=kept.__getitem__, names=lambda: kept)

    assert book.joints == read_book(SMALL).joints
    with pytest.raises(BookErrors, match="is not a starter; one of kept-only-here would do"):
        read_book("book: ours\nextends: nothing\n", starter=kept.__getitem__, names=lambda: kept)
