"""Counts of faults that another workshop found: taken in under a label, and taken back."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Sequence
from datetime import datetime

from shimstock.trade.faults.learned import Count
from shimstock.trade.measure.named import listed
from shimstock.trade.numbers.not_understood import HardlyMeant
from shimstock.workshop.counts_file import CountsFile, read_counts
from shimstock.workshop.ledger import Pen, writing
from shimstock.workshop.models import DiaryEntry, FaultCounts
from shimstock.workshop.our_name import is_ours
from shimstock.workshop.refused import NotFound, Refused, refuse
from shimstock.workshop.wording import count_of

NAMELESS = " Its file does not say whose it is, so nobody can know whether it was taken in before."


def import_counts(
    *,
    text: str,
    who: str,
    label: str = "",
    replace: bool = False,
    meant: bool = False,
    at: datetime | None = None,
) -> DiaryEntry:
    """Take in what another workshop found; it counts for the priors of every machine here.

    What the same workshop gave before counts no more: its newest file holds all that it found.
    text: a file as `export_counts` writes it. label: what it is called here, so that it can be
    taken back; may be left out for a workshop that is known. replace: what came under the same
    label before counts no more, and an older file may take a newer one's place. meant: take in
    what is here already, to the last count, under another label.
    Raises Refused for a faulty file, for this workshop's own, for one that is older than what is
    here, and for a label that is empty or there already; HardlyMeant for the same counts again.
    """
    with writing("import counts", who=who, at=at) as pen:
        file = _from_another(text)
        standing = list(FaultCounts.objects.filter(withdrawn=False))
        before, rest = _parted(standing, lambda row: row.workshop == file.workshop != "")
        name = _label(label, before)
        others, staying = _parted(rest, lambda row: row.label == name)
        if not replace:
            _check_label_free(name, others)
            _check_not_older(file, before)
        if not meant:
            _check_not_here(name, file, staying)
        _withdraw(pen, [*before, *others])
        _keep(pen, name, file)
        causes = count_of(len(file.causes), "cause")
        instead = ", in place of what was" if before or others else ""
        pen.says = (
            f"Took in counts of {causes} from {name}{instead}.{'' if file.workshop else NAMELESS}"
        )
    return pen.entry


def withdraw_counts(*, label: str, who: str, at: datetime | None = None) -> DiaryEntry:
    """Take imported counts back: they count no more. Raises NotFound for an unknown label."""
    with writing("withdraw counts", who=who, at=at) as pen:
        name = " ".join(label.split())
        standing = FaultCounts.objects.filter(withdrawn=False)
        taken = list(standing.filter(label=name))
        if not taken:
            raise NotFound("label of counts", label, set(standing.values_list("label", flat=True)))
        _withdraw(pen, taken)
        pen.says = f"Took back counts of {count_of(len(taken), 'cause')} from {name}."
    return pen.entry


def check_labels_apart() -> None:
    """Refuse that the counts of two workshops are called the same, and are taken back together.

    Raises Refused, which names all such labels.
    """
    called: dict[str, set[str]] = defaultdict(set)
    standing = FaultCounts.objects.filter(withdrawn=False)
    for label, workshop in standing.values_list("label", "workshop").distinct():
        called[label].add(workshop)
    refuse(
        f"Another workshop's counts are called {label} here by now: take those back first, and in "
        "again under another name"
        for label, workshops in sorted(called.items())
        if len(workshops) > 1
    )


def _from_another(text: str) -> CountsFile:
    file = read_counts(text)
    if is_ours(file.workshop):
        raise Refused(["These are this workshop's own counts, and they count here already"])
    return file


def _label(typed: str, before: Sequence[FaultCounts]) -> str:
    """The label as typed, or that under which the same workshop's counts are here already."""
    name = " ".join(typed.split()) or (before[0].label if before else "")
    if not name:
        raise Refused(["The counts have no name; say from which workshop they are"])
    if len(name) > 100 or not name.isprintable():
        raise Refused([f"{name[:40]!a}… cannot be a name; at most 100 letters would do"])
    return name


def _check_label_free(name: str, others: Sequence[FaultCounts]) -> None:
    if others:
        raise Refused([f"Counts from {name} are here already; replace them, or name others"])


def _check_not_older(file: CountsFile, before: Sequence[FaultCounts]) -> None:
    here = max((row.written_at for row in before if row.written_at), default=None)
    if here and file.written and file.written < here:
        times = f"written on {_when(file.written)}, and what is here of {before[0].label}"
        raise Refused([
            f"The file was {times} on {_when(here)}: it is older; replace, to go back to it"
        ])  # fmt: skip


def _when(moment: datetime) -> str:
    from django.utils.timezone import localtime

    at = localtime(moment)
    return f"{at.day} {at:%b %Y at %H:%M}"


def _check_not_here(name: str, file: CountsFile, others: Sequence[FaultCounts]) -> None:
    """Ask about counts that are here word for word, and may be the same workshop's."""
    given: dict[tuple[str, str], dict[str, Count]] = defaultdict(dict)
    for row in others:
        given[row.label, row.workshop][row.cause] = Count(row.confirmed, row.looked)
    same = [
        label
        for (label, workshop), counts in given.items()
        if counts == file.causes and not (workshop and file.workshop)
    ]
    if same:
        here = f"as {listed(same)}, and may be the same workshop's"
        wrong = f"brings the same counts, to the last one, {here}"
        raise HardlyMeant(name, wrong, ("a file that was not taken in yet",))


def _parted(
    rows: Sequence[FaultCounts], chosen: Callable[[FaultCounts], bool]
) -> tuple[list[FaultCounts], list[FaultCounts]]:
    """The rows that are chosen, and the others."""
    return [row for row in rows if chosen(row)], [row for row in rows if not chosen(row)]


def _withdraw(pen: Pen, rows: Sequence[FaultCounts]) -> None:
    for row in rows:
        row.withdrawn = True
        pen.save(row)


def _keep(pen: Pen, label: str, file: CountsFile) -> None:
    for cause, count in file.causes.items():
        row = FaultCounts(label=label, workshop=file.workshop, written_at=file.written, cause=cause)
        row.confirmed, row.looked = count.confirmed, count.looked
        row.by, row.at = pen.who, pen.at
        pen.save(row)
