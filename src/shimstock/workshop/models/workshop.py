from django.db import models


class Workshop(models.Model):
    """This workshop, by the name that it has for others; one row, written once."""

    name = models.CharField(max_length=64, unique=True, help_text="At random.")

    class Meta:
        ordering = ["pk"]

    def __str__(self) -> str:
        return self.name
