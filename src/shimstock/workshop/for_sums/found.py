"""What a machine's book and its readings hold for a sum."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.declare import Sum
from shimstock.trade.sums.typed import Done, work_out
from shimstock.workshop.for_sums.filling import Found, of_things, open_for
from shimstock.workshop.for_sums.held import Held, of_data
from shimstock.workshop.for_sums.instead import said_otherwise
from shimstock.workshop.for_sums.lacking import Search, see_understood
from shimstock.workshop.for_sums.naming import named
from shimstock.workshop.models import Machine
from shimstock.workshop.refused import Refused, refuse


@dataclass(frozen=True)
class Looked:
    """What was found for a sum, and what of it the things that were named do not hold.

    unheld: a sentence for each parameter that the sum may still be able to do without.
    """

    found: Found
    unheld: tuple[str, ...]


def look(machine: Machine, sum_: Sum, where: Sequence[str], typed: Collection[str]) -> Looked:
    """Look through a machine's book and readings for a sum; typed: what is not looked for.

    Raises NotFound and Refused, as `found_for`.
    """
    held = Held(machine)
    asked = [one for one in sum_.inputs if one.name not in typed]
    things = list(named(held, where))
    found = of_things(things, sum_, asked)
    for one in open_for(asked, found):
        if one.found and (value := of_data(held, one.found)):
            found[one.name] = value
    for name in said_otherwise(sum_, typed, found):
        found.pop(name, None)
    missing = [one for one in asked if one.name not in found]
    used = {one.found: one.option for one in asked if one.name in found}
    search = Search(held, things, used)
    refuse(search.lacking(sum_, missing))
    for one in asked:
        if one.name in found:
            see_understood(sum_, one, found[one.name])
    unheld = [one for one in missing if any(one.found in thing.words for thing in things)]
    unheld = [one for one in unheld if not one.beside]
    return Looked(found, tuple(search.nothing_for(one) for one in unheld))


def found_for(
    machine: Machine,
    sum_: Sum,
    where: Sequence[str],
    *,
    typed: Collection[str] = (),
) -> Found:
    """What a machine holds for a sum: by parameter a text as it would be typed, and its origin.

    where: joints, trains and figures of the machine, by key, mark or name. A joint may be followed
    by the kind of fastener meant, a train by the number of a mesh, a figure by the piece.
    typed: parameters that the person gives himself; those are not looked for.
    Raises NotFound for an unknown name; Refused where several things could be meant, and where the
    book holds nothing for a parameter that the sum cannot do without.
    """
    return look(machine, sum_, where, typed).found


def work_out_for(
    machine: Machine,
    sum_: Sum,
    where: Sequence[str],
    *,
    typed: Mapping[str, str],
    wanted: Sequence[str] = (),
) -> Done:
    """Do a sum with what the machine holds and what is typed, which goes before it.

    where, typed: as for `found_for`; typed with the texts. wanted: units for the results.
    Raises as `found_for` and `work_out`; a sum that cannot be done says with it what the book does
    not hold.
    """
    looked = look(machine, sum_, where, typed)
    try:
        return work_out(sum_, typed, found=looked.found, wanted=wanted)
    except NotPossible as error:
        if looked.unheld:
            raise Refused([*looked.unheld, error]) from error
        raise
