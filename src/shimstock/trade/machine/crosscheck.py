"""What the entries of a book say of each other: names that exist, orders without loops."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from difflib import get_close_matches

from shimstock.trade.machine.book import Book, Datum, Figure, Joint, Train
from shimstock.trade.machine.data import KNOWN, PLAIN, WORDS
from shimstock.trade.machine.faults import Cause, Check, Sign
from shimstock.trade.machine.sheet import Path
from shimstock.trade.machine.texts import same_kind
from shimstock.trade.numbers.quantity import kind

Finding = tuple[Path, str, str, str]
"""Where, what stands there, what is wrong, what would do."""
Named = Mapping[str, frozenset[str]]
"""Every name written in each section, readable or not."""

_MOVING = frozenset({"running", "driving"})
"""Danger words of a machine that is not standing."""

_SLUG = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


def crosscheck(book: Book, named: Named) -> Iterator[Finding]:
    """Yield everything that does not fit together in a book.

    book: its readable entries. named: every name written, so that an entry with a fault of its own
    is not also reported as missing.
    """
    for check in _CHECKS:
        yield from check(book, named)


def _missing(path: Path, name: str, what: str, known: frozenset[str]) -> Iterator[Finding]:
    if name in known:
        return
    near = get_close_matches(name, sorted(known), n=1, cutoff=0.6)
    would = f"did you mean {near[0]!r}?" if near else f"add it under {what}"
    yield (path, name, f"is not among the {what}", would)


def _names(book: Book, named: Named) -> Iterator[Finding]:
    for section, keys in named.items():
        for key in sorted(keys):
            if not _SLUG.fullmatch(key):
                would = "small letters, digits and hyphens would do, such as timing-cover"
                yield ((section, key), key, "cannot be typed easily in the shed", would)
    for key in sorted(named["parts"] & named["joints"]):
        would = f"rename the joint, for example {key}-face"
        yield (("joints", key), key, "is the name of a part and of a joint", would)
    for key in sorted(named["figures"] & named["settings"]):
        yield (("settings", key), key, "is also among the figures", "rename one of the two")


def _data(book: Book, named: Named) -> Iterator[Finding]:
    for key, datum in book.data.items():
        yield from _known_word(("data", key), key)
        measures, example = KNOWN.get(key, (WORDS, ""))
        wrong = "" if measures == WORDS else _unlike(datum, measures)
        if wrong:
            yield (("data", key, "value"), datum.value, wrong, f"{example} would do")


def _known_word(path: Path, word: str) -> Iterator[Finding]:
    """A word that is nearly one that the sums look for would never be found."""
    near = get_close_matches(word, sorted(KNOWN), n=1, cutoff=0.88)
    if near and word not in KNOWN:
        yield (path, word, "is nothing that the sums look for", f"did you mean {near[0]!r}?")


def _unlike(datum: Datum, measures: str) -> str:
    """What is wrong with a value that should measure something; "" where it does."""
    quantity = datum.quantity
    plain = measures == PLAIN
    if quantity is None:
        return "is no plain number" if plain else f"is no measure of {measures}"
    found = kind(quantity.unit)
    if found == measures:
        return ""
    if found == PLAIN:
        return f"has no unit, and is to measure {measures}"
    return f"measures {found}, not {'a plain number' if plain else measures}"


def _marks(book: Book, named: Named) -> Iterator[Finding]:
    seen: dict[str, str] = {}
    for section in ("parts", "joints", "figures", "settings"):
        for key, entry in getattr(book, section).items():
            if entry.mark is None:
                continue
            if entry.mark in seen:
                wrong = f"is already the mark of {seen[entry.mark]}"
                yield ((section, key, "mark"), entry.mark, wrong, "give each its own mark")
            seen.setdefault(entry.mark, key)


def _parts(book: Book, named: Named) -> Iterator[Finding]:
    for key, part in book.parts.items():
        if part.sits_on is not None:
            yield from _missing(("parts", key, "sits-on"), part.sits_on, "parts", named["parts"])
        if part.set is not None:
            yield from _missing(("parts", key, "set"), part.set, "sets", named["sets"])
        if _sits_on_itself(book, key):
            wrong = "sits on itself, round a ring"
            yield (("parts", key, "sits-on"), str(part.sits_on), wrong, "name the part below it")


def _sits_on_itself(book: Book, key: str) -> bool:
    below = book.parts[key].sits_on
    for _ in book.parts:
        if below is None or below not in book.parts:
            return False
        if below == key:
            return True
        below = book.parts[below].sits_on
    return False


def _joints(book: Book, named: Named) -> Iterator[Finding]:
    for key, joint in book.joints.items():
        for field, names in (("between", joint.between), ("reaches", joint.reaches)):
            for at, part in enumerate(names):
                yield from _missing(("joints", key, field, at), part, "parts", named["parts"])
        for settled in joint.settles:
            measures = named["figures"] | named["settings"]
            path: Path = ("joints", key, "settles")
            yield from _missing(path, settled.figure, "figures or settings", measures)
            pieces = _pieces(book, settled.figure)
            if settled.piece is not None and settled.piece not in pieces:
                would = f"one of {', '.join(pieces)} would do"
                yield (path, settled.piece, f"is no piece that {settled.figure} is read on", would)
        yield from _needs(key, joint, named)


def _pieces(book: Book, figure: str) -> tuple[str, ...]:
    measured = book.measures.get(figure)
    part = book.parts.get(measured.of) if measured else None
    return part.instances if part else ()


def _needs(key: str, joint: Joint, named: Named) -> Iterator[Finding]:
    for alternatives in joint.needs:
        for alternative in alternatives:
            for other in alternative:
                yield from _missing(("joints", key, "after"), other, "joints", named["joints"])


def _order(book: Book, named: Named) -> Iterator[Finding]:
    """Open everything that can be opened, again and again; what is left waits for itself."""
    opened: set[str] = set(named["joints"] - book.joints.keys())
    waiting = dict(book.joints)
    while ready := [key for key, joint in waiting.items() if _openable(joint, opened)]:
        opened.update(ready)
        for key in ready:
            del waiting[key]
    for key, joint in waiting.items():
        blockers = {
            other
            for alternatives in joint.needs
            for alternative in alternatives
            for other in alternative
            if other in waiting
        }
        if blockers:
            wrong = f"can never be opened: it waits for {', '.join(sorted(blockers))}"
            yield (("joints", key, "after"), "", wrong, "take out the line that closes the ring")


def _openable(joint: Joint, opened: set[str]) -> bool:
    return all(any(opened.issuperset(way) for way in ways) for ways in joint.needs)


def _figures(book: Book, named: Named) -> Iterator[Finding]:
    measures = named["figures"] | named["settings"]
    for section in ("figures", "settings"):
        for key, figure in getattr(book, section).items():
            here: Path = (section, key)
            yield from _missing((*here, "of"), figure.of, "parts", named["parts"])
            for source in figure.derive.sources if figure.derive else ():
                yield from _missing((*here, "derive"), source, "figures", measures)
            yield from _units(here, figure)
            yield from _gives(here, figure)
            yield from _derived(here, figure, book)


def _units(here: Path, figure: Figure) -> Iterator[Finding]:
    parts = {
        "new": figure.new.unit if figure.new else None,
        "plausible": figure.plausible.unit if figure.plausible else None,
        "nominal": figure.nominal.unit if figure.nominal else None,
        "clean-up": figure.clean_up.unit if figure.clean_up else None,
    }
    for field, unit in parts.items():
        if unit is not None and not same_kind(unit, figure.measured_in):
            wrong = f"is in {unit}, but the figure is measured in {figure.measured_in}"
            yield ((*here, field), unit, wrong, f"give it in {figure.measured_in}")


def _gives(here: Path, figure: Figure) -> Iterator[Finding]:
    if figure.gives is None:
        return
    yield from _known_word((*here, "gives"), figure.gives)
    measures, example = KNOWN.get(figure.gives, (WORDS, ""))
    if measures not in (WORDS, kind(figure.measured_in)):
        wrong = f"measures {measures}, but the figure is measured in {figure.measured_in}"
        yield ((*here, "gives"), figure.gives, wrong, f"leave it out, or measure it as {example}")


def _derived(here: Path, figure: Figure, book: Book) -> Iterator[Finding]:
    derive = figure.derive
    key = (derive.taper_of or derive.out_of_round_of or "") if derive else ""
    source = book.measures.get(key)
    if source and not (source.at and source.at.depths):
        wrong = "needs readings in a grid to work from"
        would = "give that figure 'at: {depths: [...], across: [...]}'"
        yield ((*here, "derive"), key, wrong, would)


def _sets(book: Book, named: Named) -> Iterator[Finding]:
    for key in book.sets:
        if not book.members(key):
            would = f"give a part 'set: {key}', or take the set out"
            yield (("sets", key), "", "has no part in it", would)


def _trains(book: Book, named: Named) -> Iterator[Finding]:
    measures = named["figures"] | named["settings"]
    for key, train in book.trains.items():
        yield from _missing(("trains", key, "figure"), train.figure, "figures", measures)
        yield from _piece_of_train(("trains", key, "piece"), train, book)
        for at, link in enumerate(train.links):
            here: Path = ("trains", key, "links", at)
            yield from _missing((*here, "figure"), link.figure, "figures", measures)
            if link.hold is not None and link.hold.figure is not None:
                yield from _missing((*here, "hold"), link.hold.figure, "figures", measures)
            for field, part in (("driver", link.driver), ("driven", link.driven)):
                if part is not None:
                    yield from _missing((*here, field), part, "parts", named["parts"])
            held = link.hold.open if link.hold else None
            for field, joint in (("hold", held), ("spread-by", link.spread_by)):
                if joint is not None:
                    yield from _missing((*here, field), joint, "joints", named["joints"])


def _piece_of_train(path: Path, train: Train, book: Book) -> Iterator[Finding]:
    """That the piece of a train is one of the pieces that its figure is read on."""
    figure = book.measures.get(train.figure)
    if train.piece is None or figure is None or figure.of not in book.parts:
        return
    pieces = book.parts[figure.of].instances
    if train.piece not in pieces:
        would = " or ".join(pieces) if any(pieces) else "take the line out: there is only one"
        yield path, train.piece, f"is no piece of {figure.of}", would


def _causes(book: Book, named: Named) -> Iterator[Finding]:
    measures = named["figures"] | named["settings"]
    for key, cause in book.causes.items():
        here: Path = ("causes", key)
        yield from _chance((*here, "prior"), cause.chance, "often", "occasional or 0.03")
        if cause.part is not None:
            yield from _missing((*here, "part"), cause.part, "parts", named["parts"])
        for joint in cause.check.open:
            yield from _missing((*here, "check", "open"), joint, "joints", named["joints"])
        yield from _closed((*here, "check"), cause.check, named)
        yield from _dangers((*here, "check", "dangers"), cause.check.dangers, book)
        for field, names in (("figures", cause.figures), ("shown-by", cause.shown_by)):
            for figure in names:
                yield from _missing((*here, field), figure, "figures or settings", measures)
        for other in cause.never_with:
            yield from _missing((*here, "never-with"), other, "causes", named["causes"])
            if other == key:
                wrong, would = "excludes itself", "name another cause, or take the line out"
                yield ((*here, "never-with"), other, wrong, would)
        yield from _standing((*here, "check"), cause.check, book)
        yield from _forbids(here, cause, book, named)


def _standing(here: Path, check: Check, book: Book) -> Iterator[Finding]:
    if check.standing is None:
        return
    path: Path = (*here, "standing")
    yield from _dangers((*path, "dangers"), check.standing.dangers, book)
    if check.when is None:
        would = "take it out, or say 'when: running' or 'cranking'"
        yield (path, "", "is asked of a check that is done standing as it is", would)
    for word in sorted(_MOVING.intersection(check.standing.dangers)):
        yield ((*path, "dangers"), word, "is no danger of an engine that stands", "take it out")


def _forbids(here: Path, entry: Cause | Sign, book: Book, named: Named) -> Iterator[Finding]:
    """What is forbidden until a cause is cleared must leave a way to clear it."""
    if entry.forbids is None:
        return
    path: Path = (*here, "forbids", "until")
    for cause in entry.forbids.until:
        yield from _missing(path, cause, "causes", named["causes"])
        if cause == here[-1]:
            yield (path, cause, "waits for itself", "name another cause, or take the line out")
        elif isinstance(entry, Sign) and cause in book.causes and cause not in entry.causes:
            would = "one of its causes would do"
            yield (path, cause, "does not bring this sign on, so nobody would look for it", would)
        elif (other := book.causes.get(cause)) and other.check.when and not other.check.standing:
            would = "give that check 'standing', or take the line out"
            yield (path, cause, "cannot be cleared while the engine must not turn", would)


def _dangers(path: Path, words: Iterable[str], book: Book) -> Iterator[Finding]:
    """A danger word that no caution knows would call nothing up."""
    known = frozenset(word for caution in book.cautions.values() for word in caution.dangers)
    for word in words:
        yield from _missing(path, word, "danger words of the cautions", known)


def _closed(here: Path, looked: Check | Sign, named: Named) -> Iterator[Finding]:
    for joint in looked.closed:
        yield from _missing((*here, "closed"), joint, "joints", named["joints"])
        if joint in looked.open:
            would = "leave it in one of the two"
            yield ((*here, "closed"), joint, "is to be open and closed at once", would)


def engine_needed(book: Book) -> Iterator[Finding]:
    """Checks and signs with the dangers of a running engine that do not say that it must run.

    Asked of a book that is written or taken anew, not of the copies that machines keep from before.
    """
    for key, cause in book.causes.items():
        yield from _when(("causes", key, "check"), cause.check)
    for key, sign in book.signs.items():
        yield from _when(("signs", key), sign)


def _when(here: Path, looked: Check | Sign) -> Iterator[Finding]:
    """What has the dangers of a running engine is never offered on one that stands in pieces."""
    path: Path = (*here, "dangers")
    if "driving" in looked.dangers and looked.when != "running":
        would = "add 'when: running', or take 'driving' out and look with the machine standing"
        yield (path, "driving", "is a danger only while the machine is driven", would)
    elif "running" in looked.dangers and looked.when is None:
        would = "add 'when: running' or 'cranking', or take 'running' out and look with it standing"
        yield (path, "running", "is a danger only while the engine turns", would)


def _signs(book: Book, named: Named) -> Iterator[Finding]:
    measures = named["figures"] | named["settings"]
    for key, sign in book.signs.items():
        here: Path = ("signs", key)
        for cause, weight in sign.weights.items():
            path: Path = (*here, "causes", cause)
            yield from _missing(path, cause, "causes", named["causes"])
            yield from _chance(path, weight, "strongly", "medium or 0.4")
        if sign.where is not None:
            yield from _missing((*here, "where"), sign.where, "parts", named["parts"])
        if sign.figure is not None:
            yield from _missing((*here, "figure"), sign.figure, "figures or settings", measures)
        for joint in sign.open:
            yield from _missing((*here, "open"), joint, "joints", named["joints"])
        yield from _closed(here, sign, named)
        yield from _dangers((*here, "dangers"), sign.dangers, book)
        yield from _forbids(here, sign, book, named)


def _chance(path: Path, chance: float, how: str, example: str) -> Iterator[Finding]:
    """How often or how strongly, as a share; where per cent were meant, it says so."""
    if 0 <= chance <= 1:
        return
    meant = f"{chance / 100:g}" if 1 < chance <= 100 else example
    yield (path, f"{chance:g}", f"says how {how} by a number from 0 to 1", f"{meant} would do")


def _gates(book: Book, named: Named) -> Iterator[Finding]:
    measures = named["figures"] | named["settings"]
    for key, gate in book.gates.items():
        for figure in gate.figures:
            yield from _missing(("gates", key, "figures"), figure, "figures", measures)
        for other in gate.passed_before:
            yield from _missing(("gates", key, "passed-before"), other, "gates", named["gates"])
        points = frozenset(gate.points)
        for name, point in gate.points.items():
            for other in point.only_if:
                path: Path = ("gates", key, "points", name, "only-if")
                yield from _missing(path, other, "points of this gate", points)


_CHECKS: tuple[Callable[[Book, Named], Iterator[Finding]], ...] = (
    _names,
    _data,
    _marks,
    _parts,
    _joints,
    _order,
    _figures,
    _sets,
    _trains,
    _causes,
    _signs,
    _gates,
)
