"""FIR104: an alarm too far below the ceiling, or too close under it."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import CeilingMount, FreeMount
from wardwright.model.limits import Limit
from wardwright.model.placement import ceiling_height, sides_of_opening
from wardwright.model.site import Site
from wardwright.rules.alarm_spots import ROUNDING_M
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.fire_alarms import Alarm, advised, alarms
from wardwright.rules.limits import severity_of
from wardwright.rules.registry import exactly, rule


@rule(
    code="FIR104",
    name="alarm-height-outside-its-range",
    since="0.1",
    stage="trial use",
    mark="from memory",
    severity="check with the standard",
    sources=("approved-document-b", "nfpa-72", "en-50292"),
)
def alarm_height_outside_its_range(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Smoke, heat and CO alarms whose height below the ceiling is out of the range that is asked.

    What it checks
        How far the middle of each alarm is below the ceiling above it. Smoke: 25 to 600 mm in Britain, at most 12
        in on a wall in America. Heat: 25 to 150 mm. CO on a wall: at least 150 mm below the ceiling, and above the
        heads of the doors and windows of its room.
    Why it matters
        Hot smoke fills a room from the ceiling down, but leaves the topmost air still; CO mixes, and goes out by
        the top of an open door.
    How to put it right
        Fix it at the height given, or hang it from the ceiling.
    What it cannot know
        How deep the alarm's own sensing part sits; beams; CO alarms that stand by a bed at breathing height, which
        are left out. It is a check of distances, not a fire design: the local code and licensed practice decide.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets and the limits.

    Yields
    ------
    Finding
        One for each such alarm, with its distance below the ceiling and the limit [m]; one of severity `not run`
        for each alarm whose kind the rule pack has no figure for.

    Raises
    ------
    NotComputable
        If there is no such alarm.
    """
    this = alarm_height_outside_its_range
    for alarm in alarms(site, catalogue, "smoke-alarm", "heat-alarm", "co-alarm"):
        is_co = alarm.row.kind == "co-alarm"
        if is_co and isinstance(alarm.device.mount, CeilingMount | FreeMount):
            continue
        least, most = (_asked(site, catalogue, alarm, end=end) for end in ("least", "most"))
        if least is None and most is None:
            yield this.not_run(
                alarm.device.id,
                f"{alarm.device.name}: no figure for its height is known in the rule pack {site.place.rule_pack}",
                cure="Go by its maker's sheet",
            )
            continue
        ceiling = ceiling_height(site, alarm.place.storey, alarm.point)
        under = ceiling - alarm.place.height_m
        heads = _heads_m(site, alarm) if is_co else 0.0
        broken, should = None, under
        if least is not None and under < least.value - ROUNDING_M:
            broken, should, how = least, least.value, "too close under the ceiling"
        elif most is not None and under > most.value + ROUNDING_M:
            broken, should, how = most, most.value, "too far below the ceiling"
        elif least is not None and alarm.place.height_m < heads - ROUNDING_M:
            broken, should, how = least, least.value, "below the head of a door or window"
        if broken is None:
            continue
        height = ceiling - should
        can_mend = height >= heads and not isinstance(alarm.device.mount, CeilingMount)
        yield this.finding(
            alarm.device.id,
            f"{alarm.device.name}: it is {how}",
            cure=advised("Fix it at the height given" if can_mend else "Fix it elsewhere", catalogue, broken),
            severity=severity_of(broken),
            estimate=exactly(under, "m", alarm.device.basis_of("mount")),
            limit=broken.value,
            mends=(Mend(action="change-mount", subject=alarm.device.id, values=(("height_m", height),)),)
            if can_mend
            else (),
        )


def _asked(site: Site, catalogue: Catalogue, alarm: Alarm, *, end: str) -> Limit | None:
    name = f"{alarm.row.kind}-below-ceiling-{end}"
    return next(iter(catalogue.limits_in(name, site.place.rule_pack)), None)


def _heads_m(site: Site, alarm: Alarm) -> float:
    """The highest head of a door or window of its room. [m]"""
    if alarm.space is None:
        return 0.0
    heads = [one.head_m for one in site.openings if alarm.space.id in sides_of_opening(site, one)]
    return max(heads, default=0.0)
