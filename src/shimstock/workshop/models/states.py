from django.db import models

from shimstock.trade.machine.words import JointWord, PartWord
from shimstock.workshop.models.kept import Kept, one_of
from shimstock.workshop.models.machine import Machine
from shimstock.workshop.places import joint_place, piece_place


class PieceState(Kept):
    """How one piece of a part stands; no row while nobody has touched it."""

    ABSENT = {
        "word": str(PartWord.FITTED),
        "maker": "",
        "size": "",
        "proved_pair": False,
        "note": "",
        "since": None,
    }

    machine = models.ForeignKey(Machine, on_delete=models.PROTECT, related_name="pieces")
    part = models.CharField(max_length=100)
    piece = models.CharField(max_length=100, blank=True)
    word = models.CharField(max_length=30, default=str(PartWord.FITTED))
    maker = models.CharField(max_length=200, blank=True)
    size = models.CharField(max_length=100, blank=True)
    proved_pair = models.BooleanField(default=False)
    note = models.TextField(blank=True)
    since = models.DateField(null=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["machine", "part", "piece"], name="one_state_of_a_piece"
            ),
            one_of(PartWord, "word", "piece_word_is_a_trade_word"),
        ]

    @property
    def place(self) -> str:
        """The piece."""
        return piece_place(self.part, self.piece)

    def __str__(self) -> str:
        return f"{self.part} {self.piece}".strip() + f": {self.word}"


class JointState(Kept):
    """How one joint stands; no row while nobody has touched it."""

    ABSENT = {
        "word": str(JointWord.UNDISTURBED),
        "since": None,
        "covered": False,
        "uncovered_on": None,
        "bolts_out": None,
        "bolts_ready": None,
        "faces_clean": False,
        "gaskets_ready": [],
        "thickness_found": None,
        "sealed_on": None,
        "leak_checked_on": None,
        "dry_chalked_on": None,
    }

    machine = models.ForeignKey(Machine, on_delete=models.PROTECT, related_name="joints")
    joint = models.CharField(max_length=100)
    word = models.CharField(max_length=30, default=str(JointWord.UNDISTURBED))
    since = models.DateField(null=True)
    covered = models.BooleanField(default=False)
    uncovered_on = models.DateField(null=True, help_text="When work took the cover off.")
    bolts_out = models.PositiveSmallIntegerField(null=True)
    bolts_ready = models.PositiveSmallIntegerField(null=True)
    faces_clean = models.BooleanField(default=False)
    gaskets_ready = models.JSONField(default=list)
    thickness_found = models.CharField(max_length=100, null=True)
    sealed_on = models.DateField(null=True)
    leak_checked_on = models.DateField(null=True)
    dry_chalked_on = models.DateField(null=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["machine", "joint"], name="one_state_of_a_joint"),
            one_of(JointWord, "word", "joint_word_is_a_trade_word"),
        ]

    @property
    def place(self) -> str:
        """The joint."""
        return joint_place(self.joint)

    def __str__(self) -> str:
        return f"{self.joint}: {self.word}"
