"""How the pages are served now: to whom, under which names, with or without signing in."""

from __future__ import annotations

import json
import os
from dataclasses import asdict, dataclass

VARIABLE = "SHIMSTOCK_SERVING"
LOOPBACK = ("localhost", "127.0.0.1", "[::1]")


@dataclass(frozen=True)
class Serving:
    """What the server was started with; its worker programs read it from their environment."""

    hosts: tuple[str, ...] = (*LOOPBACK, "testserver")
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
