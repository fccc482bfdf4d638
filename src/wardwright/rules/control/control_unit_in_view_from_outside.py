"""CTL104: a control unit that passers-by see."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import space_at, standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import control_units
from wardwright.rules.outside_view import (
    covered,
    points_of,
    seen_from_outside,
    unseen_spot,
    usual_height,
)
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.suggestion import suggestions
from wardwright.rules.unit_spots import UNFIT_USES, USUAL_HEIGHT_M


@rule(
    code="CTL104",
    name="control-unit-in-view-from-outside",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def control_unit_in_view_from_outside(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Control units that can be seen from the ground outside.

    What it checks
        Whether somebody who stands on the ground up to 8 m before a window or a glazed door sees the control unit
        through it, doors as they stand when the alarm is set, over and past furniture and what stands outside.
        Panes with a curtain, a blind or a shutter are left out.
    Why it matters
        Whoever looks in learns where the unit is, which way to run to it, and often by its lamps whether the alarm
        is set.
    How to put it right
        Move it along its wall or into another room, out of the line of sight; the finding carries the nearest such
        place. Or cover the pane, if it stays covered.
    What it cannot know
        Curtains that stand open; lamps that light the room at night; hedges and parked cars that nobody drew; views
        from upper windows across the road.

    Parameters
    ----------
    site : Site
        The house, its openings and devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each unit that is seen, with the distance of the nearest onlooker [m].

    Raises
    ------
    NoneOfAKind
        If there is no control unit.
    """
    this = control_unit_in_view_from_outside
    for unit, _ in control_units(site, catalogue):
        place = standing(site, unit)
        seen = seen_from_outside(site, place)
        if not seen:
            continue
        mends = _moved(site, unit.id) or covered(site, seen)
        new = suggestions(site, mends)
        panes = ", ".join(site.opening(one.opening).name for one in seen)
        yield this.finding(
            unit.id,
            f"{unit.name}: it is seen from outside through {panes}",
            cure=f"Move it to the place given, in {new[0].label}"
            if new
            else "Cover the glass, or move the unit",
            estimate=exactly(seen[0].distance_m, "m", weakest(unit.basis_of("mount"))),
            mends=mends,
            sketches=(
                Sketch(role="fault", storey=place.storey, points=points_of(seen[0], place), label=unit.name),
                *new,
            ),
            related=tuple(one.opening for one in seen),
        )


def _moved(site: Site, unit_id: str) -> tuple[Mend, ...]:
    """To the nearest unseen place of its own room, else of another dry one."""
    unit = site.device(unit_id)
    place, height = standing(site, unit), usual_height(unit, USUAL_HEIGHT_M)
    own = space_at(site, place.storey, (place.x_m, place.y_m))
    dry = tuple(
        space.id
        for space in sorted(site.spaces, key=lambda one: one.id)
        if space.belongs == "ours" and space.use not in UNFIT_USES
    )
    near = () if own is None else (own.id,)
    return unseen_spot(site, unit, spaces=near, height_m=height) or unseen_spot(
        site, unit, spaces=dry, height_m=height
    )
