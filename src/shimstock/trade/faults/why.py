"""Which of the things told speak for a cause and which against, and what would change the order."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from math import inf, log

from shimstock.trade.faults.network import CannotBe, Network, Told
from shimstock.trade.faults.posed import pose
from shimstock.trade.faults.ranking import AT_ITS_PRIOR, Ranking, rank
from shimstock.trade.faults.side_by_side import chances_of_each

STRONGLY, PLAINLY = 10.0, 3.0
"""From these factors on the odds something speaks strongly, or simply, for or against a cause.

Source: the grades of Jeffreys, Theory of Probability, appendix B (3.2, 10, …), rounded; from
memory.
"""
MOST, LEAST = 1000.0, 0.001
"""Factors past these are told as such: nobody means more."""
SURE = 1e-12
"""Odds are taken no nearer to certainty than this."""
AS_LIKELY = 1e-9
"""Causes whose chances differ by less are as likely as each other: their order is by name only."""


@dataclass(frozen=True)
class Speaks:
    """What one thing that was told does for a cause.

    told: the finding or the other cause. said: as it was told. factor: on the odds of the cause,
    all else as told; below 1 it speaks against. direct: whether the cause brings it on. explains:
    findings seen that the cause would explain, and that this cause, or one that this finding points
    to, would explain as well. excludes: whether the two causes cannot be there together. settles:
    whether it is the cause itself, called there or not.
    """

    told: str
    said: bool | float
    is_cause: bool
    factor: float
    direct: bool = False
    explains: tuple[str, ...] = ()
    excludes: bool = False
    settles: bool = False

    @property
    def grade(self) -> str:
        """How it speaks, in plain words."""
        factor = max(self.factor, 1 / self.factor if self.factor else inf)
        if factor < AT_ITS_PRIOR:
            return "says nothing"
        side = "for" if self.factor > 1 else "against"
        if factor >= STRONGLY:
            return f"speaks strongly {side}"
        return f"speaks {side}" if factor >= PLAINLY else f"speaks weakly {side}"

    @property
    def nothing(self) -> bool:
        """Whether it says nothing."""
        return self.grade == "says nothing"


@dataclass(frozen=True)
class Why:
    """What stands behind the chance of a cause.

    prior: before anything was told. speaks: the strongest first.
    """

    cause: str
    prior: float
    chance: float
    speaks: tuple[Speaks, ...]


@dataclass(frozen=True)
class Change:
    """A result that would put another cause first.

    asked: the finding looked for, or the cause that is first now and would be cleared. seen:
    whether it would be seen. chance: of that result. first: the likeliest cause then; empty where
    nothing would be left that anything speaks for.
    """

    asked: str
    is_cause: bool
    seen: bool
    chance: float
    first: str


def why(network: Network, told: Told, cause: str) -> Why:
    """Say what each thing that was told does for a cause, by leaving it out.

    A confirmed cause that already explains a sign speaks against the others that would explain it.
    What all the rest cannot be without has the largest factor there is, for every cause. Factors do
    not multiply to the whole: signs that tell the same count once between them.
    Raises CannotBe as `rank` does, and for a cause that is not in the network.

    >>> from shimstock.trade.faults.network import Finding
    >>> rocks = Finding(0.01, {"hub": 0.4, "gear": 0.8})
    >>> network = Network({"hub": 0.03, "gear": 0.03}, {"rocks": rocks})
    >>> told = Told({"rocks": True}, {"hub": True})
    >>> for each in why(network, told, "gear").speaks:
    ...     print(in_words(each, {"rocks": "fan rocks", "hub": "loose hub"}))
    loose hub, confirmed: speaks strongly against; it explains already: fan rocks
    fan rocks, seen: speaks weakly for
    """
    return whys(network, told, [cause])[cause]


def whys(network: Network, told: Told, causes: Iterable[str]) -> dict[str, Why]:
    """The same for several causes at once: each thing told is left out only once for all of them.

    Raises CannotBe as `why` does.
    """
    causes = list(causes)
    for cause in causes:
        if cause not in network.causes:
            raise CannotBe(f"there is no cause {cause!r} here")
    whole = rank(network, told)
    shown = _shown(network, told)
    one_less = list(_one_less(told))
    ranked = _each_ranked(network, [less for _, _, less in one_less])
    found = {}
    for cause in causes:
        speaks = [
            Speaks(
                told=key,
                said=_said(told, key, is_cause),
                is_cause=is_cause,
                factor=_odds(whole, cause) / _odds(less, cause) if less else 1 / SURE,
                direct=not is_cause and cause in _brought_on_by(network, key),
                explains=_explains(network, shown, key, is_cause, cause),
                excludes=is_cause and _exclude(network, key, cause),
                settles=is_cause and key == cause,
            )
            for (key, is_cause, _), less in zip(one_less, ranked, strict=True)
        ]
        speaks.sort(key=lambda each: (-abs(log(each.factor)), each.told))
        found[cause] = Why(cause, network.causes[cause], whole.chances[cause], tuple(speaks))
    return found


def in_words(speaks: Speaks, names: Mapping[str, str]) -> str:
    """One line for a person; names: of findings and causes, by their keys."""
    name = f"{names[speaks.told]}, {_as_told(speaks)}"
    if speaks.settles:
        return f"{name}: that settles it"
    line = f"{name}: {speaks.grade}"
    if speaks.nothing or speaks.direct:
        return line
    if speaks.excludes and speaks.said:
        return f"{line}; the two cannot be there together"
    if not speaks.explains:
        return line
    return f"{line}; {_how(speaks)}: {', '.join(names[key] for key in speaks.explains)}"


def factor_in_words(factor: float) -> str:
    """A factor on the odds as people read it: two digits, and past a thousand no number.

    >>> factor_in_words(4.04), factor_in_words(160.0), factor_in_words(0.0123)
    ('×4', '×160', '×0.012')
    >>> factor_in_words(6.9e11), factor_in_words(2.18e-11)
    ('×1000 or more', 'less than ×0.001')
    """
    if factor >= MOST:
        return "×1000 or more"
    return "less than ×0.001" if factor < LEAST else f"×{float(f'{factor:.2g}'):g}"


def what_would_change(
    network: Network,
    told: Told,
    askable: Iterable[str],
    about: Collection[str] | None = None,
) -> tuple[Change, ...]:
    """Which results would put another cause first, the most likely result first.

    Only causes count that would explain something that was seen and are not settled; a second fault
    that shows elsewhere changes nothing. askable: findings that could be looked for; those that
    were told are passed over. To clear the cause that is first now counts too. about: the findings
    whose causes are looked for; without it, all that were seen.
    Raises CannotBe as `rank` does, and for a finding that is not in the network.
    """
    suspects = suspected(network, told, about)
    now = rank(network, told)
    first = _first(now, suspects)
    if not first:
        return ()
    asked = [key for key in askable if key not in told.findings]
    if unknown := [key for key in asked if key not in network.findings]:
        raise CannotBe(f"there is no finding {unknown[0]!r} here")
    cleared, *looked_at = _each_ranked(
        network,
        [
            replace(told, causes={**told.causes, first: False}),
            *(_with(told, key, seen) for key in asked for seen in (True, False)),
        ],
    )
    found = []
    if cleared:
        chance = 1 - now.chances[first]
        found.append(Change(first, True, False, chance, _first(cleared, suspects - {first})))
    for key, seen, not_seen in zip(asked, looked_at[::2], looked_at[1::2], strict=True):
        found += _if_looked_at(now, key, {True: seen, False: not_seen}, suspects)
    return tuple(sorted(found, key=lambda each: (-each.chance, each.asked, each.seen)))


def _one_less(told: Told) -> Iterator[tuple[str, bool, Told]]:
    """Each thing that was told, whether it is a cause, and all the rest without it."""
    for key in told.findings:
        rest = {other: said for other, said in told.findings.items() if other != key}
        yield key, False, replace(told, findings=rest)
    for key in told.causes:
        settled = {other: said for other, said in told.causes.items() if other != key}
        yield key, True, replace(told, causes=settled)


def _with(told: Told, key: str, seen: bool) -> Told:
    return replace(told, findings={**told.findings, key: seen})


def _each_ranked(network: Network, told: list[Told]) -> list[Ranking | None]:
    """The ranking of each of several things told; None for what cannot be.

    Worked out side by side where there is room for it; then the causes are in no order.
    """
    at_once = chances_of_each(network, told)
    if at_once is None:
        return [_ranked(network, each) for each in told]
    return [
        Ranking({cause: float(rows[n]) for cause, rows in at_once.items()}, network.causes)
        for n in range(len(told))
    ]


def _said(told: Told, key: str, is_cause: bool) -> bool | float:
    return told.causes[key] if is_cause else told.findings[key]


def _odds(ranking: Ranking, cause: str) -> float:
    nearest = max(SURE, ranking.error)
    chance = min(max(ranking.chances[cause], nearest), 1 - nearest)
    return chance / (1 - chance)


def _shown(network: Network, told: Told) -> dict[str, set[str]]:
    """The findings that were seen, each with the causes that bring it on."""
    shown = pose(network, told).shown
    return {
        key: _brought_on_by(network, key) for key, seen in shown.items() if seen.if_so > seen.if_not
    }


def _explains(
    network: Network, shown: Mapping[str, set[str]], key: str, is_cause: bool, cause: str
) -> tuple[str, ...]:
    """The findings seen that a cause would explain, and with it the cause told or pointed to."""
    others = {key} if is_cause else _brought_on_by(network, key)
    return tuple(
        name
        for name, brought in shown.items()
        if name != key and cause in brought and (others - {cause}) & brought
    )


def _brought_on_by(network: Network, finding: str) -> set[str]:
    return {cause for cause, weight in network.findings[finding].weights.items() if weight}


def _exclude(network: Network, one: str, other: str) -> bool:
    return one != other and any({one, other} <= set(group) for group in network.exclusive)


def _as_told(speaks: Speaks) -> str:
    if not isinstance(speaks.said, bool):
        return f"read as {speaks.said:g}"
    if speaks.is_cause:
        return "confirmed" if speaks.said else "cleared"
    return "seen" if speaks.said else "not seen"


def _how(speaks: Speaks) -> str:
    if speaks.is_cause:
        return "it explains already" if speaks.said else "something else must explain"
    return f"it speaks {'against' if speaks.factor > 1 else 'for'} another cause of"


def suspected(network: Network, told: Told, about: Collection[str] | None = None) -> frozenset[str]:
    """The causes not settled that would explain something that was seen; about: of it alone."""
    shown = _shown(network, told)
    seen = [causes for key, causes in shown.items() if about is None or key in about]
    return frozenset(set().union(*seen) - set(told.causes))


def _first(ranking: Ranking, suspects: frozenset[str]) -> str:
    """The likeliest suspect, if anything speaks for it; of those as likely, by name."""
    raised = (cause for cause in suspects if ranking.is_raised(cause))
    return min(raised, key=lambda cause: (-round(ranking.chances[cause], 12), cause), default="")


def _if_looked_at(
    now: Ranking, key: str, results: Mapping[bool, Ranking | None], suspects: frozenset[str]
) -> Iterator[Change]:
    """The results of looking at a finding that put another cause first.

    results: the ranking if it is seen, and if it is not; None where that cannot be.
    """
    first = _first(now, suspects)
    for seen, then in results.items():
        other = results[not seen]
        if then and _overtaken(first, then, suspects):
            chance = _chance_of(now, then, other) if other else 1.0
            yield Change(key, False, seen, chance, _first(then, suspects))


def _ranked(network: Network, told: Told) -> Ranking | None:
    """The ranking, or None where what was told cannot be."""
    try:
        return rank(network, told)
    except CannotBe:
        return None


def _overtaken(first: str, then: Ranking, suspects: frozenset[str]) -> bool:
    leads = _first(then, suspects)
    margin = max(AS_LIKELY, then.error)
    return not leads or then.chances[leads] > then.chances[first] + margin


def _chance_of(now: Ranking, then: Ranking, other: Ranking) -> float:
    """How likely a result is, by the cause whose chance hangs most on it.

    Its chance now is that after either result, each weighed by how likely it is.
    """

    def apart(cause: str) -> float:
        return then.chances[cause] - other.chances[cause]

    most = max(now.chances, key=lambda cause: abs(apart(cause)))
    if not apart(most):
        return 1.0
    share = (now.chances[most] - other.chances[most]) / apart(most)
    return min(max(share, 0.0), 1.0)
