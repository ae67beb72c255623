from django.db import models

from shimstock.workshop.models.kept import Kept
from shimstock.workshop.models.machine import Machine
from shimstock.workshop.places import bag_place, note_place


class Note(Kept):
    """What a person wrote down about a place, or about the whole machine."""

    ABSENT = {"withdrawn": True}

    machine = models.ForeignKey(Machine, on_delete=models.PROTECT, related_name="notes_written")
    about = models.CharField(
        max_length=250, help_text="The place, such as joint:pump-chamber-cover; else machine."
    )
    text = models.TextField()
    by = models.CharField(max_length=100)
    at = models.DateTimeField()
    withdrawn = models.BooleanField(default=False)

    class Meta:
        ordering = ["pk"]
        indexes = [models.Index(fields=["machine", "about"], name="notes_on_a_place")]
        constraints = [
            models.CheckConstraint(condition=~models.Q(text=""), name="a_note_says_something"),
        ]

    @property
    def place(self) -> str:
        """The note itself: two notes on one joint do not collide."""
        return note_place(self.about)

    def __str__(self) -> str:
        return self.text


class Bag(Kept):
    """A bag, box or tray with what came off at a place, and the shelf it lies on."""

    ABSENT = {"withdrawn": True}

    machine = models.ForeignKey(Machine, on_delete=models.PROTECT, related_name="bags")
    number = models.CharField(max_length=40, help_text="What stands on the bag.")
    about = models.CharField(max_length=250, help_text="The place, as joint:pump-chamber-cover.")
    shelf = models.CharField(max_length=100, blank=True)
    holds = models.TextField(blank=True, help_text="What is in it, in a person's words.")
    by = models.CharField(max_length=100)
    at = models.DateTimeField()
    withdrawn = models.BooleanField(default=False)

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["machine", "number"],
                condition=models.Q(withdrawn=False),
                name="one_bag_of_a_number",
            ),
        ]

    @property
    def place(self) -> str:
        """The bag."""
        return bag_place(self.number)

    def __str__(self) -> str:
        return f"bag {self.number}" + (f", {self.shelf}" if self.shelf else "")
