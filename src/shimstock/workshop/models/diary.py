from typing import Any

from django.db import models

from shimstock.workshop.models.kept import Kept
from shimstock.workshop.models.machine import Machine


class DiaryEntry(Kept):
    """One act: who did what and when, and the rows it touched, before and after.

    `before` and `after` name each row as "table:number" and hold the fields that changed.
    """

    machine = models.ForeignKey(Machine, on_delete=models.PROTECT, null=True, related_name="diary")
    act = models.CharField(max_length=60)
    who = models.CharField(max_length=100)
    at = models.DateTimeField()
    says = models.TextField(help_text="One plain sentence.")
    before = models.JSONField(default=dict)
    after = models.JSONField(default=dict)
    touched = models.JSONField(default=list, help_text="The rows in the order of writing.")
    places = models.JSONField(default=list, help_text="What the rows are about.")
    rests_on = models.JSONField(default=list, help_text="Places that had to be as they were.")
    undoes = models.ForeignKey(
        "self", on_delete=models.PROTECT, null=True, related_name="undone_by"
    )
    client_key = models.CharField(
        max_length=100, null=True, unique=True, help_text="Chosen by a sender that may send twice."
    )
    sent = models.JSONField(null=True, help_text="What that sender sent, to compare a second.")

    class Meta:
        ordering = ["pk"]
        verbose_name_plural = "diary entries"
        constraints = [
            models.CheckConstraint(condition=~models.Q(who=""), name="somebody_did_it"),
            models.CheckConstraint(condition=~models.Q(says=""), name="every_act_says_what"),
        ]

    def __str__(self) -> str:
        return f"{self.pk} {self.at:%Y-%m-%d %H:%M} {self.who}: {self.says}"

    def save(self, *args: Any, **kwargs: Any) -> None:
        """Write the entry; refuse to change one that stands."""
        if self.pk is not None:
            raise ValueError("An entry in the diary is never changed; a further act undoes it.")
        super().save(*args, **kwargs)
