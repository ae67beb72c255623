"""How the pages are served now: to whom, under which names, with or without signing in."""

from __future__ import annotations

import json
import os
import re
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from pathlib import Path

VARIABLE = "SHIMSTOCK_SERVING"
LOOPBACK = ("localhost", "127.0.0.1", "[::1]")
NOTED = "served-at.txt"


@dataclass(frozen=True)
class Serving:
    """What the server was started with; its worker programs read it from their environment."""

    hosts: tuple[str, ...] = LOOPBACK
    """Names and addresses that a browser may ask for."""
    sign_in: bool = False
    """Whether people must sign in: always, where others than this computer can ask."""
    who: str = ""
    """Who does what is done, where nobody signs in."""
    encrypted: bool = False
    """Whether it is served under a certificate."""
    address: str = ""
    """Where phones find it, such as http://192.168.1.20:8140; "" where only this computer does."""

    def as_environment(self) -> dict[str, str]:
        """What worker programs are to find in their environment."""
        return {VARIABLE: json.dumps(asdict(self))}

    @classmethod
    def from_environment(cls) -> Serving:
        """What the server put there; as for this computer alone where nothing is."""
        if not (text := os.environ.get(VARIABLE)):
            return cls()
        given = json.loads(text)
        return cls(**{**given, "hosts": tuple(given["hosts"])})

    @classmethod
    def on_network(cls, names: Sequence[str], port: int, encrypted: bool) -> Serving:
        """As for every phone on the networks that this computer is on.

        names: names that people use for it beside its own; the first is the one that is shown.
        Raises Refused where it is on no network.
        """
        from shimstock.site.network import addresses, local_name
        from shimstock.workshop.refused import Refused

        hosts = (*map(_host, names), *addresses(), local_name())
        if hosts == (local_name(),):
            raise Refused(["This computer is on no network; join one, or serve without --lan"])
        return cls(
            hosts=(*LOOPBACK, *hosts),
            sign_in=True,
            encrypted=encrypted,
            address=_address(hosts[0], port, encrypted),
        )

    def other_addresses(self) -> list[str]:
        """Where phones find it as well."""
        scheme, port = self.address.split(":")[0], self.address.split(":")[-1]
        others = (f"{scheme}://{host}:{port}" for host in self.hosts if host not in LOOPBACK)
        return [address for address in others if address != self.address]


def note_address(shed: Path, address: str) -> None:
    """Write down where phones find the shed, for the commands that show it."""
    (shed / NOTED).write_text(f"{address}\n", encoding="utf-8")


def noted_address(shed: Path) -> str:
    """Where phones found the shed when it was last served to them; "" where it never was."""
    file = shed / NOTED
    return file.read_text(encoding="utf-8").strip() if file.is_file() else ""


def _address(host: str, port: int, encrypted: bool) -> str:
    return f"{'https' if encrypted else 'http'}://{host}:{port}"


def _host(name: str) -> str:
    """A name as a browser sends it. Raises NotUnderstood for what is no name of a computer."""
    from shimstock.trade.numbers.not_understood import NotUnderstood

    host = name.strip().lower()
    if not re.fullmatch(r"[a-z0-9]([a-z0-9.-]*[a-z0-9])?", host):
        would_do = ("a name alone, such as shed.local",)
        raise NotUnderstood(name, "is no name of a computer", would_do)
    return host
