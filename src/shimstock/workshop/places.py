"""Places that an act is about or rests on: there two acts can collide, whichever row is there."""

MACHINE = "machine"
"""The machine itself, with its book."""


def piece_place(part: str, piece: str) -> str:
    """One piece of a part."""
    return f"piece:{part}:{piece}"


def joint_place(joint: str) -> str:
    """A joint."""
    return f"joint:{joint}"


def reading_place(figure: str, piece: str, stage: str) -> str:
    """The reading of a figure, before or after the work."""
    return f"reading:{figure}:{piece}:{stage}"


def verdict_place(figure: str, piece: str, stage: str) -> str:
    """The verdict on a figure, before or after the work."""
    return f"verdict:{figure}:{piece}:{stage}"


def chain_place(train: str) -> str:
    """A chain of play."""
    return f"chain:{train}"


def answer_place(point: str) -> str:
    """The answer to a gate's question."""
    return f"answer:{point}"


def gate_place(gate: str) -> str:
    """The passing of a gate."""
    return f"gate:{gate}"


def photo_place(about: str, file: str) -> str:
    """A picture of a place."""
    return f"photo:{about}:{file}"


def note_place(about: str) -> str:
    """What was written down about a place."""
    return f"note:{about}"


def bag_place(number: str) -> str:
    """A bag."""
    return f"bag:{number}"


def search_place(number: int) -> str:
    """A search for a fault."""
    return f"search:{number}"


def said_place(number: int, about: str) -> str:
    """What was said of a sign or a cause in a search for a fault."""
    return f"search:{number}:{about}"


def found_place(cause: str) -> str:
    """A fault that was found and put right."""
    return f"found:{cause}"


def counts_place(label: str, workshop: str = "") -> str:
    """What another workshop found: by its own name, or under the one that it was given here."""
    return f"counts of:{workshop}" if workshop else f"counts:{label}"
