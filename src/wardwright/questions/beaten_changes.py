"""Changes that leave a detector no better with the animals in: told by a look at a few places, not tried whole."""

from __future__ import annotations

from collections.abc import Sequence

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.questions.answer import Verdict
from wardwright.questions.pet_changes import Change
from wardwright.rules.animals import Roaming
from wardwright.rules.perches import UnderZones, still_under
from wardwright.trials.pet_room import PetRoom
from wardwright.trials.pet_walks import trips
from wardwright.trials.room_left import Left

IN_ITS_PLACE = ("change-mount", "turn-device")
"""Changes of how a detector hangs, of the same sheet and before the same animals: what was under its zones most often
still is."""
FEW = 3
"""So many places are looked at. [-]"""


def beaten(
    house: Site,
    catalogue: Catalogue,
    changes: Sequence[Change],
    *,
    device: Device,
    now: tuple[PetRoom, ...],
    verdict: Verdict,
) -> frozenset[int]:
    """Some of the changes that leave no better verdict; the others are to be tried.

    Before an animal that its sheet does not pass a detector is never `good` while a zone passes over any place that
    the animal may get to, nor better than `bad` while it trips it by going up a flight where it stands in a zone: its
    way there hangs on the flight alone.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        For the detector's sheets.
    changes : sequence of Change
        What could be changed.
    device : Device
        The detector as it is.
    now : tuple of PetRoom
        Each of the animals before it.
    verdict : str
        As it is.

    Returns
    -------
    frozenset of int
        Their numbers.
    """
    found: set[int] = set()
    asked: dict[Roaming, list[tuple[int, Device, tuple[UnderZones, ...]]]] = {}
    for number, change in enumerate(changes):
        if change.action not in IN_ITS_PLACE:
            continue
        for room in now:
            if room.left.passes:
                continue
            tops = _deciding(room.left, verdict=verdict)
            tops = still_under(house, change.trial.device, change.trial.sheet, before=device, under=tops)
            if verdict == "bad":
                tops = tuple(one for one in tops if one.free_m < room.animal.height_m)
            if tops:
                asked.setdefault(room.animal, []).append((number, change.trial.device, tops))
    for animal, watched in asked.items():
        if verdict == "bad":
            does = trips(house, catalogue, [one[1:] for one in watched], animal=animal)
            found.update(one[0] for one, is_tripped in zip(watched, does, strict=True) if is_tripped)
        else:
            found.update(number for number, _, _ in watched)
    return frozenset(found)


def _deciding(left: Left, *, verdict: Verdict) -> tuple[UnderZones, ...]:
    """Some of the tops that make the verdict what it is."""
    if verdict == "bad":
        return tuple(one for one in left.inside if left.told.tops[one.number].kind == "stair")
    return left.in_view[:FEW]
