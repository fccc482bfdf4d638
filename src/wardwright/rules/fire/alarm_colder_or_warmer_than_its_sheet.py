"""FIR110: an alarm where it gets colder or warmer than it works in."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.fabric import SpaceUse
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend, Severity
from wardwright.rules.fire_alarms import Alarm, advised, alarms
from wardwright.rules.limits import severity_of
from wardwright.rules.registry import exactly, rule

UNHEATED: tuple[SpaceUse, ...] = ("loft", "garage", "conservatory", "store", "plant")
"""Uses of spaces whose temperature the site does not tell."""


@rule(
    code="FIR110",
    name="alarm-colder-or-warmer-than-its-sheet",
    since="0.1",
    stage="trial use",
    mark="derived",
    severity="must mend",
    sources=("nfpa-72",),
)
def alarm_colder_or_warmer_than_its_sheet(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Smoke, heat and CO alarms in places that get colder or warmer than their sheet allows.

    What it checks
        For each alarm, the usual and the warmest temperature of the rooms as the site tells them, against the range
        on its own sheet; in America smoke alarms also against 40 to 100 deg F. Lofts, garages and conservatories
        are not run: how cold and warm they get is not told.
    Why it matters
        Out of its range an alarm rings for nothing, or its cell gives up in the first frost.
    How to put it right
        Use one whose sheet is for that range, or move it to a heated room.
    What it cannot know
        How cold the house gets when nobody heats it; sun on the ceiling of a top floor. It is a check of distances,
        not a fire design: the local code and licensed practice decide.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets and the limits.

    Yields
    ------
    Finding
        One for each such alarm, with the temperature and the limit [deg C]: `must mend` where its own sheet names
        the limit; one of severity `not run` for each alarm in an unheated space.

    Raises
    ------
    NotComputable
        If there is no such alarm.
    """
    this = alarm_colder_or_warmer_than_its_sheet
    for alarm in alarms(site, catalogue, "smoke-alarm", "heat-alarm", "co-alarm"):
        if alarm.space is None or alarm.space.use in UNHEATED or alarm.space.is_outdoors:
            where = "outside" if alarm.space is None else alarm.space.name
            yield this.not_run(
                alarm.device.id,
                f"{alarm.device.name}: how cold and warm it gets in {where} is not told",
                cure="Ask how cold and warm it gets there, and hold it against the sheet",
            )
            continue
        found = _broken(site, catalogue, alarm)
        if found is None:
            continue
        field, value, limit, severity, words = found
        yield this.finding(
            alarm.device.id,
            f"{alarm.device.name}: it gets {'colder' if value < limit else 'warmer'} in {alarm.space.name}"
            f" than {words} allows",
            cure=advised("Use one for that range, or move it to another room", catalogue),
            severity=severity,
            estimate=exactly(value, "deg C", site.place.basis_of(field)),
            limit=limit,
            mends=_other(site, catalogue, alarm),
        )


def _broken(site: Site, catalogue: Catalogue, alarm: Alarm) -> tuple[str, float, float, Severity, str] | None:
    """The field of the place, its temperature, the limit it breaks, how grave that is, and whose limit it is."""
    cold, warm = site.place.usual_room_c, site.place.warm_room_c
    own = "its own sheet"
    if cold < alarm.sheet.coldest_c:
        return "usual_room_c", cold, alarm.sheet.coldest_c, "must mend", own
    if warm > alarm.sheet.warmest_c:
        return "warm_room_c", warm, alarm.sheet.warmest_c, "must mend", own
    if alarm.row.kind != "smoke-alarm":
        return None
    for limit in catalogue.limits_in("smoke-alarm-coldest", site.place.rule_pack):
        if cold < limit.value:
            return "usual_room_c", cold, limit.value, severity_of(limit), "public guidance"
    for limit in catalogue.limits_in("smoke-alarm-warmest", site.place.rule_pack):
        if warm > limit.value:
            return "warm_room_c", warm, limit.value, severity_of(limit), "public guidance"
    return None


def _other(site: Site, catalogue: Catalogue, alarm: Alarm) -> tuple[Mend, ...]:
    """A sheet of the same kind that is for this range."""
    found = sorted(
        row.cheapest_first
        for row in catalogue.sheets
        if row.kind == alarm.row.kind
        and row.fire is not None
        and _broken(site, catalogue, alarm._replace(row=row, sheet=row.fire)) is None
    )
    return tuple(
        Mend(action="replace-device", subject=alarm.device.id, values=(("sheet", name),))
        for *_, name in found[:1]
    )
