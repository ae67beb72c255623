"""This computer's names and addresses on the shed's network."""

from __future__ import annotations

import contextlib
import ipaddress
import socket
import struct
import sys

AFAR = ("203.0.113.1", 9)  # kept for examples (RFC 5737): nothing is sent, the way there is asked
ADDRESS_OF = 0x8915  # SIOCGIFADDR in Linux's sockios.h: the address of a network card


def addresses() -> tuple[str, ...]:
    """The computer's IPv4 addresses on its networks, the one it reaches others by first."""
    found = [*_towards_others(), *_of_the_cards(), *_of_the_name()]
    return tuple(dict.fromkeys(each for each in found if _reachable(each)))


def local_name() -> str:
    """The name by which networks without a name server of their own find it (RFC 6762)."""
    return f"{socket.gethostname().split('.')[0].lower()}.local"


def _reachable(address: str) -> bool:
    kind = ipaddress.ip_address(address)
    return not (kind.is_loopback or kind.is_unspecified or kind.is_link_local)


def _towards_others() -> list[str]:
    with contextlib.suppress(OSError), socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as way:
        way.connect(AFAR)
        return [way.getsockname()[0]]
    return []


def _of_the_name() -> list[str]:
    with contextlib.suppress(OSError):
        return list(socket.gethostbyname_ex(socket.gethostname())[2])
    return []


def _of_the_cards() -> list[str]:
    if not sys.platform.startswith("linux"):
        return []
    import fcntl

    found = []
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        for _, card in socket.if_nameindex():
            wanted = struct.pack("256s", card.encode()[:15])
            with contextlib.suppress(OSError):  # a card without an address
                answer = fcntl.ioctl(asking.fileno(), ADDRESS_OF, wanted)
                found.append(socket.inet_ntoa(answer[20:24]))
    return found
