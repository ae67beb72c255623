"""A search for a fault as lines: what it can be, what to look for, the next check."""

from __future__ import annotations

from typing import TYPE_CHECKING

from shimstock.faces.cli.looking import cautions_shown
from shimstock.faces.cli.shown import Heading, Shown, Table, listed_under
from shimstock.trade.numbers.percent import percent, percent_between, percent_or_settled
from shimstock.workshop.fault_search.seen import OF_READING
from shimstock.workshop.looking import DEFERS, minutes

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from shimstock.trade.machine.book import Caution
    from shimstock.workshop.fault_search.seen import CauseSeen, OfferSeen, QuestionSeen, ToldSeen
    from shimstock.workshop.fault_search.view import SearchSeen
    from shimstock.workshop.fault_search.why import WhySeen

WIDE = 20
"""Letters of a bar that stands for certainty."""
CAUSES, CHECKS, FEW = 8, 5, 3
"""How many causes, checks and other things are shown unless all are wanted."""
BAR = (
    "# up to the low end of the 90 % interval, = the interval, | the chance. "
    "×4: its odds are four times what they would be without that; ×0.5: half."
)


ONCE_SEEN = "What was noticed while it ran can still be told: --seen, --not."
HELD_BACK = (
    "What it most likely is cannot be checked as the machine stands: see 'Not offered' below. "
    "This is the best of the rest."
)


def search_shown(found: SearchSeen, *, everything: bool) -> list[Shown]:
    """Everything that a search comes to, in the order in which one goes on."""
    if found.cannot_be:
        return [*_told(found, True), f"This cannot all be true: {found.cannot_be}."]
    if not found.ranking:
        return [*_told(found, everything), *_to_pick(found)]
    return [
        *_told(found, everything),
        *_cautions(found.cautions),
        *_must_not(found),
        *_explained(found),
        *_ranking(found, everything),
        *_questions(found.questions, everything),
        *_next_check(found),
        *_further(found, everything),
        *_would_change(found, everything),
        *_not_offered(found, everything),
    ]


def why_shown(why: WhySeen) -> list[Shown]:
    """All that stands behind the chance of a cause."""
    speaks = [each for each in why.speaks if not each.says_nothing]
    silent = [each.short for each in why.speaks if each.says_nothing]
    return [
        Heading(why.called),
        f"{_stands(why)}; before anything was told {percent(why.prior)}: {why.prior_says}.",
        *listed_under("The prior", why.prior_working),
        *listed_under(
            "What speaks, by the factor between the odds with it and without it",
            [f"{each.line} [{each.source}]" for each in speaks],
        ),
        *([f"Says nothing here: {', '.join(silent)}."] if silent else []),
        "Factors do not multiply to the whole: signs that tell the same count once.",
    ]


def _stands(why: WhySeen) -> str:
    settled = why.settled
    return settled[0].upper() + settled[1:] if settled else f"Chance {percent(why.chance)}"


def _told(found: SearchSeen, everything: bool) -> list[Shown]:
    row = found.row
    about = f": {row.about}" if row and row.about else ""
    ended = f" ({row.ended})" if row and row.ended else ""
    which = f"search {row.number}{about}{ended}" if row else "as told now"
    counts = [each for each in found.told if each.counts]
    whole = [each for each in counts if everything or each.comes_from != OF_READING]
    lines = [f"{_called(each.name, each.mark)}: {each.says} [{each.source}]" for each in whole]
    lines += _readings(found, [each for each in counts if each not in whole])
    return [Heading(f"{found.seen.row.name}, {which}"), *(f"  {each}" for each in lines)]


def _readings(found: SearchSeen, told: Sequence[ToldSeen]) -> list[str]:
    """What follows from readings, in a line."""
    figures = found.seen.book.measures
    said = [
        f"{each.mark or each.name} {each.says} ({figures[each.figure].mark or each.figure})"
        for each in told
    ]
    return [f"From readings: {', '.join(said)}."] if said else []


def _to_pick(found: SearchSeen) -> list[Shown]:
    """Where nothing speaks for any cause: the signs that may be told."""
    from shimstock.workshop.fault_search.pick import picking

    rows = [
        (group.group, sign.mark, _said(sign.name, sign.said))
        for group in picking(found.seen.book)
        for sign in group.signs
    ]
    if not rows:
        return [
            "This book holds no causes and signs yet: see docs/book.md, or lay it over a starter."
        ]
    head = "Nothing speaks for any cause yet. Tell what you see: --seen SIGN, --not SIGN."
    return [head, Table(("at", "mark", "sign"), rows)]


def _ranking(found: SearchSeen, everything: bool) -> list[Shown]:
    open_ = [each for each in found.ranking if not each.said]
    shown = open_ if everything else open_[:CAUSES]
    rows = [
        (percent_or_settled(each.chance), _span(each), _bar(each), _cause(found, each))
        for each in shown
    ]
    columns = ("chance", "90 %", "", "cause, and what speaks most")
    if not rows:
        none = "Nothing else: what was seen has its cause."
        return [Heading("What it can be"), none, *_besides(found)]
    return [
        Heading("What it can be"),
        Table(columns, rows, frozenset(columns[:2])),
        BAR,
        *_left(len(open_) - len(shown), "cause"),
        *_how(found),
        *_besides(found),
    ]


def _must_not(found: SearchSeen) -> list[Shown]:
    lines = [f"{each[0].upper()}{each[1:]}." for each in found.must_not]
    return [*lines, ONCE_SEEN] if lines else []


def _explained(found: SearchSeen) -> list[Shown]:
    slug = found.seen.row.slug
    return [
        f"{_called(cause.name, cause.mark)} is there, and can bring on: {signs}. Put it right, "
        "then look again: it need not be the only one. "
        f"When it is: shimstock found {slug} {cause.mark or cause.key}"
        for cause, signs in found.explained
    ]


def _besides(found: SearchSeen) -> list[Shown]:
    if not found.besides:
        return []
    return [f"Readings speak for more, beside what was seen: {'; '.join(found.besides)}."]


def _how(found: SearchSeen) -> list[Shown]:
    stand_ins = any(each.stand_in for each in found.ranking)
    lines: list[Shown] = []
    if stand_ins:
        lines += ["* the prior is a stand-in: experience, until a page says where it is from."]
    if found.ranked and found.ranked.method != "exact":
        lines += [f"Sampled: a chance may be off by {found.ranked.error:.3f}."]
    return lines


def _cause(found: SearchSeen, cause: CauseSeen) -> str:
    counted = f"; found {cause.confirmed} of {cause.looked}" if cause.looked else ""
    star = "*" if cause.stand_in else ""
    name = f"{_called(cause.name, cause.mark)}{star}"
    return f"{name}{counted}\n  {found.why(cause.key).line}"


def _questions(questions: Iterable[QuestionSeen], everything: bool) -> list[Shown]:
    several = list(questions)
    shown = several if everything else several[:FEW]
    lines = [_question(each) for each in shown]
    cautions = {caution.name: caution for each in shown for caution in each.cautions}
    listed = listed_under("Look for this first: it costs nothing", lines)
    return [*_cautions(cautions.values()), *listed]


def _question(question: QuestionSeen) -> str:
    where = f", at: {question.where}" if question.where else ""
    saves = f"; saves {question.saves:.0f} min" if question.saves >= 1 else ""
    return f"{_said(_called(question.name, question.mark), question.said)}{where}{saves}"


def _next_check(found: SearchSeen) -> list[Shown]:
    if not found.offers:
        return [Heading("Next check"), "None that those who are there can do."]
    first = found.offers[0]
    return [
        Heading(f"Next check: {_title(first)}"),
        *([HELD_BACK] if found.mostly_held_back else []),
        *_cautions(first.cautions),
        f"Do: {first.do}.",
        *([f"Points to it: {first.points_to}."] if first.points_to else []),
        *([f"Points away: {first.points_away}."] if first.points_away else []),
        f"Takes {minutes(first.minutes)}{_opening(first)}.{_with(first)}",
        f"Finds it with {percent(first.finds)}; about {minutes(first.expected)} until found, "
        f"if these checks can find it: {percent(found.unlisted)} that they cannot.",
        f"Then: {_type(found, first)}",
    ]


def _cautions(cautions: Iterable[Caution]) -> list[Shown]:
    """Cautions whole, and what goes before them."""
    shown = cautions_shown(cautions)
    return [DEFERS, *shown] if shown else []


def _title(offer: OfferSeen) -> str:
    name = _called(offer.name, offer.mark)
    return f"stop here and open: {name}" if offer.kind == "open" else name


def _opening(offer: OfferSeen) -> str:
    if not offer.joints:
        return ", nothing to open"
    joints = ", ".join(joint.mark or joint.name for joint in offer.joints)
    return f" and {minutes(offer.opening)} to open {joints}"


def _with(offer: OfferSeen) -> str:
    hands = f" Hands: {offer.hands}." if offer.hands > 1 else ""
    return f"{hands} Needs: {', '.join(offer.needs)}." if offer.needs else hands


def _type(found: SearchSeen, offer: OfferSeen) -> str:
    """The command by which the result is told."""
    slug = found.seen.row.slug
    if offer.figure:
        mark = found.seen.book.measures[offer.figure].mark or offer.figure
        return f"shimstock read {slug} {mark}"
    thing = (offer.mark if offer.kind != "open" else "") or offer.key
    if offer.kind == "open":
        book = found.seen.book
        thing = " or ".join(book.causes[key].mark or key for key in offer.settles)
    said = "seen or not-seen" if offer.kind == "sign" else "there or cleared"
    return f"shimstock showed {slug} {thing}, {said}"


def _further(found: SearchSeen, everything: bool) -> list[Shown]:
    others = [each for each in found.offers[1:] if everything or each.worth_showing]
    shown = others if everything else others[: CHECKS - 1]
    opens = next((each for each in others if each.kind == "open" and each not in shown), None)
    rows = [_offer_row(each) for each in (*shown, *([opens] if opens else []))]
    columns = ("min", "opening", "finds", "to go", "check")
    if not rows:
        return []
    return [
        Heading("Or"),
        Table(columns, rows, frozenset(columns[:4])),
        *_left(len(found.offers) - 1 - len(rows), "check"),
    ]


def _offer_row(offer: OfferSeen) -> tuple[str, ...]:
    said = _title(offer) if offer.kind == "open" else f"{_title(offer)}: {offer.do}"
    names = "; ".join(each.name for each in offer.cautions)
    warned = f" (CAUTION: {names})" if names else ""
    return (
        f"{offer.minutes:g}",
        f"{offer.opening:g}",
        percent(offer.finds),
        f"{offer.expected:.0f}",
        f"{said}{warned}",
    )


def _would_change(found: SearchSeen, everything: bool) -> list[Shown]:
    shown = found.would_change if everything else found.would_change[:FEW]
    return listed_under("What would change the order", [each.line for each in shown])


def _not_offered(found: SearchSeen, everything: bool) -> list[Shown]:
    shown = found.held_back if everything else found.held_back[:CHECKS]
    lines = [each.line for each in shown]
    left = [f"  {each}" for each in _left(len(found.held_back) - len(shown), "reason")]
    return [*listed_under("Not offered", lines), *left]


def _left(number: int, thing: str) -> list[str]:
    several = thing if number == 1 else f"{thing}s"
    return [f"And {number} more {several}: --all shows them."] if number > 0 else []


def _bar(cause: CauseSeen) -> str:
    """A chance as a bar of signs with its interval."""
    low = cause.chance if cause.low is None else cause.low
    high = cause.chance if cause.high is None else cause.high
    at = min(int(cause.chance * WIDE), WIDE - 1)
    signs = ["#" if n < int(low * WIDE) else "=" if n < high * WIDE else " " for n in range(WIDE)]
    signs[at] = "|"
    return "".join(signs).rstrip()


def _span(cause: CauseSeen) -> str:
    if cause.low is None or cause.high is None:
        return ""
    return percent_between(cause.low, cause.high)


def _said(name: str, said: str) -> str:
    return f"{name}, “{said}”" if said else name


def _called(name: str, mark: str) -> str:
    return f"{name} ({mark})" if mark else name
