"""What this workshop calls itself in what it hands to others: random, and the same for good."""

import secrets


def our_name() -> str:
    """This workshop's name for itself; made the first time that it is asked for."""
    from django.db import transaction

    from shimstock.workshop.models import Workshop

    with transaction.atomic():  # takes the write lock, so that two at once make one name
        known = Workshop.objects.first()
        return known.name if known else Workshop.objects.create(name=secrets.token_hex(16)).name


def is_ours(name: str) -> bool:
    """Whether that is this workshop's own name."""
    from shimstock.workshop.models import Workshop

    return Workshop.objects.filter(name=name).exists()
