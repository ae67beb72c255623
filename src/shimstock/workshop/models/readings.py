from django.db import models

from shimstock.trade.machine.words import Stage, Verdict
from shimstock.workshop.models.kept import Kept, one_of
from shimstock.workshop.models.machine import Machine
from shimstock.workshop.places import reading_place, verdict_place


class ReadingRow(Kept):
    """Numbers as typed, what was understood, with what, by whom and when."""

    ABSENT = {"withdrawn": True}

    machine = models.ForeignKey(Machine, on_delete=models.PROTECT, related_name="readings")
    figure = models.CharField(max_length=100)
    piece = models.CharField(max_length=100, blank=True)
    stage = models.CharField(max_length=20)
    typed = models.JSONField(help_text="Each number as it was typed, in the order of the places.")
    values = models.JSONField(help_text="The numbers understood, in the unit beside.")
    unit = models.CharField(max_length=40)
    instrument = models.JSONField(help_text="Its name, resolution and error.")
    meant = models.BooleanField(default=False, help_text="Kept although it looked like a slip.")
    each = models.PositiveSmallIntegerField(
        default=1, help_text="How many readings every number is the mean of."
    )
    by = models.CharField(max_length=100)
    at = models.DateTimeField()
    superseded = models.BooleanField(default=False)
    withdrawn = models.BooleanField(default=False)

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["machine", "figure", "piece", "stage"],
                condition=models.Q(superseded=False, withdrawn=False),
                name="one_reading_that_counts",
            ),
            one_of(Stage, "stage", "reading_stage_is_a_trade_word"),
            models.CheckConstraint(
                condition=models.Q(each__gte=1), name="reading_is_the_mean_of_some"
            ),
        ]

    @property
    def place(self) -> str:
        """The figure, which piece of it, and before or after the work."""
        return reading_place(self.figure, self.piece, self.stage)

    def __str__(self) -> str:
        return f"{self.figure} {self.piece}".strip() + f", {self.stage}: {', '.join(self.typed)}"


class VerdictRow(Kept):
    """A verdict as it was given, whole with its working; an older one stays beside a newer."""

    ABSENT = {"current": False}
    NOT_IN_DIARY = frozenset({"data"})

    machine = models.ForeignKey(Machine, on_delete=models.PROTECT, related_name="verdicts")
    figure = models.CharField(max_length=100)
    piece = models.CharField(max_length=100, blank=True)
    stage = models.CharField(max_length=20)
    verdict = models.CharField(
        max_length=20, blank=True, db_index=True, help_text="Empty where only the size is known."
    )
    value = models.FloatField()
    unit = models.CharField(max_length=40)
    says = models.TextField(blank=True, help_text="The verdict in one line.")
    p = models.FloatField(null=True, help_text="Probability that the true value is in limit.")
    data = models.JSONField(help_text="The whole verdict with its working.")
    accepted_reason = models.TextField(blank=True)
    accepted_by = models.CharField(max_length=100, blank=True)
    accepted_at = models.DateTimeField(null=True)
    at = models.DateTimeField()
    code_version = models.CharField(max_length=40)
    current = models.BooleanField(default=True)

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["machine", "figure", "piece", "stage"],
                condition=models.Q(current=True),
                name="one_verdict_that_counts",
            ),
            one_of(Stage, "stage", "verdict_stage_is_a_trade_word"),
            one_of(Verdict, "verdict", "verdict_is_a_trade_word", blank=True),
            models.CheckConstraint(
                condition=models.Q(p__isnull=True) | models.Q(p__gte=0, p__lte=1),
                name="verdict_p_is_a_probability",
            ),
            models.CheckConstraint(
                condition=models.Q(accepted_reason="", accepted_by="", accepted_at__isnull=True)
                | (
                    ~models.Q(accepted_reason="")
                    & ~models.Q(accepted_by="")
                    & models.Q(accepted_at__isnull=False)
                ),
                name="accepted_by_a_person_with_reason_and_date",
            ),
        ]

    @property
    def place(self) -> str:
        """The figure, which piece of it, and before or after the work."""
        return verdict_place(self.figure, self.piece, self.stage)

    def __str__(self) -> str:
        return f"{self.figure} {self.piece}".strip() + f", {self.stage}: {self.verdict}"
