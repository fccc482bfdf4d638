"""FIR102: a storey, or a bedroom, that has no smoke alarm."""

from __future__ import annotations

from collections.abc import Iterator

import shapely

from wardwright.model.catalogue import Catalogue
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.fabric import Space, SpaceUse
from wardwright.model.site import Site
from wardwright.rules.alarm_spots import added_alarm, alarm_spot
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.fire_alarms import WAYS_ABOUT, advised, alarms
from wardwright.rules.limits import limit_for, severity_of
from wardwright.rules.registry import rule

UNUSED: tuple[SpaceUse, ...] = ("loft", "garage", "store", "plant")
"""A storey of these only is not one where people are."""


@rule(
    code="FIR102",
    name="storey-or-bedroom-without-smoke-alarm",
    since="0.1",
    stage="trial use",
    mark="published",
    severity="advise",
    sources=("bs-5839-6", "approved-document-b", "nfpa-72"),
)
def storey_or_bedroom_without_smoke_alarm(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Storeys, and in America bedrooms, that have no smoke alarm.

    What it checks
        Each storey with rooms of ours that people use: whether a smoke alarm is drawn there. In the American rule
        pack each bedroom too.
    Why it matters
        A fire on a storey without an alarm fills the stairs with smoke before the alarm of another storey notices.
    How to put it right
        Add a linked alarm at the place given: on the ceiling of the hall or landing, or of the bedroom.
    What it cannot know
        The dwelling's own alarms that nobody drew; lofts that are slept in. It is a check of distances, not a fire
        design: the local code and licensed practice decide.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets and the limits.

    Yields
    ------
    Finding
        One for each such storey or bedroom.

    Raises
    ------
    NotComputable
        If there is no smoke alarm at all: then nothing is known of the dwelling's own.
    """
    this = storey_or_bedroom_without_smoke_alarm
    present = alarms(site, catalogue, "smoke-alarm")
    each = limit_for(catalogue, "smoke-alarms-a-storey", site)
    for storey in sorted(site.storeys, key=lambda one: one.id):
        rooms = [
            one
            for one in site.spaces
            if one.storey == storey.id and one.is_protected and one.use not in UNUSED
        ]
        if rooms and not any(alarm.place.storey == storey.id for alarm in present):
            yield this.finding(
                storey.id,
                f"{storey.name}: no smoke alarm is drawn there",
                cure=advised("Add a linked smoke alarm", catalogue, each),
                severity=severity_of(each),
                mends=_added(site, catalogue, _best(rooms), row=present[0].row),
            )
    for wanted in catalogue.limits_in("smoke-alarms-a-bedroom", site.place.rule_pack):
        for room in sorted(site.spaces, key=lambda one: one.id):
            has_one = any(alarm.space == room for alarm in present)
            if room.is_protected and room.use == "bedroom" and not has_one:
                yield this.finding(
                    room.id,
                    f"{room.name}: no smoke alarm is drawn in this bedroom",
                    cure=advised("Add a linked smoke alarm", catalogue, wanted),
                    severity=severity_of(wanted),
                    mends=_added(site, catalogue, room, row=present[0].row),
                )


def _best(rooms: list[Space]) -> Space:
    """A way about first, then the largest."""
    return min(
        rooms, key=lambda one: (one.use not in WAYS_ABOUT, -shapely.Polygon(one.outline_m).area, one.id)
    )


def _added(site: Site, catalogue: Catalogue, room: Space, *, row: DeviceSheet) -> tuple[Mend, ...]:
    middle = shapely.Polygon(room.outline_m).representative_point()
    spot = alarm_spot(site, catalogue, room, nearest_to=(float(middle.x), float(middle.y)))
    return added_alarm(row, room, spot)
