"""FIR108: a room where something burns, without a CO alarm."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.fabric import Space
from wardwright.model.fixture import Fixture, FixtureKind
from wardwright.model.placement import space_at
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.rules.alarm_spots import added_alarm, alarm_spot
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.fire_alarms import advised, alarms, to_fixture_m
from wardwright.rules.kit import devices_of
from wardwright.rules.limits import limit_for, severity_of
from wardwright.rules.registry import rule
from wardwright.rules.wall_spots import joined_to

BURNING: tuple[FixtureKind, ...] = ("stove", "fire", "boiler")
"""Kinds of fixture that may burn something."""


@rule(
    code="FIR108",
    name="burning-appliance-without-co-alarm",
    since="0.1",
    stage="trial use",
    mark="from memory",
    severity="check with the standard",
    sources=("en-50292",),
)
def burning_appliance_without_co_alarm(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Rooms with a stove, a fire or a boiler that have no CO alarm.

    What it checks
        For each space with a stove, fire or boiler drawn: whether a CO alarm is drawn in it, or in a space open to
        it, in the British and European rule pack. The American one asks for alarms by the bedrooms instead, and the
        rule says so.
    Why it matters
        Carbon monoxide has no smell. Where it comes from is where it is first met.
    How to put it right
        Add a CO alarm at the place given, 1 to 3 m from the appliance.
    What it cannot know
        Whether the appliance burns anything: an electric one needs none; the dwelling's own alarms that nobody
        drew; appliances that are sealed from the room. It is a check of distances, not a fire design: the local
        code and licensed practice decide.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets and the limits.

    Yields
    ------
    Finding
        One for each such space.

    Raises
    ------
    NotComputable
        If no such appliance is drawn, or the rule pack has no figure.
    """
    this = burning_appliance_without_co_alarm
    each = limit_for(catalogue, "co-alarms-by-an-appliance", site)
    burning: dict[str, tuple[Space, list[Fixture]]] = {}
    for fixture in sorted(site.fixtures, key=lambda one: one.id):
        space = space_at(site, fixture.storey, fixture.centre_m) if fixture.kind in BURNING else None
        if space is not None and space.is_protected:
            burning.setdefault(space.id, (space, []))[1].append(fixture)
    if not burning:
        raise NotComputable("no stove, fire or boiler is drawn", cure="Add what burns gas, oil, wood or coal")
    present = alarms(site, catalogue, "co-alarm") if devices_of(site, catalogue, "co-alarm") else ()
    for space, fixtures in burning.values():
        names = {one.id for one in joined_to(site, space)}
        if not any(alarm.space is not None and alarm.space.id in names for alarm in present):
            yield this.finding(
                space.id,
                f"{space.name}: no CO alarm is drawn, and {fixtures[0].name} may burn something",
                cure=advised("Add a CO alarm, unless the appliance burns nothing", catalogue, each),
                severity=severity_of(each),
                mends=_added(site, catalogue, space, fixtures=fixtures),
                related=tuple(one.id for one in fixtures),
            )


def _added(site: Site, catalogue: Catalogue, space: Space, *, fixtures: list[Fixture]) -> tuple[Mend, ...]:
    row = min(
        (row for row in catalogue.sheets if row.kind == "co-alarm"),
        key=lambda one: one.cheapest_first,
        default=None,
    )
    least, most = (
        limit_for(catalogue, f"co-alarm-to-appliance-{end}", site).value for end in ("least", "most")
    )

    def fits(point: Point2) -> bool:
        far = [to_fixture_m(site, space.storey, point, fixture=one) for one in fixtures]
        return least <= min(far) <= most

    if row is None:
        return ()
    return added_alarm(
        row, space, alarm_spot(site, catalogue, space, nearest_to=fixtures[0].centre_m, fits=fits)
    )
