"""From a network, what was told and the checks, to the arrays that looking ahead works on."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from math import erf, sqrt
from typing import TYPE_CHECKING

from shimstock.trade.faults.ahead import Field, Point
from shimstock.trade.faults.network import Check, Finding, Network, Told
from shimstock.trade.faults.posed import Shown, pose
from shimstock.trade.faults.possible import Possible

if TYPE_CHECKING:
    from shimstock.trade.faults.possible import Floats

AT_LEAST = 0.01
"""Minutes that a check is taken to last at least, so that there is a chance for each minute."""
TOLD_AT_ONCE = 3
"""Of a check that tells more findings than this, only so many are looked ahead over."""
AS_GOOD = 0.5
"""How often a cause that is there and could have brought on what was seen ends the search, though
another brought it on: nobody can tell the two apart before it is put right. From our own games."""


def start(
    network: Network,
    told: Told,
    machines: Possible,
    checks: Mapping[str, Check],
    joints: Mapping[str, float],
    open_now: frozenset[str],
    about: Collection[str] | None = None,
    found: Collection[str] = (),
) -> Point:
    """The point at which a search stands before the next check; about, found: as in `sought`."""
    import numpy as np

    brought = sought(network, told, machines, about, found)
    names = list(joints)
    field = Field(
        finds=_columns([_finds(network, machines, brought, each) for each in checks.values()]),
        minutes=np.array([max(each.minutes, AT_LEAST) for each in checks.values()]),
        needs=np.array(
            [[name in each.joints for name in names] for each in checks.values()], dtype=bool
        ).reshape(len(checks), len(names)),
        opening=np.array([joints[name] for name in names], dtype=float),
        tells=[_tells(network, told, machines, each) for each in checks.values()],
    )
    return Point(
        field=field,
        weight=machines.weight,
        alive=np.ones(len(machines.weight)),
        done=np.zeros(len(checks), dtype=bool),
        open_now=np.array([name in open_now for name in names], dtype=bool),
    )


def sought(
    network: Network,
    told: Told,
    machines: Possible,
    about: Collection[str] | None = None,
    found: Collection[str] = (),
) -> dict[str, Floats]:
    """For each cause not settled, the chance in each machine that finding it ends the search.

    about: as in `brought_on`. found: causes that a check showed, beside those told as confirmed.
    Where one of them could have brought on what was seen and the search goes on all the same, only
    what did bring it on ends it.
    """
    brought = brought_on(network, told, machines, about)
    could = {
        cause: machines.there[:, machines.causes.index(cause)] * (1 - unshown)
        for cause, unshown in _unshown(network, told, machines, about).items()
    }
    confirmed = {cause for cause, there in told.causes.items() if there}
    if could.keys() & confirmed.union(found):
        return brought
    return {
        cause: (1 - AS_GOOD) * did + AS_GOOD * could.get(cause, 0.0)
        for cause, did in brought.items()
    }


def brought_on(
    network: Network, told: Told, machines: Possible, about: Collection[str] | None = None
) -> dict[str, Floats]:
    """For each cause not settled, the chance in each machine that it brought on what was seen.

    about: the findings whose causes are looked for; without it, all that were seen.
    """
    import numpy as np

    not_it: dict[str, Floats] = {
        cause: np.ones(len(machines.weight))
        for cause in machines.causes
        if cause not in told.causes
    }
    for shown, shows, truly in _seen(network, told, machines, about):
        for cause in not_it.keys() & shown.weights.keys():
            not_it[cause] *= 1 - np.minimum(shown.weights[cause] / shows, 1) * truly
    return {
        cause: machines.there[:, machines.causes.index(cause)] * (1 - each)
        for cause, each in not_it.items()
    }


def _unshown(
    network: Network, told: Told, machines: Possible, about: Collection[str] | None
) -> dict[str, Floats]:
    """By cause, the chance in each machine that nothing shows that it could have brought on."""
    unshown: dict[str, Floats] = {}
    for shown, _, truly in _seen(network, told, machines, about):
        for cause, weight in shown.weights.items():
            if weight and cause in machines.causes:
                unshown[cause] = unshown.get(cause, 1.0) * (1 - truly)
    return unshown


def _seen(
    network: Network, told: Told, machines: Possible, about: Collection[str] | None
) -> Iterator[tuple[Shown, Floats, Floats]]:
    """What was seen and is asked about, and in each machine its chance to show, before and after.

    After: with what was told of it, which for a number is less than 1.
    """
    import numpy as np

    for key, shown in pose(network, told).shown.items():
        if shown.if_so > shown.if_not and (about is None or key in about):
            shows = np.maximum(1 - machines.quiet(shown.leak, shown.weights), 1e-300)
            so = shown.if_so * shows
            yield shown, shows, so / (so + shown.if_not * (1 - shows))


def _columns(columns: list[Floats]) -> Floats:
    import numpy as np

    return np.stack(columns, axis=1)


def _finds(
    network: Network, machines: Possible, brought: Mapping[str, Floats], check: Check
) -> Floats:
    import numpy as np

    missed: Floats = np.ones(len(machines.weight))
    for cause in check.confirms:
        if cause in brought:
            missed *= 1 - brought[cause] * _sureness(network, check, cause)
    return 1 - missed


def _sureness(network: Network, check: Check, cause: str) -> float:
    """How often a check shows a cause that is there; always, where it gives no finding of it."""
    shown = [
        1 - (1 - network.findings[key].leak) * (1 - network.findings[key].weights[cause])
        for key in check.gives
        if cause in network.findings[key].weights
    ]
    return max(shown, default=1.0)


def _tells(network: Network, told: Told, machines: Possible, check: Check) -> list[Floats]:
    """What a check tells besides settling causes: the chance in each machine that it shows."""
    told_here = []
    for key in check.gives:
        finding = network.findings[key]
        if key in told.findings or set(finding.weights) <= set(check.confirms):
            continue
        if set(finding.weights) & set(machines.causes):
            told_here.append(shows_in(machines, finding))
    return told_here[:TOLD_AT_ONCE]


def shows_in(machines: Possible, finding: Finding) -> Floats:
    """For each machine, the chance that a finding is called seen.

    One that is read as a number is called seen on that side of the point between the two bells,
    as far from each in its own deviations, on which the bell of a fault lies.
    """
    shows = 1 - machines.quiet(finding.leak, dict(finding.weights))
    if finding.absent is None or finding.present is None:
        return shows
    apart = abs(finding.present.mean - finding.absent.mean)
    wrong = _beyond(apart / (finding.absent.deviation + finding.present.deviation))
    return shows * (1 - wrong) + (1 - shows) * wrong


def _beyond(deviations: float) -> float:
    return 0.5 * (1 - erf(deviations / sqrt(2)))


def still_open(told: Told, checks: Mapping[str, Check]) -> dict[str, Check]:
    """The checks that can still tell something."""
    return {key: check for key, check in checks.items() if _can_tell(told, check)}


def _can_tell(told: Told, check: Check) -> bool:
    if check.gives:
        return any(key not in told.findings for key in check.gives)
    return any(cause not in told.causes for cause in check.confirms)
