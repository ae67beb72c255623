"""Counts of faults that another workshop found: taken in under a label, and taken back."""

from datetime import datetime

from shimstock.workshop.fault_search.counts import read_counts
from shimstock.workshop.ledger import Pen, writing
from shimstock.workshop.models import DiaryEntry, FaultCounts
from shimstock.workshop.refused import NotFound, Refused
from shimstock.workshop.wording import count_of


def import_counts(
    *, label: str, text: str, who: str, replace: bool = False, at: datetime | None = None
) -> DiaryEntry:
    """Take in what another workshop found; it counts for the priors of every machine here.

    label: what it is called here, so that it can be taken back. text: a file as `export_counts`
    writes it. replace: what came under the same label before counts no more.
    Raises Refused for a faulty file, an empty label, or one that is there already.
    """
    with writing("import counts", who=who, at=at) as pen:
        name = " ".join(label.split())
        if not name:
            raise Refused(["The counts have no name; say from which workshop they are"])
        if len(name) > 100 or not name.isprintable():
            raise Refused([f"{name[:40]!a}… cannot be a name; at most 100 letters would do"])
        found = read_counts(text)
        older = _take_back(pen, name)
        if older and not replace:
            raise Refused([f"Counts from {name} are here already; replace them, or name others"])
        for cause, count in found.items():
            row = FaultCounts(label=name, cause=cause, by=pen.who, at=pen.at)
            row.confirmed, row.looked = count.confirmed, count.looked
            pen.save(row)
        instead = ", in place of what was" if older else ""
        pen.says = f"Took in counts of {count_of(len(found), 'cause')} from {name}{instead}."
    return pen.entry


def withdraw_counts(*, label: str, who: str, at: datetime | None = None) -> DiaryEntry:
    """Take imported counts back: they count no more. Raises NotFound for an unknown label."""
    with writing("withdraw counts", who=who, at=at) as pen:
        name = " ".join(label.split())
        if not (taken := _take_back(pen, name)):
            rows = FaultCounts.objects.filter(withdrawn=False)
            raise NotFound("label of counts", label, set(rows.values_list("label", flat=True)))
        pen.says = f"Took back counts of {count_of(taken, 'cause')} from {name}."
    return pen.entry


def _take_back(pen: Pen, label: str) -> int:
    """Withdraw what counts under a label; gives how many causes that were."""
    rows = list(FaultCounts.objects.filter(label=label, withdrawn=False))
    for row in rows:
        row.withdrawn = True
        pen.save(row)
    return len(rows)
