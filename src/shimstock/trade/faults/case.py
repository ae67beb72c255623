"""A fault case in the neutral form: read, ranked, and the next check named."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from shimstock.trade.faults.case_form import CaseErrors, CaseFault, JsonObject, misfits, shown
from shimstock.trade.faults.case_names import at_odds
from shimstock.trade.faults.case_schema import NOT_LOOKED, SEEN, case_schema
from shimstock.trade.faults.network import Check, Finding, Network, Spread, Told
from shimstock.trade.faults.posed import pose
from shimstock.trade.faults.ranking import Ranking, rank
from shimstock.trade.faults.search import by_chance_a_minute, next_checks
from shimstock.trade.faults.why import suspected

MOST_BYTES = 5_000_000


@dataclass(frozen=True)
class Case:
    """What a case file says.

    checks: each with all the joints that must be open for it. joints: minutes of each.
    told: what was observed, and reported where it was not observed. complaint: the findings that
    were reported as seen, whose causes are looked for; empty where none was, and then the causes of
    all that was observed are.
    """

    network: Network
    checks: Mapping[str, Check]
    joints: Mapping[str, float]
    told: Told
    open_now: frozenset[str] = frozenset()
    complaint: frozenset[str] = frozenset()

    @property
    def about(self) -> frozenset[str] | None:
        """The findings of the complaint that still stand; None where there are none."""
        return frozenset(key for key in self.complaint if self.told.findings[key]) or None

    def minutes(self, check: str) -> float:
        """Minutes of a check, with those of the joints that are still closed."""
        closed = self.checks[check].joints - self.open_now
        return self.checks[check].minutes + sum(self.joints[joint] for joint in sorted(closed))


@dataclass(frozen=True)
class NextCheck:
    """The check to do next; minutes: with opening. expected: until the cause is found."""

    check: str
    minutes: float
    expected: float | None = None


@dataclass(frozen=True)
class CaseAnswer:
    """How likely each cause is, and what to check next; None where nothing is left to check."""

    ranking: Ranking
    next: NextCheck | None


def answer(case: Case) -> CaseAnswer:
    """Rank all causes of a case and name its next check. Raises CannotBe as `rank` does."""
    ranking = rank(case.network, case.told)
    return CaseAnswer(ranking, next_check(case, ranking))


def next_check(case: Case, ranking: Ranking) -> NextCheck | None:
    """The check worth doing next, among those that can still tell something.

    Where looking ahead sees nothing left to find, the checks of causes that could have brought on
    what was seen go on by their chance a minute.
    """
    left = offered(case)
    search = next_checks(
        case.network,
        case.told,
        left,
        case.joints,
        case.open_now,
        about=case.about,
        found=_found(case),
    )
    if search.offers:
        first = search.offers[0]
        return NextCheck(first.check, case.minutes(first.check), first.expected)
    suspects = suspected(case.network, case.told, case.about)
    order = by_chance_a_minute(ranking, left, case.joints, case.open_now, suspects)
    return NextCheck(order[0][0], case.minutes(order[0][0])) if order else None


def offered(case: Case) -> dict[str, Check]:
    """The checks that can still tell something of what was seen.

    One whose findings are all known is over; so is one whose causes were all looked at.
    """
    settled, tied = _settled(case), _tied(case)
    return {
        key: check
        for key, check in case.checks.items()
        if set(check.gives) - case.told.findings.keys()
        if not check.confirms or set(check.confirms) - settled
        if tied & _touched(case, check)
    }


def _touched(case: Case, check: Check) -> set[str]:
    """The causes that a check settles or tells something of."""
    told = (case.network.findings[key].weights for key in check.gives)
    return set(check.confirms).union(*told)


def _tied(case: Case) -> set[str]:
    """The causes that what was seen or read, or an exclusion, ties together."""
    posed = pose(case.network, case.told)
    return set().union(*(each.weights for each in posed.shown.values()), *posed.exclusive)


def _settled(case: Case) -> set[str]:
    """The causes that were looked at: a finding that shows them, and them alone, is known."""
    return {cause for _, causes in _looked_at(case) for cause in causes}


def _found(case: Case) -> set[str]:
    """The causes that were looked at and are there."""
    shown = pose(case.network, case.told).shown
    return {
        cause
        for key, causes in _looked_at(case)
        if len(causes) == 1 and key in shown and shown[key].if_so > shown[key].if_not
        for cause in causes
    }


def _looked_at(case: Case) -> Iterator[tuple[str, set[str]]]:
    """The findings known that show causes which a check settles, and them alone; the causes."""
    for check in case.checks.values():
        for key in case.told.findings.keys() & check.gives:
            causes = set(case.network.findings[key].weights)
            if causes <= set(check.confirms):
                yield key, causes


def read_case(raw: bytes) -> Case:
    """Read a case file.

    raw: JSON as it came from the file. Raises CaseErrors with everything that is wrong in it.
    """
    data = _parsed(raw)
    faults = list(misfits(data, case_schema()))
    if isinstance(data, dict):
        faults += at_odds(data)
    if faults:
        raise CaseErrors(faults)
    return _case(data)


def _parsed(raw: bytes) -> Any:
    """The file's values, all numbers as floats."""
    if len(raw) > MOST_BYTES:
        would = f"up to {MOST_BYTES // 1_000_000} MB would do; is it a case at all?"
        raise _unread(f"{len(raw) / 1e6:.1f} MB or more", "is too large", would)
    try:
        return json.loads(raw, parse_int=float, object_pairs_hook=JsonObject)
    except json.JSONDecodeError as error:
        line = error.doc.splitlines()[error.lineno - 1 : error.lineno]
        found = shown(line[0].strip()) if line else "nothing"
        wrong = f"is not JSON: {error.msg} at line {error.lineno}, column {error.colno}"
        raise _unread(found, wrong, "look at its commas, quotes and brackets") from None
    except UnicodeDecodeError:
        raise _unread("", "is not plain text", "save it as UTF-8") from None
    except RecursionError:
        raise _unread("", "is nested too deep", "no case needs brackets within hundreds") from None


def _unread(found: str, wrong: str, would: str) -> CaseErrors:
    return CaseErrors([CaseFault("$", found, wrong, would)])


def _case(data: dict[str, Any]) -> Case:
    """Take over a file in which nothing is wrong."""
    causes = {each["id"]: each["prior"] for each in data["causes"]}
    findings = {each["id"]: _finding(each) for each in data["findings"]}
    exclusive = tuple(tuple(group) for group in data.get("exclusive", ()))
    reported = {
        key: said == SEEN for key, said in data.get("reported", {}).items() if said != NOT_LOOKED
    }
    needs = {each["id"]: each.get("needs", ()) for each in data.get("joints", ())}
    return Case(
        network=Network(causes, findings, exclusive),
        checks={each["id"]: _check(each, needs) for each in data.get("checks", ())},
        joints={each["id"]: each["minutes"] for each in data.get("joints", ())},
        told=Told(reported | data.get("observed", {})),
        open_now=frozenset(data.get("open", ())),
        complaint=frozenset(key for key, seen in reported.items() if seen),
    )


def _finding(given: Mapping[str, Any]) -> Finding:
    reading = given.get("reading")
    if reading is None:
        return Finding(given["leak"], given["causes"])
    absent, present = (Spread(*reading[key]) for key in ("absent", "present"))
    return Finding(given["leak"], given["causes"], absent, present)


def _check(given: Mapping[str, Any], needs: Mapping[str, Iterable[str]]) -> Check:
    return Check(
        minutes=given["minutes"],
        gives=tuple(dict.fromkeys(given.get("gives", ()))),
        confirms=tuple(dict.fromkeys(given.get("confirms", ()))),
        joints=all_needed(given.get("joints", ()), needs),
    )


def all_needed(joints: Iterable[str], needs: Mapping[str, Iterable[str]]) -> frozenset[str]:
    """Joints with all that must be open before them.

    >>> sorted(all_needed(["sump"], {"sump": ["guard"], "guard": ["step"], "step": []}))
    ['guard', 'step', 'sump']
    """
    found: set[str] = set()
    left = list(joints)
    while left:
        joint = left.pop()
        if joint not in found:
            found.add(joint)
            left += needs[joint]
    return frozenset(found)
