"""What every page can show: who is there, and how the shed is served."""

from typing import Any

from django.conf import settings
from django.http import HttpRequest


def every_page(request: HttpRequest) -> dict[str, Any]:
    """Values for every template."""
    return {
        "who": getattr(request, "who", ""),
        "signs_in": settings.SERVING.sign_in,
        "encrypted": settings.SERVING.encrypted,
    }
