"""A machine made to the two-cylinder starter, for the tests of searches for a fault."""

from shimstock.trade.machine.starters import starter_text
from shimstock.workshop import acts
from shimstock.workshop.fault_search.view import SearchSeen, see_search
from shimstock.workshop.fault_search.words import find_search
from shimstock.workshop.looking import see
from shimstock.workshop.models import Machine
from workshop.shed_book import MONDAY

DIESEL = "two-cylinder-diesel"
FAN = {"fan-rocks": "seen", "hunts": "seen", "overspeeds": "not seen", "knock": "not seen"}
"""Scene 1 of the trade: the fan rocks and the engine hunts."""


def add_diesel(slug: str = "diesel") -> Machine:
    """Add a machine whose book is the starter itself."""
    text = starter_text(DIESEL)
    acts.add_machine(slug=slug, name=slug.title(), book_text=text, who="Ida", at=MONDAY)
    return Machine.objects.get(slug=slug)


def begun(said: dict[str, str], slug: str = "diesel", **more) -> SearchSeen:
    """A search that was begun with what was said, as it stands."""
    acts.begin_search(machine=slug, who="Ida", **more)
    newest = find_search(see(slug).row).number
    if said:
        acts.say_in_search(machine=slug, said=said, who="Ida", search=newest)
    return look(slug)


def look(slug: str = "diesel", number: int | None = None) -> SearchSeen:
    """The search that goes on, as it stands."""
    seen = see(slug)
    return see_search(seen, find_search(seen.row, number))


def chances(search: SearchSeen, *causes: str) -> list[float]:
    """The chances of some causes, to three digits."""
    found = {each.key: each.chance for each in search.ranking}
    return [round(found[cause], 3) for cause in causes]
