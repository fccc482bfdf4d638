"""Whether a movement detector can stay with one animal in, and with all of them."""

from __future__ import annotations

from wardwright.questions.answer import WORST_FIRST, Verdict
from wardwright.trials.pet_room import PetRoom


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
    if room.is_enough:
        return "good"
    if room.estimate.value <= 0.0 and room.trips_on is not None:
        is_vouched_for = room.passes and room.trips_on.kind == "floor"
        return "thin" if is_vouched_for else "bad"
    return "thin"


def worst_of(rooms: tuple[PetRoom, ...]) -> PetRoom:
    """The animal that a detector can least stay with, of one at least."""
    return min(
        rooms, key=lambda one: (WORST_FIRST.index(verdict_of(one)), one.estimate.value, one.animal.pet.id)
    )
