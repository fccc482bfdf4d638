"""KEY103: a keypad that passers-by see being used."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import space_at, standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.finding import Finding
from wardwright.rules.kit import some_of
from wardwright.rules.outside_view import (
    covered,
    points_of,
    seen_from_outside,
    unseen_spot,
    usual_height,
)
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.suggestion import suggestions

USUAL_KEYPAD_M = 1.2
"""Where a keypad goes that is not on a wall yet. [m] (common practice)"""


@rule(
    code="KEY103",
    name="keypad-seen-through-glass",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
    follows="devices",
)
def keypad_seen_through_glass(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Keypads that can be seen from the ground outside.

    What it checks
        Whether somebody who stands on the ground up to 8 m before a window or a glazed door sees a keypad through
        it, past furniture and what stands outside. Panes with a curtain, a blind or a shutter are left out.
    Why it matters
        An onlooker reads the code from the hand, and sees from the display whether anybody set the alarm.
    How to put it right
        Put it on the wall beside the door rather than facing it; the finding carries the nearest place in its room
        that nobody outside sees. Otherwise film or a curtain on the glass.
    What it cannot know
        The letterbox; glass in a door that nobody drew as glazed; a body that hides the keypad while it is used.

    Parameters
    ----------
    site : Site
        The house, its openings and devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each keypad that is seen, with the distance of the nearest onlooker [m].

    Raises
    ------
    NoneOfAKind
        If there is no keypad.
    """
    this = keypad_seen_through_glass
    for keypad, _ in some_of(site, catalogue, "keypad"):
        place = standing(site, keypad)
        seen = seen_from_outside(site, place)
        if not seen:
            continue
        own = space_at(site, place.storey, (place.x_m, place.y_m))
        spaces = () if own is None else (own.id,)
        height = usual_height(keypad, USUAL_KEYPAD_M)
        mends = unseen_spot(site, keypad, spaces=spaces, height_m=height) or covered(site, seen)
        new = suggestions(site, mends)
        panes = ", ".join(site.opening(one.opening).name for one in seen)
        yield this.finding(
            keypad.id,
            f"{keypad.name}: it is seen from outside through {panes}",
            cure="Move it to the place given" if new else "Put film or a curtain on the glass",
            estimate=exactly(seen[0].distance_m, "m", weakest(keypad.basis_of("mount"))),
            mends=mends,
            sketches=(
                Sketch(
                    role="fault", storey=place.storey, points=points_of(seen[0], place), label=keypad.name
                ),
                *new,
            ),
            related=tuple(one.opening for one in seen),
        )
