"""What would keep somebody from an upper opening, or notice them there: each tried on the model."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.opening import Opening
from wardwright.model.site import Site
from wardwright.questions.answer import WORST_FIRST
from wardwright.questions.changes_tried import contact_on, instant_of
from wardwright.questions.climb_verdicts import judged
from wardwright.questions.glass_watch_tried import Proposed, watches_to_add
from wardwright.questions.mends import locks_and_lights
from wardwright.rules.finding import Mend
from wardwright.trials.alarm import Heard
from wardwright.trials.climbs import Climb
from wardwright.trials.ways_in import WayIn

MOVED = ("bin", "car", "shed", "other")
"""What can be moved; other things are made unfit to climb: cut back, topped, fenced off."""
NAME = "proposed-at-the-opening"


def climb_mends(
    house: Site,
    catalogue: Catalogue,
    opening: Opening,
    *,
    climb: Climb,
    ways: tuple[WayIn, ...],
    heard: Heard,
) -> tuple[Mend, ...]:
    """Changes after which one opening is out of reach, or noticed when somebody comes in there.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Sheets and figures.
    opening : Opening
        The opening.
    climb : Climb
        The easiest climb to it.
    ways : tuple of WayIn
        The manners in which it is come through.
    heard : tuple of (Device, Behaviour)
        The devices that notice there.

    Returns
    -------
    tuple of Mend
        Those that help alone, the most helpful first; a better lock, which only delays, last.
    """
    now = WORST_FIRST.index(judged(house, catalogue, opening, heard=heard))
    tried: list[tuple[int, Mend]] = []
    for mend, changed, devices in _changes(house, catalogue, opening, climb=climb, ways=ways, heard=heard):
        then = WORST_FIRST.index(judged(changed, catalogue, opening, heard=devices))
        if then > now:
            tried.append((then, mend))
    tried.sort(key=lambda one: -one[0])
    locks = [mend for way in ways for mend in locks_and_lights(house, catalogue, way)]
    kept = {(mend.action, mend.values): mend for mend in locks if mend.action == "change-lock"}
    return (*(mend for _, mend in tried), *kept.values())


def _changes(
    house: Site,
    catalogue: Catalogue,
    opening: Opening,
    *,
    climb: Climb,
    ways: tuple[WayIn, ...],
    heard: Heard,
) -> Iterator[tuple[Mend, Site, Heard]]:
    on_it = {step.thing for step in climb.steps}
    for thing in sorted(house.ground.things, key=lambda one: one.id):
        if thing.id in on_it:
            action = "move-thing" if thing.kind in MOVED else "bar-climb"
            left = tuple(one for one in house.ground.things if one.id != thing.id)
            changed = house.model_copy(update={"ground": house.ground.model_copy(update={"things": left})})
            yield Mend.model_validate({"action": action, "subject": thing.id}), changed.bare, heard
    behaviour = instant_of(house)
    contacts = sorted(
        (one for one in catalogue.sheets if one.kind == "opening-contact"), key=lambda one: one.cheapest_first
    )
    added: list[Proposed] = [
        ((("sheet", row.id), ("behaviour", "instant")), contact_on(opening, row, device_id=NAME))
        for row in contacts[:1]
        if opening.hinge != "fixed"
    ]
    for way in ways:
        added += watches_to_add(house, catalogue, heard, way=way, device_id=NAME)
    for values, device in dict(added).items():
        mend = Mend(action="add-device", subject=opening.id, values=values)
        yield mend, house, (*heard, (device, behaviour))
