from django.db import models

from shimstock.workshop.models.kept import Kept
from shimstock.workshop.models.machine import Machine
from shimstock.workshop.places import photo_place


class Photo(Kept):
    """A picture of a place on a machine; the file itself lies in the shed's folder."""

    ABSENT = {"withdrawn": True}

    machine = models.ForeignKey(Machine, on_delete=models.PROTECT, related_name="photos")
    about = models.CharField(
        max_length=250, help_text="The place that it shows, such as joint:pump-chamber-cover."
    )
    moment = models.CharField(max_length=20, blank=True, help_text="before or after the work.")
    note = models.TextField(blank=True)
    file = models.CharField(max_length=200, help_text="Under the shed's folder photos.")
    name = models.CharField(max_length=200, help_text="What the file was called on the phone.")
    sha256 = models.CharField(max_length=64, db_index=True)
    size = models.PositiveBigIntegerField(help_text="Bytes of the original.")
    width = models.PositiveIntegerField(help_text="In pixels, as seen upright.")
    height = models.PositiveIntegerField()
    taken_at = models.DateTimeField(help_text="By the camera's clock; else when it was sent.")
    by = models.CharField(max_length=100)
    at = models.DateTimeField(help_text="When it was kept.")
    withdrawn = models.BooleanField(default=False)

    class Meta:
        ordering = ["pk"]
        indexes = [models.Index(fields=["machine", "about"], name="photos_of_a_place")]

    @property
    def place(self) -> str:
        """The picture there: two pictures of one joint do not collide."""
        return photo_place(self.about, self.file)

    def __str__(self) -> str:
        return f"{self.about} {self.moment}".strip()


class Upload(models.Model):
    """A picture on its way from a phone, a piece at a time."""

    key = models.CharField(max_length=64, unique=True)
    by = models.CharField(max_length=100)
    name = models.CharField(max_length=200)
    length = models.PositiveBigIntegerField()
    for_what = models.JSONField(help_text="Machine, place, moment: what it will be kept as.")
    begun_at = models.DateTimeField()
    kept_as = models.ForeignKey(
        Photo, on_delete=models.PROTECT, null=True, help_text="There once it has arrived whole."
    )

    class Meta:
        ordering = ["pk"]

    def __str__(self) -> str:
        return f"{self.name}, {self.length} bytes"
