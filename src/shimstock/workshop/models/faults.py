from django.db import models

from shimstock.workshop.models.kept import Kept
from shimstock.workshop.models.machine import Machine
from shimstock.workshop.places import counts_place, found_place, said_place, search_place


class FaultSearch(Kept):
    """A search for what is wrong with a machine; it may rest for months and be taken up again."""

    ABSENT = {"withdrawn": True}

    FOUND, GIVEN_UP = "found", "given up"

    machine = models.ForeignKey(Machine, on_delete=models.PROTECT, related_name="searches")
    number = models.PositiveIntegerField(help_text="Of the searches on this machine.")
    about = models.CharField(max_length=200, blank=True, help_text="In words: will not catch.")
    people = models.PositiveSmallIntegerField(default=1, help_text="How many there are.")
    young = models.BooleanField(default=False, help_text="A helper under age does the checks.")
    missing = models.JSONField(default=list, help_text="Tools that are not there.")
    ended = models.CharField(max_length=20, blank=True, help_text="Empty while it goes on.")
    by = models.CharField(max_length=100)
    at = models.DateTimeField()
    withdrawn = models.BooleanField(default=False)

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.UniqueConstraint(fields=["machine", "number"], name="one_search_of_a_number"),
            models.CheckConstraint(
                condition=models.Q(ended__in=["", "found", "given up"]),
                name="search_goes_on_or_ended",
            ),
            models.CheckConstraint(condition=models.Q(people__gte=1), name="somebody_searches"),
        ]

    @property
    def place(self) -> str:
        """The search."""
        return search_place(self.number)

    def __str__(self) -> str:
        return f"search {self.number}" + (f": {self.about}" if self.about else "")


class FaultSaid(Kept):
    """What a person said in a search: a sign seen or not, a cause there or cleared, a reading."""

    ABSENT = {"withdrawn": True}

    machine = models.ForeignKey(Machine, on_delete=models.PROTECT, related_name="said_in_searches")
    search = models.PositiveIntegerField(help_text="Number of the search on this machine.")
    about = models.CharField(max_length=120, help_text="sign:KEY or cause:KEY.")
    said = models.CharField(
        max_length=60, help_text="seen, not seen, there, cleared; or a number with its unit."
    )
    by = models.CharField(max_length=100)
    at = models.DateTimeField()
    withdrawn = models.BooleanField(default=False)

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["machine", "search", "about"],
                condition=models.Q(withdrawn=False),
                name="one_saying_that_counts",
            ),
            models.CheckConstraint(condition=~models.Q(said=""), name="a_saying_says_something"),
        ]

    @property
    def place(self) -> str:
        """The sign or cause, in its search."""
        return said_place(self.search, self.about)

    def __str__(self) -> str:
        return f"{self.about}: {self.said}"


class FaultFound(Kept):
    """A cause that was confirmed and put right in this workshop; it counts for how common it is."""

    ABSENT = {"withdrawn": True}

    machine = models.ForeignKey(Machine, on_delete=models.PROTECT, related_name="faults_found")
    search = models.PositiveIntegerField(null=True, help_text="Number of the search, if by one.")
    cause = models.CharField(max_length=100)
    how = models.TextField(blank=True, help_text="How it was put right, in a person's words.")
    by = models.CharField(max_length=100)
    at = models.DateTimeField()
    withdrawn = models.BooleanField(default=False)

    class Meta:
        ordering = ["pk"]

    @property
    def place(self) -> str:
        """The cause."""
        return found_place(self.cause)

    def __str__(self) -> str:
        return f"{self.cause} found and put right"


class FaultCounts(Kept):
    """How often another workshop found a cause, of how many machines that it looked at for it."""

    ABSENT = {"withdrawn": True}

    label = models.CharField(max_length=100, help_text="What its counts are called here.")
    workshop = models.CharField(
        max_length=64, blank=True, default="", help_text="What it calls itself; empty if unsaid."
    )
    written_at = models.DateTimeField(null=True, help_text="When it wrote its file.")
    cause = models.CharField(max_length=100)
    confirmed = models.PositiveIntegerField()
    looked = models.PositiveIntegerField()
    by = models.CharField(max_length=100)
    at = models.DateTimeField()
    withdrawn = models.BooleanField(default=False)

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["label", "cause"],
                condition=models.Q(withdrawn=False, workshop=""),
                name="one_count_of_a_label_and_cause",
            ),
            models.UniqueConstraint(
                fields=["workshop", "cause"],
                condition=models.Q(withdrawn=False) & ~models.Q(workshop=""),
                name="one_count_of_a_workshop_and_cause",
            ),
            models.CheckConstraint(
                condition=models.Q(looked__gte=models.F("confirmed")),
                name="looked_at_least_as_often_as_found",
            ),
        ]

    @property
    def place(self) -> str:
        """Everything of that workshop; where its file did not say whose it is, of that label."""
        return counts_place(self.label, self.workshop)

    def __str__(self) -> str:
        return f"{self.label}, {self.cause}: {self.confirmed} of {self.looked}"
