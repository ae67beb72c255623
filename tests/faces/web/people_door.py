"""A shed that is served to phones, and people at its door."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

from django.test import Client

PASSWORD = "rust-and-paraffin"
PHONE = "Mozilla/5.0 (Unknown; Mobile) Invented/1"


def to_phones(settings, **served):
    """Serve to phones, where people must sign in."""
    settings.SERVING = replace(
        settings.SERVING, sign_in=True, address="http://192.0.2.20:8140", **served
    )


def a_code(made_by: str = "") -> str:
    from shimstock.workshop.people import let_in

    return let_in(made_by)


def join(client: Client, name: str, code: str | None = None, password: str = PASSWORD, **more):
    return client.post(
        f"/join/{code or a_code()}/",
        {"name": name, "password": password, **more},
        headers={"User-Agent": PHONE},
    )


def sign_in(client: Client, name: str, password: str = PASSWORD, **more):
    return client.post("/sign-in/", {"name": name, "password": password, **more})


def somebody(name: str = "Ida") -> Client:
    """A browser in which somebody who has just joined is signed in."""
    client = Client()
    assert join(client, name).status_code == 302
    return client


def is_in(client: Client) -> bool:
    return client.get("/people/").status_code == 200


class Clock:
    """The time, for as long as a test runs."""

    def __init__(self, monkeypatch) -> None:
        from django.utils import timezone

        self.now = timezone.now()
        monkeypatch.setattr("shimstock.workshop.people._now", self.tell)

    def tell(self) -> datetime:
        return self.now

    def goes_on(self, **by: float) -> None:
        self.now += timedelta(**by)
