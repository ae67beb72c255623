"""What an act rests on: places that must not be undone from under it."""

from shimstock.trade.machine.book import Joint
from shimstock.trade.machine.state import MachineNow
from shimstock.trade.reach.pieces import pieces_behind
from shimstock.workshop.models import Machine
from shimstock.workshop.places import answer_place, joint_place, piece_place, verdict_place


def closing(now: MachineNow, joint: str) -> set[str]:
    """A joint closed for good rests on the pieces behind it, their figures, and the answers."""
    pieces = set(pieces_behind(now.book, joint))
    verdicts = {key for key in now.verdicts if (now.book.measures[key[0]].of, key[1]) in pieces}
    inside = {key for key, other in now.book.joints.items() if joint in _named_by(other)}
    return {
        *(piece_place(*key) for key in pieces),
        *(verdict_place(*key) for key in verdicts),
        *(joint_place(key) for key in inside),
        *(answer_place(key) for key in now.answers),
    }


def opening(now: MachineNow, joint: str) -> set[str]:
    """A joint that is opened rests on the joints that stand open before it."""
    return {joint_place(key) for key in _named_by(now.book.joints[joint]) & now.open_joints}


def passing(now: MachineNow) -> set[str]:
    """A gate that is passed rests on everything that is written down of the machine."""
    return {
        *(piece_place(*key) for key in now.pieces),
        *(joint_place(key) for key in now.joints),
        *(verdict_place(*key) for key in now.verdicts),
        *(answer_place(key) for key in now.answers),
    }


def searched(machine: Machine) -> set[str]:
    """A gate rests on what was said in searches, too, and on what was put right."""
    said = machine.said_in_searches.filter(withdrawn=False)
    found = machine.faults_found.filter(withdrawn=False)
    return {each.place for each in (*machine.searches.filter(withdrawn=False), *said, *found)}


def building_in(now: MachineNow, part: str) -> set[str]:
    """A piece that is built in rests on all pieces of its set."""
    name = now.book.parts[part].set
    parts = now.book.members(name) if name else ()
    return {piece_place(each, piece) for each in parts for piece in now.pieces_of(each)}


def _named_by(joint: Joint) -> set[str]:
    return {key for entry in joint.needs for alternative in entry for key in alternative}
