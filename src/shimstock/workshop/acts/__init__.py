"""What people do in the shed, one function each: one transaction, one entry in the diary."""

from shimstock.workshop.acts.bags import empty_bag, put_in_bag
from shimstock.workshop.acts.closing import close_joint, ready_joint
from shimstock.workshop.acts.fault_counts import import_counts, withdraw_counts
from shimstock.workshop.acts.faults import (
    begin_search,
    end_search,
    fault_found,
    say_in_search,
    set_at_hand,
    take_up_search,
)
from shimstock.workshop.acts.figures import correct_figure, correct_torque
from shimstock.workshop.acts.gates import answer_point, pass_gate
from shimstock.workshop.acts.leaks import leak_check
from shimstock.workshop.acts.machines import add_machine, change_book
from shimstock.workshop.acts.notes import write_note
from shimstock.workshop.acts.opening import cover_joint, open_joint
from shimstock.workshop.acts.photos import keep_photo
from shimstock.workshop.acts.pieces import move_piece
from shimstock.workshop.acts.readings import TookReading, accept_verdict, take_reading
from shimstock.workshop.acts.recheck import Change, Recheck, recheck
from shimstock.workshop.acts.undoing import undo

__all__ = [
    "Change",
    "Recheck",
    "TookReading",
    "accept_verdict",
    "add_machine",
    "answer_point",
    "begin_search",
    "change_book",
    "close_joint",
    "correct_figure",
    "correct_torque",
    "cover_joint",
    "empty_bag",
    "end_search",
    "fault_found",
    "import_counts",
    "keep_photo",
    "leak_check",
    "move_piece",
    "open_joint",
    "pass_gate",
    "put_in_bag",
    "ready_joint",
    "recheck",
    "say_in_search",
    "set_at_hand",
    "take_reading",
    "take_up_search",
    "undo",
    "withdraw_counts",
    "write_note",
]
