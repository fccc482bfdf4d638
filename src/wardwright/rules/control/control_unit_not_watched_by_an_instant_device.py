"""CTL102: the control unit can be reached without anything alarming at once."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.entry_routes import place_before
from wardwright.rules.finding import Finding
from wardwright.rules.instant_watch import Watched, watched_at_once, watched_shapes
from wardwright.rules.kit import control_units
from wardwright.rules.registry import rule
from wardwright.rules.suggestion import suggestions
from wardwright.rules.unit_spots import moved_to_watched_spot
from wardwright.rules.wall_spots import room_of


@rule(
    code="CTL102",
    name="control-unit-not-watched-by-an-instant-device",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def control_unit_not_watched_by_an_instant_device(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Control units that can be reached with nothing alarming at once.

    What it checks
        Whether the place before each control unit lies where a movement detector surely notices a person, or every
        door, window and gap of its room has a device that notices it opened, a fixed pane one that notices it
        broken: an opening contact on a leaf that is usually shut, a shock detector on one that has to be forced, a
        glass-break detector that hears the pane. All in a zone that, with nobody in, alarms at once, neither starting
        the entry time nor let pass after it has started.
    Why it matters
        The unit is what everything else needs. Behind an entry route only, it can be broken while the entry time
        runs, and nothing has sounded or been sent.
    How to put it right
        Move the unit to a place that an instant device watches already; the finding carries the nearest one off the
        entry route. Otherwise add a movement detector to its room and make it instant.
    What it cannot know
        Holes made in walls or ceilings, or in the panes of leaves that open, which open no contact; a detector that
        is masked or asleep after an earlier signal; whether the unit sends a message when it is struck.

    Parameters
    ----------
    site : Site
        The house, its devices and zones.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each unit that nothing watches at once; detectors that do watch it, but let the entry pass, are
        named as related.

    Raises
    ------
    NotComputable
        If there is no control unit, or no zone says how a device answers.
    """
    this = control_unit_not_watched_by_an_instant_device
    units = control_units(site, catalogue)
    if not site.zones:
        raise NotComputable(
            "no zone is programmed, so no device is known to alarm at once",
            cure="Add the zones and their behaviours",
        )
    watched = watched_at_once(site, catalogue)
    everything = frozenset(device.id for device in site.devices)
    for unit, sheet in units:
        before = place_before(site, unit)
        at = (before.x, before.y)
        room = room_of(site, before.storey, at)
        if watched.by(before.storey, at, room=room):
            continue
        late = Watched(watched_shapes(site, catalogue, everything), frozenset())
        others = late.by(before.storey, at, room=room)
        names = ", ".join(site.device(name).name for name in others)
        has_keypad = sheet is not None and sheet.has_keypad
        mends = () if has_keypad else moved_to_watched_spot(site, catalogue, unit)
        new = suggestions(site, mends)
        place = standing(site, unit)
        yield this.finding(
            unit.id,
            f"{unit.name}: nothing that alarms at once watches it"
            + (f"; {names} does, but not at once" if others else ""),
            cure=f"Move it to the place given, in {new[0].label}"
            if new
            else "Watch its room with a movement detector that alarms at once",
            mends=mends,
            sketches=(
                Sketch(role="fault", storey=place.storey, points=((place.x_m, place.y_m),), label=unit.name),
                *new,
            ),
            related=others,
        )
