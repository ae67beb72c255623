"""A machine's book as people look things up in it: figures, torques, faults and data in words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from shimstock.workshop.wording import count_of

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book, Cause, Fasteners, Figure, Joint, Sign, Use


@dataclass(frozen=True)
class Line:
    """One thing of the book.

    key, mark, name: how it is called. says: its numbers. page: of the maker's book; "" for a
    stand-in. of: the part that it belongs to. number: of a joint's fastening, from 1; 0 for others.
    """

    key: str
    mark: str
    name: str
    says: str
    page: str
    of: str
    number: int = 0

    @property
    def stand_in(self) -> bool:
        """Whether nobody has typed the maker's page yet."""
        return not self.page

    def answers(self, words: Iterable[str]) -> bool:
        """Whether all these words, in small letters, stand in its names or numbers."""
        text = f"{self.key} {self.mark} {self.name} {self.of} {self.says}".lower()
        return all(word in text for word in words)


@dataclass(frozen=True)
class Progress:
    """How many figures of a book are stand-ins still."""

    stand_in: int
    all: int

    @property
    def typed(self) -> int:
        """How many have the maker's page."""
        return self.all - self.stand_in


def progress(book: Book) -> Progress:
    """How far a book has been typed from the maker's."""
    figures = book.measures.values()
    return Progress(sum(each.stand_in for each in figures), len(figures))


def figures_by_group(
    book: Book, words: str = "", *, stand_in: bool = False
) -> dict[str, list[Line]]:
    """Figures and settings by the group of their part.

    words: what all of them must have in their names. stand_in: only those without a page.
    """
    groups: dict[str, list[Line]] = {}
    for key, figure in book.measures.items():
        group = book.parts[figure.of].group
        groups.setdefault(group, []).append(_figure_line(book, key, figure))
    return _sifted(groups, words, stand_in)


def joints_by_group(
    book: Book, words: str = "", *, stand_in: bool = False
) -> dict[str, list[Line]]:
    """What joints are tightened to and sealed with, by the group of the part that comes off."""
    groups: dict[str, list[Line]] = {}
    for key, joint in book.joints.items():
        group = book.parts[joint.between[0]].group
        groups.setdefault(group, []).extend(_joint_lines(key, joint))
    return _sifted(groups, words, stand_in)


def data_lines(book: Book, words: str = "", *, stand_in: bool = False) -> list[Line]:
    """What the maker prints about the whole machine."""
    lines = [
        Line(key, "", key.replace("-", " ").capitalize(),
             f"{each.value}{f', {each.note}' if each.note else ''}", _page(each.page), "")
        for key, each in book.data.items()
    ]  # fmt: skip
    return _sifted({"": lines}, words, stand_in).get("", [])


def cause_lines(book: Book, words: str = "", *, stand_in: bool = False) -> list[Line]:
    """What can be wrong, each with how often it is and what its check takes."""
    lines = [_cause_line(book, key, cause) for key, cause in book.causes.items()]
    return _sifted({"": lines}, words, stand_in).get("", [])


def sign_lines(book: Book, words: str = "", *, stand_in: bool = False) -> list[Line]:
    """How it shows, each with how strongly its causes bring it on."""
    lines = [_sign_line(book, key, sign) for key, sign in book.signs.items()]
    return _sifted({"": lines}, words, stand_in).get("", [])


def in_words(book: Book, key: str) -> list[tuple[str, str]]:
    """Everything that a book says of a figure, each with what it is called."""
    figure = book.measures[key]
    part = book.parts[figure.of]
    told = [
        ("Of", f"{part.name} ({part.mark})" if part.mark else part.name),
        ("New", figure.new.typed if figure.new else ""),
        ("Limit", ", ".join(each.typed for each in figure.limit)),
        ("Read at", ", ".join(figure.at.labels) if figure.at else ""),
        ("Counts", "the mean of the places" if figure.judge == "mean" else ""),
        ("With", figure.with_ or ""),
        ("Pieces", ", ".join(part.instances) if len(part.instances) > 1 else ""),
        ("May differ", figure.pair.typed if figure.pair else ""),
        ("Worked out from", _derived(book, figure)),
        ("Sizes offered", ", ".join(each.typed for each in figure.sizes)),
        ("Counted from", figure.nominal.typed if figure.nominal else ""),
        ("Least to take off", figure.clean_up.typed if figure.clean_up else ""),
        ("A slip outside", figure.plausible.typed if figure.plausible else ""),
        ("Conditions", figure.conditions or ""),
        ("Engine", "read once it has run" if figure.running else ""),
        ("If outside", figure.if_outside or ""),
        ("Gives", figure.gives or ""),
    ]
    return [(name, said) for name, said in told if said]


def _derived(book: Book, figure: Figure) -> str:
    if figure.derive is None:
        return ""
    names = [book.measures[key].name for key in figure.derive.sources]
    if figure.derive.taper_of:
        return f"the taper of: {names[0]}"
    if figure.derive.out_of_round_of:
        return f"the out-of-round of: {names[0]}"
    return f"{names[0]}, less {names[1]}"


def _figure_line(book: Book, key: str, figure: Figure) -> Line:
    numbers = [
        figure.new.typed if figure.new else "",
        ", ".join(each.typed for each in figure.limit),
        figure.with_ or "",
        "worked out" if figure.derive else "",
    ]
    said = "; ".join(each for each in numbers if each)
    part = book.parts[figure.of].name
    return Line(key, figure.mark or "", figure.name, said, _page(figure.page), part)


def _cause_line(book: Book, key: str, cause: Cause) -> Line:
    often = f"{cause.prior}, " if isinstance(cause.prior, str) else ""
    said = f"{often}{cause.chance:g}; check {cause.check.minutes:g} min: {cause.check.do}"
    part = book.parts[cause.part].name if cause.part else ""
    return Line(key, cause.mark or "", cause.name, said, _from(cause.page), part)


def _sign_line(book: Book, key: str, sign: Sign) -> Line:
    weights = sorted(sign.weights.items(), key=lambda each: -each[1])
    causes = [f"{book.causes[cause].name}, {weight:g}" for cause, weight in weights]
    said = [f"“{sign.said}”"] if sign.said else []
    said += [*causes, f"anything else, {sign.leak:g}"]
    part = book.parts[sign.where].name if sign.where else ""
    return Line(key, sign.mark or "", sign.name, "; ".join(said), _from(sign.page), part)


def _joint_lines(key: str, joint: Joint) -> Iterator[Line]:
    """A line for each fastening with a torque, and for each thing that it uses up."""
    for number, each in enumerate(joint.fasteners, 1):
        if each.torque:
            said = fastening_in_words(each)
            yield Line(key, joint.mark or "", joint.name, said, _page(each.page), "", number)
    for use in joint.uses:
        yield Line(key, joint.mark or "", joint.name, _use(use), _page(use.page), "")


def fastening_in_words(each: Fasteners) -> str:
    """How many of what, and how tight."""
    sized = f"{count_of(each.count, each.what)} {each.thread or ''}".strip()
    return f"{sized}, {each.torque.typed}" if each.torque else sized


def _use(use: Use) -> str:
    kind = "" if use.kind in use.name or use.kind == "small" else f"{use.kind}: "
    several = f"{use.count} of " if use.count > 1 else ""
    thick = f", {use.thickness.typed}" if use.thickness else ""
    amount = f", {use.amount}" if use.amount else ""
    return f"{kind}{several}{use.name}{thick}{amount}"


def _sifted(groups: dict[str, list[Line]], words: str, stand_in: bool) -> dict[str, list[Line]]:
    wanted = words.lower().split()
    sifted = {
        group: [
            line for line in lines if line.answers([*wanted]) and (line.stand_in or not stand_in)
        ]
        for group, lines in groups.items()
    }
    return {group: lines for group, lines in sifted.items() if lines}


def _page(page: int | str | None) -> str:
    return "" if page is None else str(page)


def _from(page: int | str | None) -> str:
    """A page by its number, or in words what a chance is from."""
    said = _page(page)
    return f"page {said}" if said[:1].isdigit() else said
