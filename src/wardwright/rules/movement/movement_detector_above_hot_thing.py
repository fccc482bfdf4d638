"""MOV101: a movement detector over, or close to, something that gets warm."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.detector_spots import moved_to_better_spot
from wardwright.rules.finding import Finding, Severity
from wardwright.rules.hot_things import hot_things_near
from wardwright.rules.kit import movement_detectors
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.suggestion import suggestions


@rule(
    code="MOV101",
    name="movement-detector-above-hot-thing",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
    mends_apart=True,
)
def movement_detector_above_hot_thing(
    site: Site, catalogue: Catalogue, *, is_mended: bool = True
) -> Iterator[Finding]:
    """Movement detectors above, or close to, a radiator, a stove or anything else that gets warm.

    What it checks
        For each movement detector, the distance on the plan to every warm or hot thing with no wall between, against
        the clearance on its own sheet, or the usual 1 m where its sheet names none. Right above or below is always
        too close.
    Why it matters
        Rising warm air moves across the detector and its view like a slow, warm body. It is a common cause of false
        alarms on heating days, and it fills the cell's log with activations.
    How to put it right
        Move it to another wall or corner of the same room. The finding carries the nearest such place that keeps
        clear of every warm thing and does not face glass.
    What it cannot know
        Heat that nobody drew: pipes under the floor, sun on a dark wall, a portable heater, an appliance's exhaust.

    Parameters
    ----------
    site : Site
        The house, its fixtures and devices.
    catalogue : Catalogue
        The devices' sheets.
    is_mended : bool, default True
        Whether a better place is looked for.

    Yields
    ------
    Finding
        One for each detector too close, with the distance to the nearest warm thing and the clearance [m]:
        `must mend` where its own sheet names the clearance, else `advise`.

    Raises
    ------
    NotComputable
        If there is no movement detector, or nobody drew a fixture: then what gets warm is not known.
    """
    detectors = movement_detectors(site, catalogue)
    if not site.fixtures:
        raise NotComputable(
            "no radiator, stove or other fixture is drawn",
            cure="Add the radiators, stoves and other hot things",
        )
    for device, sheet in detectors:
        yield from _about(site.bare, device, sheet, is_mended=is_mended)


@lru_cache(maxsize=128)
def _about(site: Site, device: Device, sheet: MovementSheet, *, is_mended: bool) -> tuple[Finding, ...]:
    """What is found about one detector, remembered while others move."""
    place = standing(site, device)
    here = (place.x_m, place.y_m)
    near = hot_things_near(site, place.storey, here, clearance_m=sheet.hot_clearance_m)
    if not near:
        return ()
    nearest = near[0].fixture
    at_fault = Sketch(role="fault", storey=place.storey, points=(here, nearest.centre_m), label=nearest.name)
    found = movement_detector_above_hot_thing.finding(
        device.id,
        f"{device.name}: it is {'above' if near[0].distance_m == 0.0 else 'too close to'} {nearest.name},"
        f" which gets {nearest.heat}",
        cure="",
        severity=_severity(sheet),
        estimate=exactly(
            near[0].distance_m, "m", weakest(device.basis_of("mount"), nearest.basis_of("centre_m"))
        ),
        limit=sheet.hot_clearance_m,
        sketches=(at_fault,),
        related=tuple(one.fixture.id for one in near),
    )
    if not is_mended:
        return (found,)
    mends = moved_to_better_spot(site, device, sheet)
    new = suggestions(site, mends)
    cured = {"cure": _cure(new), "mends": mends, "sketches": (at_fault, *new)}
    return (found.model_copy(update=cured),)


def _cure(new: tuple[Sketch, ...]) -> str:
    if new:
        return f"Move it to the place given, in {new[0].label}"
    return "Move it to another room's wall, or watch this room from elsewhere: no place in it keeps clear"


def _severity(sheet: MovementSheet) -> Severity:
    """Its own sheet binds; a clearance that the sheet leaves out is only the usual one."""
    return "must mend" if "hot_clearance_m" in sheet.model_fields_set else "advise"
