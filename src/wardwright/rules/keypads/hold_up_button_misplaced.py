"""KEY105: a hold-up button out of reach when it is needed, or in reach when it is not."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

import shapely

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, WallMount
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.placement import fixture_outline, space_at, standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.walking.from_site import Spot, way_in_spot
from wardwright.rules.entry_routes import place_before
from wardwright.rules.finding import Finding, Mend, Severity
from wardwright.rules.hand_heights import Span, best_height, of_sheet
from wardwright.rules.held_to import severity_by
from wardwright.rules.kit import some_of
from wardwright.rules.registry import rule
from wardwright.rules.replacement import replaced
from wardwright.rules.wall_spots import room_of, wall_spots

USUAL_M = 1.05
"""Where a hold-up button goes. [m] (common practice: between 0.9 and 1.2 m)"""


class Fault(NamedTuple):
    """One thing that is wrong with a button."""

    words: str
    severity: Severity


@rule(
    code="KEY105",
    name="hold-up-button-misplaced",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def hold_up_button_misplaced(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Hold-up buttons at a wrong height, near neither door nor bed, or pressed by chance.

    What it checks
        The height of each hold-up button on a wall, against its sheet, else 0.9 to 1.2 m. Whether it is within 2 m
        of where one stands inside an entry door, or within 0.8 m of a bed, in the same room. Whether one that a
        single press sets off is by a bed, or in a house with a child. The distances are common practice; for the
        height the trade and public guidance differ.
    Why it matters
        In the moment that it is for, nobody walks to it. A headboard, a child or a duster that presses it calls the
        police; after a few false calls they do not come any more.
    How to put it right
        Move it to the place or height given, or use one that wants two presses. Agree with the user in private what
        it is called on papers that others see.
    What it cannot know
        Which side of the bed somebody sleeps on; who would come through the door; buttons that are worn.

    Parameters
    ----------
    site : Site
        The house, its people, beds and devices.
    catalogue : Catalogue
        The devices' sheets and the figures.

    Yields
    ------
    Finding
        One for each button with a fault; one of severity `not run` for each whose place cannot be judged, since
        neither an entry door nor a bed is drawn.

    Raises
    ------
    NoneOfAKind
        If there is no hold-up button.
    """
    this = hold_up_button_misplaced
    pack = site.place.rule_pack
    to_door = catalogue.limit("hold-up-to-door", pack).value
    to_bed = catalogue.limit("hold-up-to-bed", pack).value
    for button, sheet in some_of(site, catalogue, "hold-up-button"):
        door, bed = _door_distance(site, button), _bed_distance(site, button)
        spans = (*of_sheet(sheet.button), *_usual(site, catalogue))
        is_far = door > to_door and bed > to_bed
        if math.isinf(door) and math.isinf(bed) and not _is_known(site):
            yield this.not_run(
                button.id,
                f"{button.name}: neither an entry door nor a bed is drawn",
                cure="Say which door the household comes in by, and draw the beds",
            )
            is_far = False
        moved = [*_height_faults(site, button, spans)]
        if is_far:
            moved.append(Fault("it is near neither an entry door nor a bed", this.severity))
        pressed = _press_faults(site, sheet, is_by_bed=bed <= to_bed)
        faults = [*moved, *pressed]
        if not faults:
            continue
        place = standing(site, button)
        yield this.finding(
            button.id,
            f"{button.name}: " + ", and ".join(fault.words for fault in faults),
            cure="Move it to the place or height given" if moved else "Use one that wants two presses",
            severity=_gravest(faults),
            mends=_mends(
                site, catalogue, button, spans=spans, is_far=is_far, kinds=(bool(moved), bool(pressed))
            ),
            sketches=(
                Sketch(
                    role="fault", storey=place.storey, points=((place.x_m, place.y_m),), label=button.name
                ),
            ),
        )


def _usual(site: Site, catalogue: Catalogue) -> tuple[Span, ...]:
    pack = site.place.rule_pack
    least = catalogue.limit("hold-up-height-least", pack)
    most = catalogue.limit("hold-up-height-most", pack)
    return (Span(least.value, most.value, "hands reach from a bed or a chair", severity_by(most)),)


def _height_faults(site: Site, button: Device, spans: tuple[Span, ...]) -> Iterator[Fault]:
    if not isinstance(button.mount, WallMount):
        return
    height = standing(site, button).height_m
    missed = [span for span in spans if not span.holds(height)]
    if missed:
        side = "higher" if height > missed[0].high_m else "lower"
        yield Fault(f"at {height:.2f} m it is {side} than {missed[0].words}", missed[0].severity)


def _press_faults(site: Site, sheet: DeviceSheet, *, is_by_bed: bool) -> list[Fault]:
    if sheet.button is None or sheet.button.presses > 1:
        return []
    children = [one.name for one in site.people if one.is_child]
    if not is_by_bed and not children:
        return []
    why = "by a bed" if is_by_bed else f"in reach of {min(children)}"
    return [Fault(f"a single press sets it off, {why}", "advise")]


def _gravest(faults: list[Fault]) -> Severity:
    order: tuple[Severity, ...] = ("must mend", "advise", "check with the standard")
    return min((fault.severity for fault in faults), key=order.index)


def _is_known(site: Site) -> bool:
    return any(o.is_entry_door for o in site.openings) or any(f.kind == "bed" for f in site.fixtures)


def _door_distance(site: Site, button: Device) -> float:
    """To where one stands inside the nearest entry door of its room; inf if it has none. [m]"""
    here = place_before(site, button)
    room = {space.id for space in room_of(site, here.storey, (here.x, here.y))}
    spots = (way_in_spot(site, door) for door in site.openings if door.is_entry_door)
    return min(
        (math.dist(here[1:], spot[1:]) for spot in spots if _space(site, spot) in room), default=math.inf
    )


def _bed_distance(site: Site, button: Device) -> float:
    """To the nearest bed of its room; inf if it has none. [m]"""
    place = standing(site, button)
    here = (place.x_m, place.y_m)
    room = {space.id for space in room_of(site, place.storey, here)}
    beds = (one for one in site.fixtures if one.kind == "bed" and one.storey == place.storey)
    return min(
        (
            float(shapely.Polygon(fixture_outline(bed)).distance(shapely.Point(here)))
            for bed in beds
            if _space(site, Spot(bed.storey, *bed.centre_m)) in room
        ),
        default=math.inf,
    )


def _space(site: Site, spot: Spot) -> str | None:
    space = space_at(site, spot.storey, (spot.x, spot.y))
    return None if space is None else space.id


def _mends(
    site: Site,
    catalogue: Catalogue,
    button: Device,
    *,
    spans: tuple[Span, ...],
    is_far: bool,
    kinds: tuple[bool, bool],
) -> tuple[Mend, ...]:
    """One mend that cures all of its faults; none where two would be needed."""
    is_moved, is_pressed = kinds
    if is_moved and is_pressed:
        return ()
    if is_pressed:
        return replaced(catalogue, button, fits=lambda row: row.button is not None and row.button.presses > 1)
    height = best_height(spans, standing(site, button).height_m if not is_far else USUAL_M)
    if not is_far:
        return (Mend(action="move-device", subject=button.id, values=(("height_m", height),)),)
    return _by_door(site, button, height_m=height)


def _by_door(site: Site, button: Device, *, height_m: float) -> tuple[Mend, ...]:
    """To the wall nearest to where one stands inside an entry door."""
    spots = [way_in_spot(site, door) for door in site.openings if door.is_entry_door]
    spaces = [(spot, space_at(site, spot.storey, (spot.x, spot.y))) for spot in spots]
    found = [
        (round(math.dist((place.x_m, place.y_m), spot[1:]), 6), place)
        for spot, space in spaces
        if space is not None
        for place in wall_spots(site, space, height_m=height_m)
    ]
    best = min(found, default=None)
    if best is None:
        return ()
    return (Mend(action="move-device", subject=button.id, values=best[1].values(height_m)),)
