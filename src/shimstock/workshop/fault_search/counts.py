"""How often each cause was found, here and elsewhere, and what that makes of the book's priors."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from shimstock.trade.faults.learned import Count, learned, together
from shimstock.workshop.refused import Refused

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from shimstock.trade.machine.book import Book

FORM = "shimstock fault counts 1"
"""What a file of counts calls itself."""

AWAY = Count(confirmed=0, looked=1)
"""A machine that was looked at for a cause which was not there."""

LONGEST = 1_000_000
"""Letters in a file of counts; each cause takes about sixty."""
TOLD = 20
"""So many faults of a file are told; the others are counted."""
MOST = 1_000_000
"""More machines than this nobody has looked at."""


@dataclass(frozen=True)
class Imported:
    """Counts that came from elsewhere under one label. causes: how many are counted in it."""

    label: str
    causes: int
    confirmed: int
    looked: int
    by: str


def counts() -> dict[str, Count]:
    """How often each cause was found, here and in what was imported; in one SELECT."""
    return _summed(imported=True)


def own_counts() -> dict[str, Count]:
    """How often each cause was found and put right here, of how many machines looked at for it.

    A machine on which a search cleared the cause counts as looked at, once; one on which it was
    found counts once for each time.
    """
    return _summed(imported=False)


def imported() -> list[Imported]:
    """What was imported, by label."""
    from django.db.models import Count as Number
    from django.db.models import Max, Sum

    from shimstock.workshop.models import FaultCounts

    rows = FaultCounts.objects.filter(withdrawn=False).values("label").order_by("label")
    summed = rows.annotate(Number("pk"), Sum("confirmed"), Sum("looked"), Max("by"))
    return [
        Imported(row["label"], row["pk__count"], row["confirmed__sum"], row["looked__sum"],
                 row["by__max"])
        for row in summed
    ]  # fmt: skip


def export_counts() -> str:
    """What was found in this workshop, as a file for another; what was imported is left out.

    A JSON object: `form` says what it is, `causes` has for each cause of the books how often it was
    confirmed and put right, of how many machines that were looked at for it.
    """
    causes = {
        key: {"confirmed": count.confirmed, "looked": count.looked}
        for key, count in sorted(own_counts().items())
    }
    return json.dumps({"form": FORM, "causes": causes}, indent=2) + "\n"


def read_counts(text: str) -> dict[str, Count]:
    """Read a file of counts. Raises Refused, which says everything that is wrong with it."""
    if len(text) > LONGEST:
        raise Refused([f"The counts are {len(text)} letters long; a file has at most {LONGEST}"])
    try:
        data = json.loads(text.removeprefix("\ufeff"))
    except (ValueError, RecursionError) as error:
        raise Refused([f"The counts are no JSON ({error}); export writes a file that is"]) from None
    if not isinstance(data, dict) or data.get("form") != FORM:
        said = data.get("form") if isinstance(data, dict) else None
        raise Refused([f'The file says form {said!r}, not "{FORM}"; name a file of counts'])
    causes = data.get("causes")
    if not isinstance(causes, dict) or not causes:
        raise Refused(["The file counts no causes; it must have some under “causes”"])
    if wrong := [each for key, count in causes.items() for each in _wrong(key, count)]:
        more = [f"And {len(wrong) - TOLD} more faults"] if len(wrong) > TOLD else []
        raise Refused([*wrong[:TOLD], *more])
    return {key: Count(count["confirmed"], count["looked"]) for key, count in causes.items()}


def _wrong(cause: str, count: Any) -> Iterator[str]:
    if not cause.strip() or len(cause) > 100 or not cause.isprintable():
        yield f"{cause[:40]!a} cannot be the key of a cause; 1 to 100 letters would do"
    if not isinstance(count, dict):
        yield f"{cause} has no counts; confirmed and looked would do"
        return
    for name in ("confirmed", "looked"):
        number = count.get(name)
        if not isinstance(number, int) or isinstance(number, bool) or not 0 <= number <= MOST:
            yield f"{cause}: {name} is {number!r}; a whole number from 0 to {MOST} would do"
            return
    if count["confirmed"] > count["looked"]:
        yield (
            f"{cause}: found {count['confirmed']} times on {count['looked']} machines; "
            "looked must be at least confirmed"
        )


def _summed(*, imported: bool) -> dict[str, Count]:
    rows = [(machine, about.removeprefix("cause:"), Count(confirmed, looked))
            for machine, about, confirmed, looked in _rows(imported)]  # fmt: skip
    right = {(machine, cause) for machine, cause, count in rows if machine and count.confirmed}
    cleared = {(machine, cause) for machine, cause, count in rows if machine and count == AWAY}
    counted = [(cause, count) for machine, cause, count in rows if not machine or count.confirmed]
    counted += [(cause, AWAY) for _, cause in sorted(cleared - right)]
    return together({cause: count} for cause, count in counted)


def _rows(imported: bool) -> Iterable[tuple[int | None, str, int, int]]:
    """Machine, cause, confirmed and looked: of what was found, what was cleared, what came in."""
    from django.db.models import IntegerField, Value

    from shimstock.workshop.models import FaultCounts, FaultFound, FaultSaid

    right = FaultFound.objects.filter(withdrawn=False).order_by()
    cleared = FaultSaid.objects.filter(
        withdrawn=False, about__startswith="cause:", said="cleared"
    ).order_by()
    rows = right.values_list("machine_id", "cause", Value(1), Value(1)).union(
        cleared.values_list("machine_id", "about", Value(0), Value(1)), all=True
    )
    if imported:
        no_machine = Value(None, output_field=IntegerField())
        came = FaultCounts.objects.filter(withdrawn=False).order_by()
        rows = rows.union(came.values_list(no_machine, "cause", "confirmed", "looked"), all=True)
    return rows


def learned_priors(book: Book, found: Mapping[str, Count]) -> dict[str, float]:
    """The priors of a book with what was found; of causes that nobody looked at they stay."""
    return learned({key: cause.chance for key, cause in book.causes.items()}, found)
