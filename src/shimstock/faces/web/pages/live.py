"""What was written down since a page was made, for the page to say."""

from django.http import HttpResponse, JsonResponse
from django.urls import path
from django.utils.timezone import localtime

from shimstock.faces.web.asked import Asked
from shimstock.faces.web.whole_number import whole_number
from shimstock.workshop.models import DiaryEntry

NOTHING_NEW = 204
MOST = 5


def live(asked: Asked) -> HttpResponse:
    """The entries since `since`, of one machine or of all; nothing where there are none."""
    since = whole_number(asked.GET.get("since", ""))
    if since is None:
        return HttpResponse(status=NOTHING_NEW)
    entries = DiaryEntry.objects.filter(pk__gt=since).order_by("-pk")
    if slug := asked.GET.get("machine"):
        entries = entries.filter(machine__slug=slug)
    newest = list(entries.only("who", "at", "says")[:MOST])
    if not newest:
        return HttpResponse(status=NOTHING_NEW)
    told = [
        {"who": each.who, "time": f"{localtime(each.at):%H:%M}", "says": each.says}
        for each in reversed(newest)
    ]
    return JsonResponse({"latest": newest[0].pk, "entries": told})


URLS = [path("live/", live, name="live")]
