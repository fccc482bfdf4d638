"""KEY104: a keyfob that is pressed where the control unit does not hear it."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.placement import Standing, standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.keyfob_places import PressedAt, pressed_at
from wardwright.rules.kit import control_units, devices_of, some_of
from wardwright.rules.power_points import spots_by_power
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.straight_paths import StraightPath, straight_path

REPEATER_M = 1.8
"""Where a repeater hangs. [m] (assumption)"""


@rule(
    code="KEY104",
    name="keyfob-beyond-its-range",
    since="0.1",
    stage="trial use",
    mark="derived",  # the limit is the device's own sheet
    severity="must mend",
    sources=(),
)
def keyfob_beyond_its_range(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Keyfobs that are used farther from the control unit than their sheet allows.

    What it checks
        From before each entry door, and from the boundary straight before it where one parks, the distance to the
        nearest control unit or repeater, against the reach on the keyfob's own sheet.
    Why it matters
        A keyfob that is pressed in vain is pressed again, and again indoors: the alarm is set without anybody
        knowing, or rings in the hall.
    How to put it right
        Add a repeater at the place given, or have the household unset at the door. Try each keyfob from the car
        with all doors shut.
    What it cannot know
        Walls, cars and bodies between, which shorten the reach of a sheet that is stated for a clear view; where
        the household parks.

    Parameters
    ----------
    site : Site
        The house, its boundary and devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each sheet of keyfobs that is too short, with the distance and the reach [m]; one of severity
        `not run` for each whose sheet names no reach.

    Raises
    ------
    NoneOfAKind
        If there is no keyfob or no control unit.
    NotComputable
        If there is no entry door.
    """
    this = keyfob_beyond_its_range
    by_sheet: dict[str, list[Device]] = {}
    for device, sheet in some_of(site, catalogue, "keyfob"):
        by_sheet.setdefault(sheet.id, []).append(device)
    receivers = [unit for unit, _ in control_units(site, catalogue)]
    receivers += [one for one, _ in devices_of(site, catalogue, "repeater")]
    heard_at = tuple(standing(site, one) for one in receivers)
    pressed = pressed_at(site)
    for sheet_id, keyfobs in sorted(by_sheet.items()):
        button, first = catalogue.sheet(sheet_id).button, keyfobs[0]
        if button is None or button.reach_m is None:
            yield this.not_run(
                first.id, f"{first.name}: its sheet does not say how far it reaches", cure="Add its reach"
            )
            continue
        ways = [(_shortest(site, one.place, heard_at), one) for one in pressed]
        path, worst = max(ways, key=lambda one: (round(one[0].length_m, 6), one[1].words))
        if path.length_m <= button.reach_m:
            continue
        yield this.finding(
            first.id,
            f"{first.name}: it does not reach from {worst.words}, {path.words}",
            cure="Add a repeater at the place given, or unset nearer to the unit",
            estimate=exactly(path.length_m, "m", weakest(receivers[0].basis_of("mount"))),
            limit=button.reach_m,
            mends=_repeater(site, catalogue, pressed, reach_m=button.reach_m),
            sketches=(
                Sketch(
                    role="fault",
                    storey=worst.place.storey,
                    points=((worst.place.x_m, worst.place.y_m),),
                    label=worst.words,
                ),
            ),
            related=tuple(one.id for one in keyfobs[1:]),
        )


def _shortest(site: Site, place: Standing, heard_at: tuple[Standing, ...]) -> StraightPath:
    return min((straight_path(site, place, one) for one in heard_at), key=lambda one: one.length_m)


def _repeater(
    site: Site, catalogue: Catalogue, pressed: tuple[PressedAt, ...], *, reach_m: float
) -> tuple[Mend, ...]:
    """A repeater at the power point from which the farthest place is nearest; empty where none would do."""
    rows = sorted((row for row in catalogue.sheets if row.kind == "repeater"), key=lambda r: r.cheapest_first)
    if not rows:
        return ()
    lead = catalogue.limit("lead-to-power", site.place.rule_pack).value
    try:
        spots = list(spots_by_power(site, height_m=REPEATER_M, lead_m=lead))
    except NotComputable:
        return ()
    ranked = [
        (
            round(
                max(straight_path(site, one.place, spot.standing(REPEATER_M)).length_m for one in pressed), 6
            ),
            spot,
        )
        for spot in spots
    ]
    best = min(ranked, default=None)
    if best is None or best[0] > reach_m:
        return ()
    values = (("sheet", rows[0].id), *best[1].values(REPEATER_M))
    return (Mend(action="add-device", subject=best[1].space, values=values),)
