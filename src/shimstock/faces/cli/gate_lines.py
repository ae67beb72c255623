"""Gates as lines: what blocks each, in working order, and how many joints are seen dry."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.shown import Caution, Heading, Shown, Table
from shimstock.workshop.looking import DEFERS, minutes

if TYPE_CHECKING:
    from shimstock.trade.reach.gates import GateView
    from shimstock.workshop.looking import Seen


def gates_data(seen: Seen, keys: list[str] | None = None) -> list[dict[str, Any]]:
    """Gates as plain values: those named, else all."""
    from shimstock.trade.reach.gates import gate

    return [_data(seen, gate(seen.now, key)) for key in keys or seen.book.gates]


def gates_shown(gates: list[dict[str, Any]]) -> list[Shown]:
    """Every gate in a line."""
    rows = [
        (each["name"], _word(each), _counted(each), str(len(each["open"])),
         str(each["settled"]), str(each["as_they_came"]), minutes(each["minutes"]))
        for each in gates
    ]  # fmt: skip
    columns = ("gate", "stands", "dry", "block", "settled", "as they came", "minutes foreseen")
    dry = "Dry: leak-checked or chalk-dry. As they came: not looked at since booked in."
    return [Heading("Gates"), Table(columns, rows, frozenset(columns[3:6])), dry]


def gate_shown(each: dict[str, Any]) -> list[Shown]:
    """One gate with every point that is open, in working order."""
    rows = [
        (str(n), point["what"], _minutes(point), _how(point))
        for n, point in enumerate(each["open"], start=1)
    ]
    columns = ("", "what stands against it", "min", "what would do")
    table = [Table(columns, rows, frozenset({"", "min"}))] if rows else []
    cautions: list[Shown] = [
        Caution(due["name"], (due["do"], due["never"])) for due in each["cautions"]
    ]
    head: list[Shown] = [Heading(f"{each['name']}: {_word(each)}"), f"{each['says']}."]
    head += [each["run_first"]] if each["run_first"] else []
    return [*head, *([DEFERS, *cautions] if cautions else []), *table, *_rules(each)]


def _data(seen: Seen, view: GateView) -> dict[str, Any]:
    return {
        "gate": view.key,
        "name": view.name,
        "passed": view.key in seen.now.passed,
        "may_be_passed": view.may_be_passed,
        "says": view.says,
        "open": [
            {"key": point.key, "kind": point.kind, "where": point.where, "what": point.what,
             "minutes": point.minutes, "hard": point.hard, "would_do": point.would_do}
            for point in view.open_points
        ],
        "settled": view.settled,
        "as_they_came": view.as_they_came,
        "dry": view.dry,
        "on_paint": view.on_paint,
        "minutes": view.minutes,
        "run_first": view.run_first,
        "cautions": [
            {"name": due.caution.name, "do": due.caution.do, "never": due.caution.never}
            for due in view.cautions
        ],
    }  # fmt: skip


def _word(each: dict[str, Any]) -> str:
    from shimstock.workshop.passing import gate_word

    return gate_word(passed=each["passed"], may_be_passed=each["may_be_passed"])


def _counted(each: dict[str, Any]) -> str:
    return f"{each['dry']} of {each['on_paint']}" if each["on_paint"] else ""


def _minutes(point: dict[str, Any]) -> str:
    return f"{point['minutes']:g}" if point["minutes"] else ""


def _how(point: dict[str, Any]) -> str:
    how = f"{point['would_do']}{' (must)' if point['hard'] else ''}"
    if point["kind"] == "torque":
        return f"{how} [close {point['where']} --torqued]"
    return f"{how} [{point['key']}]" if point["kind"] == "question" else how


def _rules(each: dict[str, Any]) -> list[Shown]:
    hard = any(point["hard"] for point in each["open"])
    return ["(must): no reason that is written down can replace it."] if hard else []
