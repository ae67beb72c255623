from datetime import datetime, timedelta

from shimstock.trade.machine.book import Book
from shimstock.workshop import acts
from shimstock.workshop.books import book_of
from shimstock.workshop.find import find_machine
from shimstock.workshop.now import joint_now

EVENING = 19  # hour at which work begins


class Teller:
    """Tells what was done to one machine, evening by evening, as acts."""

    def __init__(self, machine: str, tonight: datetime) -> None:
        self.machine = machine
        self._tonight = tonight
        self._at = tonight
        self._who = ""

    def evening(self, days_ago: int, who: str) -> None:
        """Begin an evening in the shed; what follows was done then, by this person.

        Raises ValueError where it lies before the evening told last.
        """
        night = self._tonight - timedelta(days=days_ago)
        begins = night.replace(hour=EVENING, minute=0, second=0, microsecond=0)
        if self._who and begins < self._at:
            raise ValueError(f"{days_ago} days ago comes before what has been told already")
        self._at, self._who = begins, who

    def booked_in(self, name: str, book: str, book_text: str, serials: dict[str, str]) -> None:
        """The machine came into the shed."""
        acts.add_machine(
            slug=self.machine, name=name, book_name=f"{book}.yaml", book_text=book_text,
            serials=serials, who=self._who, at=self._next(),
        )  # fmt: skip

    def opened(self, *joints: str, thickness: str | None = None) -> None:
        """Joints were opened, one after the other, and what stood before them."""
        for joint in joints:
            acts.open_joint(
                machine=self.machine, joint=joint, who=self._who, path=True,
                thickness_found=thickness, at=self._next(),
            )  # fmt: skip

    def covered(self, *joints: str) -> None:
        """Open joints were covered against dust."""
        for joint in joints:
            acts.cover_joint(machine=self.machine, joint=joint, who=self._who, at=self._next())

    def covered_all(self, but: str = "") -> None:
        """Every joint that stood open was covered, but one that was forgotten."""
        for row in find_machine(self.machine).joints.filter(covered=False):
            if joint_now(row).is_open and row.joint != but:
                self.covered(row.joint)

    def made_ready(self, joint: str, *, missing: int = 0) -> None:
        """Faces were cleaned, everything for closing laid ready, bolts counted: some missing."""
        entry = self._book.joints[joint]
        acts.ready_joint(
            machine=self.machine, joint=joint, who=self._who, faces_clean=True,
            gaskets=[use.name for use in entry.uses], bolts=entry.bolts - missing, at=self._next(),
        )  # fmt: skip

    def closed(self, joint: str) -> None:
        """A joint was closed for good and torqued, with all that the book wants."""
        entry = self._book.joints[joint]
        acts.close_joint(
            machine=self.machine, joint=joint, who=self._who, faces_clean=True,
            gaskets=[use.name for use in entry.uses], bolts=entry.bolts, torqued=True,
            at=self._next(),
        )  # fmt: skip

    def checked(
        self, result: str, *joints: str, chalk: bool = False, standing: bool = False
    ) -> None:
        """Joints were checked for leaks; standing: full, with the engine not run."""
        for joint in joints:
            acts.leak_check(
                machine=self.machine, joint=joint, result=result, who=self._who, chalk=chalk,
                standing=standing, at=self._next(),
            )  # fmt: skip

    def read(
        self, figure: str, typed: str | list[str], piece: str = "", *, finished: bool = False
    ) -> None:
        """A figure was read; typed: the numbers, with blanks between them or as a list."""
        acts.take_reading(
            machine=self.machine, figure=figure, piece=piece,
            typed=typed.split() if isinstance(typed, str) else typed,
            stage="as finished" if finished else "as found", who=self._who, at=self._next(),
        )  # fmt: skip

    def part(self, part: str, *to: str, piece: str = "", maker: str = "", note: str = "",
             size: str = "") -> None:  # fmt: skip
        """A piece went through one state after another; what is said belongs to the last."""
        for word in to:
            last = word == to[-1]
            acts.move_piece(
                machine=self.machine, part=part, piece=piece, to=word, who=self._who,
                maker=(last and maker) or None, note=note if last else "",
                size=(last and size) or None, at=self._next(),
            )  # fmt: skip

    def answered(self, point: str, answer: str) -> None:
        """A gate's question was answered."""
        acts.answer_point(
            machine=self.machine, point=point, answer=answer, who=self._who, at=self._next()
        )

    def accepted(self, figure: str, reason: str, piece: str = "") -> None:
        """A verdict was accepted, with a reason."""
        acts.accept_verdict(
            machine=self.machine, figure=figure, piece=piece, reason=reason, who=self._who,
            at=self._next(),
        )  # fmt: skip

    def searched(self, about: str, said: dict[str, str]) -> None:
        """A search for a fault was begun, and what was seen and not seen was said."""
        acts.begin_search(machine=self.machine, about=about, who=self._who, at=self._next())
        acts.say_in_search(machine=self.machine, said=said, who=self._who, at=self._next())

    def found(self, cause: str, how: str) -> None:
        """The cause was found and put right, and the search is over."""
        acts.fault_found(
            machine=self.machine, cause=cause, how=how, ends=True, who=self._who, at=self._next()
        )

    @property
    def _book(self) -> Book:
        return book_of(find_machine(self.machine))

    def _next(self) -> datetime:
        self._at += timedelta(minutes=1)
        return self._at
