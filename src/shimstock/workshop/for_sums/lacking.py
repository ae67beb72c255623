"""What a sum needs and the machine does not hold, or holds in words that the sum cannot read."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.declare import Input, Sum
from shimstock.trade.sums.typed import Origin, value_of
from shimstock.workshop.for_sums.held import Held
from shimstock.workshop.for_sums.naming import Thing
from shimstock.workshop.for_sums.things import OF_JOINT
from shimstock.workshop.for_sums.train_thing import OF_TRAIN, TrainThing
from shimstock.workshop.refused import Refused
from shimstock.workshop.wording import listed


@dataclass(frozen=True)
class Search:
    """Where was looked for a sum's values.

    things: what was named. used: by word the option of the parameter that its value went to.
    """

    held: Held
    things: Sequence[Thing]
    used: Mapping[str, str]

    def lacking(self, sum_: Sum, missing: Sequence[Input]) -> list[str]:
        """What the machine does not hold and the sum needs; with it, what it never could hold."""
        needed = [one for one in missing if one.needed]
        if not any(one.found for one in needed):
            return []
        return [
            self.nothing_for(one)
            if one.found
            else f"{sum_.name} still needs {one.said}; type {one.option}"
            for one in needed
        ]

    def nothing_for(self, one: Input) -> str:
        """Say that the machine holds nothing for a parameter, and what would do."""
        word = one.found
        if word in self.used:
            return f"The machine's {word} went to {self.used[word]}; type {one.option}"
        naming = [thing for thing in self.things if word in thing.words]
        if naming:
            said = " and ".join(_not_in(thing, word) for thing in naming)
            return f"The book {said}; type {one.option}"
        for what, words in (("joint", OF_JOINT), ("train", OF_TRAIN)):
            if word in words:
                missing = f"No {what} was named to take the {word} from"
                return f"{missing}; name one, or type {one.option}"
        missing = f"The book of {self.held.machine.name} gives no {word}, and no reading does"
        return f"{missing}; type {one.option}"


def _not_in(thing: Thing, word: str) -> str:
    """What the book says, or does not, of one thing that was named."""
    angles = thing.angles_left_open if isinstance(thing, TrainThing) else ()
    if word == "pressure angle" and angles:
        each = listed((f"{angle:g}" for angle in angles), "or")
        return f"leaves open whether the {word} of {thing.typed} is {each} deg"
    return f"gives no {word} for {thing.typed}"


def see_understood(sum_: Sum, one: Input, value: Origin) -> None:
    """See that the sum can read what was found. Raises Refused."""
    try:
        value_of(one, value.text, sum_.unit)
    except NotUnderstood as error:
        what = f"{value.text} is given as {one.found or one.said} ({value.origin})"
        raise Refused([f"{what}, but it {error.wrong}; type {one.option}"]) from None
