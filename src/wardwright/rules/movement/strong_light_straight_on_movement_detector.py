"""MOV105: headlamps or a rooflight straight on a movement detector."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.detector_spots import half_centre_deg, moved_to_better_spot, turned_away
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import movement_detectors
from wardwright.rules.registry import rule
from wardwright.rules.strong_lights import Light, headlamps, rooflight, sees_bare_pane
from wardwright.rules.suggestion import suggestions


@rule(
    code="MOV105",
    name="strong-light-straight-on-movement-detector",
    since="0.1",
    stage="trial use",
    mark="assumption",
    severity="advise",
    sources=("own",),
)
def strong_light_straight_on_movement_detector(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Movement detectors with headlamps from the road, or a rooflight, straight on their lens.

    What it checks
        For each movement detector, whether the headlamps of a car on the drawn road, either way along it and up to
        15 degrees off its heading, shine into its fan through an uncovered pane: past walls, fences and sheds, and
        over sill and under head. How strong they are on the lens is held against the white light that its sheet
        stands, where it names some. Also whether an uncovered rooflight is in the middle third of its fan.
    Why it matters
        A strong light that comes and goes heats the lens for a moment and reads like somebody passing. It happens at
        night, when a car turns in at the end of the street, and is never found by day.
    How to put it right
        Turn it or move it as given, out of the line of that light; or put a blind or a shutter on that pane and have
        it shut whenever the alarm is set.
    What it cannot know
        The sun, which movement-detector-faces-sun works out, but for a rooflight that is named here. Cars that turn,
        park or reverse off the drawn road; hedges; lamps on masts; a road that rises or falls.

    Parameters
    ----------
    site : Site
        The house, its road and devices.
    catalogue : Catalogue
        The devices' sheets, and how strong headlamps are.

    Yields
    ------
    Finding
        One for each detector, light and kind of light, with the light on its lens and what its sheet stands [lx];
        for a rooflight the angle off its axis, against half of the middle third of its fan [deg].

    Raises
    ------
    NotComputable
        If there is no movement detector, or one sees an uncovered pane and no road is drawn.
    """
    detectors = movement_detectors(site, catalogue)
    for device, sheet in detectors:
        overhead = rooflight(site, device, sheet)
        if overhead is not None:
            yield _found(site, catalogue, device, sheet=sheet, light=overhead)
        lamps = _too_strong(site, catalogue, device, sheet=sheet)
        if lamps is not None:
            yield _found(site, catalogue, device, sheet=sheet, light=lamps)
    if site.ground.road_m is None and any(sees_bare_pane(site, device, sheet) for device, sheet in detectors):
        raise NotComputable(
            "no road is drawn, so which headlamps shine in is not known",
            cure="Draw the road, such as 'road 5.5 south' in notes",
        )


def _too_strong(site: Site, catalogue: Catalogue, device: Device, *, sheet: MovementSheet) -> Light | None:
    """The headlamps on a lens, unless its sheet stands them."""
    lamps = headlamps(site, device, sheet, figure=catalogue.figure("headlamp"))
    stands = sheet.white_light_lux
    return None if lamps is None or (stands is not None and lamps.strength.value <= stands) else lamps


def _found(
    site: Site, catalogue: Catalogue, device: Device, *, sheet: MovementSheet, light: Light
) -> Finding:
    def is_dark(moved: Device) -> bool:
        lamps = _too_strong(site, catalogue, moved, sheet=sheet)
        return lamps is None and rooflight(site, moved, sheet) is None

    mends = turned_away(site, device, sheet, accepts=is_dark) or moved_to_better_spot(
        site, device, sheet, accepts=is_dark
    )
    new = suggestions(site, mends)
    place, is_overhead = standing(site, device), light.strength.unit == "deg"
    what = "the light of a rooflight" if is_overhead else "headlamps from the road"
    silent = (
        ""
        if is_overhead or sheet.white_light_lux is not None
        else ", and its sheet does not say what it stands"
    )
    blind = (Mend(action="change-covering", subject=light.opening.id, values=(("covering", "blind"),)),)
    return strong_light_straight_on_movement_detector.finding(
        device.id,
        f"{device.name}: {what} may fall straight on it through {light.opening.name}{silent}",
        cure=_cure(mends, is_moved=bool(new)),
        severity="must mend" if not is_overhead and sheet.white_light_lux is not None else None,
        estimate=light.strength,
        limit=half_centre_deg(sheet) if is_overhead else sheet.white_light_lux,
        mends=mends or blind,
        sketches=(
            Sketch(
                role="fault",
                storey=place.storey,
                points=((place.x_m, place.y_m), light.source),
                label=light.opening.name,
            ),
            *new,
        ),
        related=(light.opening.id,),
    )


def _cure(mends: tuple[Mend, ...], *, is_moved: bool) -> str:
    if is_moved:
        return "Move it to the place given"
    if mends:
        return "Turn it to the direction given"
    return "Put a blind on that pane, shut whenever the alarm is set"
