"""The cheapest joints to open, proven: true choices only, solved exactly."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import reduce
from math import gcd
from typing import TYPE_CHECKING

from shimstock.trade.reach.fewer import Choices, choices
from shimstock.trade.reach.ladder import (
    Alternative,
    Ladder,
    Needs,
    one_after_another,
    opening_order,
)

if TYPE_CHECKING:
    from ortools.sat.python.cp_model import CpModel, IntVar


@dataclass(frozen=True)
class Cheapest:
    """The joints to open, in an order that works, and how many alternatives were weighed."""

    joints: tuple[int, ...]
    weighed: int


def cheapest(ladder: Ladder) -> Cheapest | None:
    """The way that costs least; then fewest joints; then those that stand earliest in the book.

    ladder: joints, costs and what is wanted. Two ways of the same cost and number are told apart by
    the sum of their joints' places. None where nothing leads there.
    """
    left = choices(ladder)
    if left is None:
        return None
    chosen = set(left.sure)
    if left.needs:
        chosen |= _solved(left, ladder)
    order = opening_order(ladder.needs, ladder.opened, [*chosen, ladder.goal])
    in_turn = one_after_another(ladder.needs, ladder.opened, order)
    return Cheapest(tuple(in_turn[:-1]), left.weighed)


def _solved(left: Choices, ladder: Ladder) -> set[int]:
    model = _Model(left, ladder)
    opened = ladder.opened.union(left.sure)
    while True:
        chosen = model.solve()
        waiting = chosen.difference(opening_order(left.needs, opened, chosen))
        if not waiting:
            return chosen - {ladder.goal}
        for ring in _rings(left.needs, waiting, chosen):
            model.break_ring(ring)


class _Model:
    """The choices as yes-or-no questions for the solver."""

    def __init__(self, left: Choices, ladder: Ladder) -> None:
        from ortools.sat.python import cp_model

        self._cp = cp_model
        self._model: CpModel = cp_model.CpModel()
        self._needs = left.needs
        self._goal = ladder.goal
        self._open = {joint: self._model.new_bool_var("") for joint in left.needs}
        self._whole: dict[Alternative, IntVar] = {}
        self._model.add(self._open[ladder.goal] == 1)
        for joint, entries in left.needs.items():
            for entry in entries:
                self._one_of(self._open[joint], entry)
        self._cheap(ladder)
        self._start_from(left.guess)

    def _one_of(self, if_open: IntVar, entry: Iterable[Alternative]) -> None:
        self._model.add_bool_or([if_open.negated(), *map(self._all_open, entry)])

    def _all_open(self, alternative: Alternative) -> IntVar:
        if len(alternative) == 1:
            return self._open[next(iter(alternative))]
        if alternative not in self._whole:
            whole = self._whole[alternative] = self._model.new_bool_var("")
            for joint in sorted(alternative):
                self._model.add_implication(whole, self._open[joint])
        return self._whole[alternative]

    def _cheap(self, ladder: Ladder) -> None:
        joints = [joint for joint in self._open if joint != self._goal]
        unit = reduce(gcd, (ladder.cost[joint] for joint in joints), 0) or 1
        places = sum(joints) + 1
        self._price = {
            joint: (ladder.cost[joint] // unit * (len(joints) + 1) + 1) * places + joint
            for joint in joints
        }
        self._model.minimize(sum(price * self._open[j] for j, price in self._price.items()))

    def _start_from(self, guess: Iterable[int]) -> None:
        for joint in self._price:
            self._model.add_hint(self._open[joint], joint in guess)

    def break_ring(self, ring: frozenset[int]) -> None:
        """No joint of a ring is open unless one of them is reached from outside the ring."""
        entrances = []
        for joint in sorted(ring):
            outside = [
                [alternative for alternative in entry if not alternative & ring]
                for entry in self._needs[joint]
            ]
            if all(outside):
                entrance = self._model.new_bool_var("")
                self._model.add_implication(entrance, self._open[joint])
                for entry in outside:
                    self._one_of(entrance, entry)
                entrances.append(entrance)
        for joint in sorted(ring):
            self._model.add_bool_or([self._open[joint].negated(), *entrances])

    def solve(self) -> set[int]:
        """The cheapest joints that answer what has been asked so far."""
        solver = self._cp.CpSolver()
        solver.parameters.num_workers = 1
        solver.parameters.random_seed = 1
        solver.parameters.linearization_level = 2  # tight here: 1.3 s become 0.04 s
        status = solver.solve(self._model)
        if status != self._cp.OPTIMAL:
            raise RuntimeError(f"the solver gave up: {solver.status_name(status)}")
        return {joint for joint, var in self._open.items() if solver.boolean_value(var)}


def _rings(needs: Mapping[int, Needs], waiting: set[int], chosen: set[int]) -> list[frozenset[int]]:
    """The innermost groups of chosen joints that wait only for one another."""
    holds = {
        joint: {
            other
            for entry in needs[joint]
            for alternative in entry
            if alternative <= chosen
            for other in alternative & waiting
        }
        for joint in waiting
    }
    behind = {joint: _all_behind(joint, holds) for joint in sorted(waiting)}
    rings = {
        frozenset(group) for group in behind.values() if all(behind[j] == group for j in group)
    }
    return sorted(rings, key=sorted)


def _all_behind(joint: int, holds: Mapping[int, set[int]]) -> set[int]:
    seen: set[int] = set()
    ahead = [joint]
    while ahead:
        for other in holds[ahead.pop()] - seen:
            seen.add(other)
            ahead.append(other)
    return seen
