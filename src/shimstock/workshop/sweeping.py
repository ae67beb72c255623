"""What is swept away at the door, and nothing else is: tries and codes that count no more.

They are no part of the workshop's book: no entry in the diary speaks of them.
"""

from datetime import datetime


def sweep_tries(until: datetime) -> None:
    """Sweep the tries to get in that were made until then."""
    from shimstock.workshop.models import SignInTry

    SignInTry.objects.filter(at__lte=until).delete()


def sweep_codes(until: datetime) -> None:
    """Sweep the codes to join, used or not, that were good until then at most."""
    from shimstock.workshop.models import JoinCode

    JoinCode.objects.filter(good_until__lte=until).delete()
