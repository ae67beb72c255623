from django.db import models


class Person(models.Model):
    """Somebody who works in this shed and signs in; the diary holds the name."""

    name = models.CharField(max_length=100, unique=True)
    password = models.CharField(max_length=200, help_text="Its digest, salted and slow to guess.")
    joined_at = models.DateTimeField()

    class Meta:
        ordering = ["name"]
        constraints = [
            models.CheckConstraint(condition=~models.Q(name=""), name="a_person_has_a_name"),
        ]

    def __str__(self) -> str:
        return self.name


class JoinCode(models.Model):
    """A code that lets one person in, once, for a short while; only its digest is kept."""

    digest = models.CharField(max_length=64, unique=True)
    made_by = models.CharField(max_length=100)
    made_at = models.DateTimeField()
    good_until = models.DateTimeField()
    used_at = models.DateTimeField(null=True)

    class Meta:
        ordering = ["pk"]

    def __str__(self) -> str:
        return f"code of {self.made_at:%Y-%m-%d %H:%M}"


class Device(models.Model):
    """A phone, tablet or laptop on which somebody is signed in, until it is ended."""

    person = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="devices")
    session = models.CharField(max_length=40, unique=True)
    called = models.CharField(max_length=200, help_text="What it says it is.")
    trusted = models.BooleanField(default=False, help_text="Stays signed in for a season.")
    signed_in_at = models.DateTimeField()
    seen_at = models.DateTimeField()
    ended_at = models.DateTimeField(null=True)

    class Meta:
        ordering = ["pk"]

    def __str__(self) -> str:
        return self.called


class SignInTry(models.Model):
    """A name and password that did not fit, so that guessing grows slow."""

    name = models.CharField(max_length=100, db_index=True)
    address = models.CharField(max_length=64, db_index=True)
    at = models.DateTimeField(db_index=True)

    class Meta:
        ordering = ["pk"]

    def __str__(self) -> str:
        return f"{self.name} from {self.address}"
