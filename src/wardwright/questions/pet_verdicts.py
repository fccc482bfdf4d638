"""Whether a movement detector can stay with one animal in, and with all of them."""

from __future__ import annotations

from wardwright.questions.answer import WORST_FIRST, Verdict
from wardwright.rules.perches import UnderZones
from wardwright.trials.pet_room import PetRoom
from wardwright.trials.room_left import Left


def verdict_of(room: PetRoom) -> Verdict:
    """Whether a detector can stay with one animal in.

    Parameters
    ----------
    room : PetRoom
        The animal before the detector.

    Returns
    -------
    str
        `bad`: it trips it where it walks, and the sheet does not vouch for that. `thin`: only if it jumps higher, is
        taller, or gets in by a door that may stand open; or it stands in a zone and trips nothing; or the sheet's
        word stands against the zones, or is missing.
    """
    known = settled(room.left)
    if known is not None:
        return known
    if room.trips_on is None:
        return "thin"
    is_vouched_for = room.left.passes and room.trips_on.kind == "floor"
    return "thin" if is_vouched_for else "bad"


def settled(left: Left) -> Verdict | None:
    """The verdict that holds however the animal's walks end; None where it is `bad` or `thin` as they do.

    Parameters
    ----------
    left : Left
        The animal before the detector.
    """
    if left.is_enough:
        return "good"
    return "thin" if left.estimate.value > 0.0 else None


def decisive(left: Left) -> tuple[UnderZones, ...]:
    """The tops that make a verdict `bad` where the animal trips the detector on any of them.

    Parameters
    ----------
    left : Left
        The animal before the detector.

    Returns
    -------
    tuple of UnderZones
        None but things and flights where the sheet vouches for the floor; empty where its walks settle nothing.
    """
    if settled(left) is not None:
        return ()
    return tuple(one for one in left.inside if not left.passes or left.told.tops[one.number].kind != "floor")


def worst_of(rooms: tuple[PetRoom, ...]) -> PetRoom:
    """The animal that a detector can least stay with, of one at least."""
    return min(
        rooms, key=lambda one: (WORST_FIRST.index(verdict_of(one)), one.estimate.value, one.animal.pet.id)
    )
