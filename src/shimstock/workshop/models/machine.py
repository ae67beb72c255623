from django.db import models

from shimstock.workshop.models.kept import Kept
from shimstock.workshop.places import MACHINE


class Machine(Kept):
    """One real machine in the shed, with a full copy of the book it is made to."""

    ABSENT = {"withdrawn": True}

    slug = models.SlugField(max_length=60)
    name = models.CharField(max_length=200)
    serials = models.JSONField(default=dict, help_text="What is stamped where: engine, frame.")
    book_name = models.CharField(max_length=200)
    book_text = models.TextField(help_text="The book, so that no file need stay in place.")
    starters = models.JSONField(
        default=dict, help_text="The text of each starter that the book extends, by its name."
    )
    added_at = models.DateTimeField()
    notes = models.TextField(blank=True)
    withdrawn = models.BooleanField(default=False)

    class Meta:
        ordering = ["slug"]
        constraints = [
            models.UniqueConstraint(
                fields=["slug"],
                condition=models.Q(withdrawn=False),
                name="one_machine_of_a_name",
            ),
        ]

    @property
    def place(self) -> str:
        """The machine itself."""
        return MACHINE

    def __str__(self) -> str:
        return self.name
