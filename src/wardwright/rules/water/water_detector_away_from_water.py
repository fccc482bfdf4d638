"""WTR102: a water detector far from whatever may leak."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import FreeMount
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.floor_spots import floor_spot
from wardwright.rules.limits import cited, limit_for, severity_of
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.water_detectors import LEAKING, WaterDetector, to_water_m, water_detectors


@rule(
    code="WTR102",
    name="water-detector-away-from-water",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def water_detector_away_from_water(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Water detectors farther than a metre from anything that may leak.

    What it checks
        For each water detector: the distance on the plan, less the length of its lead, to the nearest sanitary
        fitting, appliance or boiler with no wall between, against 1 m.
    Why it matters
        Water runs to the lowest place, along joints and under floors. A detector out on the dry floor is the last to
        get wet.
    How to put it right
        Lay it beside the fixture, at the place given; where the floor is known to fall, at its lowest point there.
    What it cannot know
        Where the floor is lowest: no fall is drawn, so look for it with a level or a marble. Pipes in floors and
        walls; which appliances have no water.

    Parameters
    ----------
    site : Site
        The house, its fixtures and devices.
    catalogue : Catalogue
        The devices' sheets, and how far it may be.

    Yields
    ------
    Finding
        One for each such detector, with the distance and the limit [m]; one of severity `not run` for each whose room
        has nothing drawn that may leak.

    Raises
    ------
    NotComputable
        If there is no water detector, or nothing that may leak is drawn.
    """
    this = water_detector_away_from_water
    most = limit_for(catalogue, "water-detector-to-water", site)
    detectors = water_detectors(site, catalogue)
    if not any(fixture.kind in LEAKING for fixture in site.fixtures):
        raise NotComputable(
            "no sanitary fitting, appliance or boiler is drawn", cure="Add the fixtures that water comes to"
        )
    for one in detectors:
        found = to_water_m(site, one.place.storey, one.point)
        if found is None:
            yield this.not_run(
                one.device.id,
                f"{one.device.name}: nothing that may leak is drawn in its room",
                cure="Add the fixtures that water comes to",
            )
            continue
        distance, fixture = max(0.0, found[0] - one.sheet.lead_m), found[1]
        if distance <= most.value:
            continue
        mends = _moved(site, one, fixture.centre_m, most_m=most.value)
        yield this.finding(
            one.device.id,
            f"{one.device.name}: it is far from {fixture.name}, the nearest thing that may leak",
            cure=f"Lay it beside {fixture.name}, where the floor is lowest ({cited(catalogue, most)})",
            severity=severity_of(most),
            estimate=exactly(
                distance, "m", weakest(one.device.basis_of("mount"), fixture.basis_of("centre_m"))
            ),
            limit=most.value,
            mends=mends,
            sketches=(Sketch(role="fault", storey=one.place.storey, points=(one.point, fixture.centre_m)),),
            related=(fixture.id,),
        )


def _moved(site: Site, one: WaterDetector, goal: Point2, *, most_m: float) -> tuple[Mend, ...]:
    """The free place on the floor of its room nearest to the fixture."""
    if one.space is None or not isinstance(one.device.mount, FreeMount):
        return ()

    def fits(point: Point2) -> bool:
        found = to_water_m(site, one.place.storey, point)
        return found is not None and found[0] <= most_m

    spot = floor_spot(site, one.space, nearest_to=goal, fits=fits)
    if spot is None:
        return ()
    return (Mend(action="move-device", subject=one.device.id, values=(("x_m", spot[0]), ("y_m", spot[1]))),)
