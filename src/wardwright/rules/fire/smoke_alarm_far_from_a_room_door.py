"""FIR101: a habitable room's door farther from a smoke alarm than is asked."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.fabric import Space
from wardwright.model.limits import Limit
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.walking.from_site import Spot
from wardwright.rules.alarm_spots import added_alarm, alarm_spot
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.fire_alarms import HABITABLE, WAYS_ABOUT, advised, alarms, below, doors_of, walk_m
from wardwright.rules.limits import severity_of
from wardwright.rules.registry import exactly, rule, weakest


@rule(
    code="FIR101",
    name="smoke-alarm-far-from-a-room-door",
    since="0.1",
    stage="trial use",
    mark="published",
    severity="advise",
    sources=("bs-5839-6", "approved-document-b", "nfpa-72"),
)
def smoke_alarm_far_from_a_room_door(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Bedrooms and living rooms whose doors are farther from the nearest smoke alarm than the rule pack asks.

    What it checks
        The walk, on the floor and the stairs, from the place under the nearest smoke alarm to the nearest doorway
        of each habitable room: at most 3 m to a bedroom and 7.5 m to any other in Britain and Europe; 21 ft (6.4 m)
        to a bedroom in America.
    Why it matters
        Smoke reaches a far alarm late, and people behind a shut bedroom door hear it faintly.
    How to put it right
        Add a linked alarm at the place given, on the ceiling of the way out that the room opens on.
    What it cannot know
        The dwelling's own alarms that nobody drew; which room is slept in now; how loud the alarm is behind a shut
        door. It is a check of distances, not a fire design: the local code and licensed practice decide.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets and the limits.

    Yields
    ------
    Finding
        One for each such room, with the walk and the limit [m]; one of severity `not run` for each room without a
        drawn way to it.

    Raises
    ------
    NotComputable
        If there is no smoke alarm, or no habitable room is drawn.
    """
    this = smoke_alarm_far_from_a_room_door
    present = alarms(site, catalogue, "smoke-alarm")
    rooms = [
        one
        for one in sorted(site.spaces, key=lambda one: one.id)
        if one.is_protected and one.use in HABITABLE
    ]
    if not rooms:
        raise NotComputable("no habitable room is drawn", cure="Add the rooms, and what each is used for")
    for room in rooms:
        asked = _asked(site, catalogue, room)
        if asked is None:
            continue
        walks = [
            (walk_m(site, door, below(alarm)), alarm.device.id, number)
            for number, door in enumerate(doors_of(site, room))
            for alarm in present
        ]
        length, nearest, number = min(walks, default=(math.inf, "", 0))
        if math.isinf(length):
            yield this.not_run(
                room.id,
                f"No walk was found from a smoke alarm to {room.name}",
                cure="Draw the doors, gaps and stairs between them",
            )
        elif length > asked.value:
            door = doors_of(site, room)[number]
            yield this.finding(
                room.id,
                f"{room.name}: the walk from the nearest smoke alarm to its door is too long",
                cure=advised("Add a linked smoke alarm nearer to its door", catalogue, asked),
                severity=severity_of(asked),
                estimate=exactly(
                    length, "m", weakest(site.device(nearest).basis_of("mount"), room.basis_of("use"))
                ),
                limit=asked.value,
                mends=_added(site, catalogue, room, door=door, row=present[0].row, most_m=asked.value),
                sketches=(
                    Sketch(role="fault", storey=door.storey, points=((door.x, door.y),), label=room.name),
                ),
                related=(nearest,),
            )


def _asked(site: Site, catalogue: Catalogue, room: Space) -> Limit | None:
    name = "smoke-alarm-to-bedroom-door" if room.use == "bedroom" else "smoke-alarm-to-room-door"
    return next(iter(catalogue.limits_in(name, site.place.rule_pack)), None)


def _added(
    site: Site, catalogue: Catalogue, room: Space, *, door: Spot, row: DeviceSheet, most_m: float
) -> tuple[Mend, ...]:
    """One more alarm on a way about the same storey, or in the room itself where none is near enough."""
    about = [
        one for one in site.spaces if one.is_protected and one.storey == room.storey and one.use in WAYS_ABOUT
    ]
    for space in (*sorted(about, key=lambda one: one.id), room):
        spot = alarm_spot(
            site,
            catalogue,
            space,
            nearest_to=(door.x, door.y),
            fits=lambda point, storey=space.storey: walk_m(site, door, Spot(storey, *point)) <= most_m,  # type: ignore[misc]
        )
        if spot is not None:
            return added_alarm(row, space, spot)
    return ()
