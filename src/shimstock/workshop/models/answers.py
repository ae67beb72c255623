from django.db import models

from shimstock.workshop.models.kept import Kept
from shimstock.workshop.models.machine import Machine
from shimstock.workshop.places import answer_place, gate_place


class AnswerRow(Kept):
    """What a person answered to a gate's question, and signed."""

    ABSENT = {"withdrawn": True}

    machine = models.ForeignKey(Machine, on_delete=models.PROTECT, related_name="answers")
    point = models.CharField(max_length=100)
    answer = models.CharField(max_length=200)
    reason = models.TextField(blank=True)
    by = models.CharField(max_length=100)
    at = models.DateTimeField()
    withdrawn = models.BooleanField(default=False)

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["machine", "point"],
                condition=models.Q(withdrawn=False),
                name="one_answer_that_counts",
            ),
        ]

    @property
    def place(self) -> str:
        """The question."""
        return answer_place(self.point)

    def __str__(self) -> str:
        return f"{self.point}: {self.answer}"


class GatePass(Kept):
    """A gate that was passed, by whom and when."""

    ABSENT = {"withdrawn": True}

    machine = models.ForeignKey(Machine, on_delete=models.PROTECT, related_name="gates_passed")
    gate = models.CharField(max_length=100)
    by = models.CharField(max_length=100)
    at = models.DateTimeField()
    withdrawn = models.BooleanField(default=False)

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["machine", "gate"],
                condition=models.Q(withdrawn=False),
                name="one_pass_that_counts",
            ),
        ]

    @property
    def place(self) -> str:
        """The gate."""
        return gate_place(self.gate)

    def __str__(self) -> str:
        return f"{self.gate} passed"
