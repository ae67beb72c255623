"""A file of counts that one workshop hands to another: what it holds, written and read."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from shimstock.trade.faults.learned import Count
from shimstock.workshop.refused import Refused

FORM = "shimstock fault counts 1"
"""What a file of counts calls itself."""

LONGEST = 1_000_000
"""Letters in a file of counts; each cause takes about sixty."""
TOLD = 20
"""So many faults of a file are told; the others are counted."""
MOST = 1_000_000
"""More machines than this nobody has looked at."""
LONGEST_NAME = 64
"""Letters in a workshop's name for itself."""


@dataclass(frozen=True)
class CountsFile:
    """What a file of counts holds.

    workshop: what the workshop that wrote it calls itself; "" in a file that does not say.
    written: when, in UTC; None in a file that does not say.
    """

    causes: Mapping[str, Count]
    workshop: str = ""
    written: datetime | None = None


def written_counts(file: CountsFile) -> str:
    """A file of counts as text.

    A JSON object: `form` says what it is, `workshop` whose it is, `written` when it was made, and
    `causes` has for each cause of the books how often it was confirmed and put right, of how many
    machines that were looked at for it.
    """
    causes = {
        key: {"confirmed": count.confirmed, "looked": count.looked}
        for key, count in sorted(file.causes.items())
    }
    when = file.written.astimezone(UTC).isoformat(timespec="seconds") if file.written else None
    said = {"form": FORM, "workshop": file.workshop, "written": when, "causes": causes}
    return json.dumps(said, indent=2) + "\n"


def read_counts(text: str) -> CountsFile:
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
    whose, when = data.get("workshop") or "", data.get("written")
    wrong = [
        *_wrong_head(whose, when),
        *(each for item in causes.items() for each in _wrong(*item)),
    ]
    if wrong:
        more = [f"And {len(wrong) - TOLD} more faults"] if len(wrong) > TOLD else []
        raise Refused([*wrong[:TOLD], *more])
    counts = {key: Count(count["confirmed"], count["looked"]) for key, count in causes.items()}
    return CountsFile(counts, whose, _moment(when))


def _wrong_head(whose: Any, when: Any) -> Iterator[str]:
    if not isinstance(whose, str) or len(whose) > LONGEST_NAME or not whose.isprintable():
        yield f"workshop is {str(whose)[:40]!a}; what export writes there would do"
    if when is not None and _moment(when) is None:
        yield f"written is {str(when)[:40]!a}; a time would do, such as 2026-03-01T18:30:00+00:00"


def _moment(when: Any) -> datetime | None:
    """A time as the file holds it, in UTC; None for what is none."""
    try:
        read = datetime.fromisoformat(when)
        return read.astimezone(UTC) if read.tzinfo else read.replace(tzinfo=UTC)
    except (TypeError, ValueError, OverflowError):
        return None


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
