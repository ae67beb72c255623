from collections.abc import Callable
from datetime import datetime

from django.db import transaction
from django.utils import timezone

from shimstock.workshop.demo import brackwater, lowmere
from shimstock.workshop.demo.teller import Teller
from shimstock.workshop.models import Machine

STORIES: dict[str, Callable[[Teller], None]] = {
    "brackwater": brackwater.tell,
    "lowmere": lowmere.tell,
}


def lay_out(tonight: datetime | None = None) -> tuple[str, ...]:
    """Lay out the invented shed; a machine that is there already is left as it stands.

    tonight: the evening after the last one told; today's if not given.
    Returns the short names of the machines laid out now; none where both were there.
    """
    tonight = timezone.localtime(tonight)
    there = set(Machine.objects.filter(withdrawn=False).values_list("slug", flat=True))
    laid = tuple(slug for slug in STORIES if slug not in there)
    for slug in laid:
        with transaction.atomic():
            STORIES[slug](Teller(slug, tonight))
    return laid
