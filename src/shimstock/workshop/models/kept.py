from enum import StrEnum
from typing import Any, ClassVar, NoReturn, Self, TypeVar

from django.db import models

Row = TypeVar("Row", bound=models.Model)


def one_of(
    words: type[StrEnum], field: str, name: str, *, blank: bool = False
) -> models.CheckConstraint:
    """Let a column hold only one of the trade's words, or nothing where it may be blank."""
    allowed = [str(word) for word in words] + [""] * blank
    return models.CheckConstraint(condition=models.Q(**{f"{field}__in": allowed}), name=name)


class NothingIsDeleted(Exception):
    """A row was to be deleted; here rows are only withdrawn."""


class KeptRows(models.QuerySet[Row]):
    """Rows that can be found and added, and never deleted."""

    def delete(self) -> NoReturn:
        """Refuse."""
        raise NothingIsDeleted("Rows are withdrawn by a further act, never deleted.")


class KeptManager(models.Manager[Row]):
    """Finds rows in a way that none of them can be deleted."""

    def get_queryset(self) -> KeptRows[Row]:
        """All rows of the table."""
        return KeptRows(self.model, using=self._db)


class Kept(models.Model):
    """A row that an act may change or withdraw; the diary holds what it was before."""

    ABSENT: ClassVar[dict[str, Any]] = {}
    """The values with which the row counts for nothing, as if it had never been written."""

    NOT_IN_DIARY: ClassVar[frozenset[str]] = frozenset()
    """Fields that are written once and never changed, so that the diary need not repeat them."""

    objects: ClassVar[models.Manager[Self]] = KeptManager()

    class Meta:
        abstract = True

    @property
    def place(self) -> str:
        """What the row is about, whichever row holds it: two acts on one place can collide."""
        raise NotImplementedError

    def delete(self, *args: Any, **kwargs: Any) -> NoReturn:
        """Refuse."""
        raise NothingIsDeleted("Rows are withdrawn by a further act, never deleted.")
