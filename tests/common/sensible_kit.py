"""A sensible kit for any house, placed by plain habit, so that every question has something to answer."""

from __future__ import annotations

import math
from collections.abc import Iterator

import shapely

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import CeilingMount, Device, FreeMount, OpeningMount, WallMount
from wardwright.model.fabric import Space
from wardwright.model.household import Person, Pet, Target
from wardwright.model.opening import Opening
from wardwright.model.place import Place
from wardwright.model.placement import sides_of_opening
from wardwright.model.programme import Programme, Zone
from wardwright.model.record import Point2
from wardwright.model.revision import replaced
from wardwright.model.site import Site
from wardwright.physics.video.from_site import named_points
from wardwright.rules.camera_view import view_of
from wardwright.rules.outside_spots import outer_spots
from wardwright.rules.sheet_heights import top_of_face
from wardwright.rules.wall_spots import WallSpot, wall_spots
from wardwright.trials.ways_in import by_opening, ways_in

WATCHED = ("hall", "landing", "living", "dining", "kitchen", "study", "bedroom")
WORTH_TAKING = ("living", "bedroom", "study")
DETECTOR_M = 2.2
KEYPAD_M = 1.3
UNIT_M = 1.5
LEAST_AREA_M2 = 4.0
CAMERA_M = 2.6
BELOW_TOP_M = 0.1
CAMERA_OFF_M = 2.0
CAMERA_FARTHEST_M = 6.0
CAMERA_TILT_DEG = 25.0


def with_sensible_kit(site: Site, catalogue: Catalogue) -> Site:
    """The house with people, pets, targets, a whole kit, its zones and times; what it had of these is replaced.

    At night what is at openings is set, and nothing else.
    """
    ours = sorted((s for s in site.spaces if s.is_protected), key=lambda s: s.id)
    openings = [chosen[0].opening for chosen in by_opening(ways_in(site, catalogue)[0])]
    entry = _entry_door(site, openings)
    bare = replaced(
        site,
        devices=(), zones=(),
        pets=(
            Pet(id="cat", name="cat", kind="cat", height_m=0.28, mass_kg=4.5),
            Pet(id="dog", name="dog", kind="big-dog", height_m=0.55, mass_kg=24.0),
        ),
        people=_people(ours),
        targets=tuple(
            Target(id=f"target-{s.id}"[:80], name=f"what lies in {s.name}", space=s.id)
            for s in ours if s.use in WORTH_TAKING
        ),
        openings=tuple(_as_entry(o) if entry is not None and o.id == entry.id else o for o in site.openings),
        programme=Programme(entry_time_s=30.0, exit_time_s=45.0),
        place=_on_earth(site.place),
    )  # fmt: skip
    kit = (
        *_controls(bare, ours, entry),
        *_detectors(bare, ours, openings),
        *_warnings(bare, ours),
        *_camera(bare, catalogue, entry),
    )
    zoned = [(device, behaviour) for device, behaviour in kit if behaviour]
    zones = tuple(
        Zone(
            id=f"zone-{i}", number=i, name=device.name, devices=(device.id,),
            behaviour="entry-exit" if _is_on(device, entry) else behaviour,
            parts=("full", "night") if isinstance(device.mount, OpeningMount) else ("full",),
        )
        for i, (device, behaviour) in enumerate(zoned, 1)
    )  # fmt: skip
    return replaced(bare, devices=tuple(device for device, _ in kit), zones=zones)


def _on_earth(place: Place) -> Place:
    """The place with a latitude, which no drawing tells; north stays as it is."""
    return (
        place
        if place.latitude_deg is not None
        else place.model_copy(update={"latitude_deg": 51.5, "longitude_deg": 0.0})
    )


def _entry_door(site: Site, openings: list[Opening]) -> Opening | None:
    """The door that says it is one, or else the widest single door on the lowest storey."""
    doors = [o for o in openings if o.kind == "door"]
    storey = {w.id: w.storey for w in site.walls}
    level = {s.id: s.elevation_m for s in site.storeys}
    doors.sort(key=lambda o: (not o.is_entry_door, level[storey[o.wall]], o.leaves != 1, -o.width_m, o.id))
    return doors[0] if doors else None


def _as_entry(opening: Opening) -> Opening:
    return opening.model_copy(update={"is_entry_door": True})


def _people(ours: list[Space]) -> tuple[Person, ...]:
    beds = [s.id for s in ours if s.use == "bedroom"]
    return (
        Person(id="adult", name="adult", pace="usual", bed=beds[0] if beds else None),
        Person(id="elder", name="elder", pace="slow", bed=beds[-1] if beds else None),
    )


def _controls(site: Site, ours: list[Space], entry: Opening | None) -> Iterator[tuple[Device, str]]:
    """The control unit away from the door, the keypad beside it, a hold-up button, a message path."""
    inside = [s for s in ([] if entry is None else sides_of_opening(site, entry)) if s is not None]
    first = next((s for s in ours if s.id in inside), ours[0] if ours else None)
    if first is None:
        return
    near = _middle(first)
    if entry is not None:
        near = shapely.LineString(site.wall(entry.wall).line_m).interpolate(entry.offset_m).coords[0]
    spots = sorted(wall_spots(site, first, height_m=KEYPAD_M), key=lambda s: (_far(s, near), s))
    if spots:
        yield _on_wall("keypad", "keypad", "keypad-radio", spots[0], height=KEYPAD_M), ""
    others = [s for s in ours if s.id != first.id and s.storey == first.storey] or [first]
    found = sorted(
        (spot for space in others for spot in wall_spots(site, space, height_m=UNIT_M)),
        key=lambda s: (-_far(s, near), s),
    )
    if found:
        yield _on_wall("control-unit", "control unit", "control-unit-radio", found[0], height=UNIT_M), ""
        last = found[min(2, len(found) - 1)]
        yield _on_wall("message-path", "message path", "message-both", last, height=UNIT_M), ""
    else:
        mount = FreeMount(storey=first.storey, at_m=_middle(first), height_m=1.0)
        yield Device(id="control-unit", name="control unit", sheet="control-unit-radio", mount=mount), ""


def _detectors(site: Site, ours: list[Space], openings: list[Opening]) -> Iterator[tuple[Device, str]]:
    """A movement detector in a corner of each room that is walked through, a contact on each leaf that opens."""
    for space in ours:
        if (space.use in WATCHED or space.use == "other") and shapely.Polygon(
            space.outline_m
        ).area >= LEAST_AREA_M2:
            corners = [s for s in wall_spots(site, space, height_m=DETECTOR_M) if s.corner]
            if corners:
                behaviour = "entry-route" if space.use == "hall" else "instant"
                device = _on_wall(
                    f"{space.id}-movement"[:80], f"{space.name} movement", "movement-12m", min(corners),
                    height=DETECTOR_M, heading=min(corners).heading_deg,
                )  # fmt: skip
                yield device, behaviour
    for opening in openings:
        if opening.hinge != "fixed" and opening.kind not in ("gap", "rooflight") and opening.leaves:
            sheet = "contact-roller-door" if opening.kind == "garage-door" else "contact-radio"
            device = Device(
                id=f"{opening.id}-contact"[:80], name=f"{opening.name} contact", sheet=sheet,
                mount=OpeningMount(opening=opening.id, gap_m=0.006),
            )  # fmt: skip
            yield device, "instant"


def _warnings(site: Site, ours: list[Space]) -> Iterator[tuple[Device, str]]:
    """A sounder inside, a smoke alarm on each storey, a heat alarm in the kitchen."""
    roomy = sorted(ours, key=lambda s: (-shapely.Polygon(s.outline_m).area, s.id))
    for space in roomy[:1]:
        spots = wall_spots(site, space, height_m=DETECTOR_M)
        if spots:
            yield (
                _on_wall("sounder", "sounder", "sounder-inside", spots[len(spots) // 2], height=DETECTOR_M),
                "",
            )
    for storey in sorted({s.storey for s in ours}):
        there = [s for s in ours if s.storey == storey]
        space = min(there, key=lambda s: (s.use not in ("hall", "landing"), s.id))
        yield _overhead(f"{storey}-smoke", f"{space.name} smoke", "smoke-alarm-radio", space), "fire"
    for space in ours:
        if space.use == "kitchen":
            yield _overhead(f"{space.id}-heat", f"{space.name} heat", "heat-alarm-radio", space), "fire"


def _camera(site: Site, catalogue: Catalogue, entry: Opening | None) -> Iterator[tuple[Device, str]]:
    """A camera outside, some two metres beside the entry door, or inside by it: the first that shows a face there."""
    if entry is None:
        return
    door = shapely.LineString(site.wall(entry.wall).line_m).interpolate(entry.offset_m).coords[0]
    storey = site.wall(entry.wall).storey
    rooms = [site.space(s) for s in sides_of_opening(site, entry) if s is not None]
    inside = [
        spot for room in rooms if room.is_protected for spot in wall_spots(site, room, height_m=DETECTOR_M)
    ]
    for sheet, height, spots in (
        ("camera-outside", CAMERA_M, [s for s in outer_spots(site) if s.storey == storey]),
        ("camera-inside", DETECTOR_M, inside),
    ):
        row = catalogue.sheet(sheet)
        near = [s for s in spots if _far(s, door) < CAMERA_FARTHEST_M]
        for spot in sorted(near, key=lambda s: (abs(_far(s, door) - CAMERA_OFF_M), s)):
            top = top_of_face(site, spot.wall, (spot.x_m, spot.y_m)) - BELOW_TOP_M
            first = _on_wall(
                "camera", "camera", sheet, spot, height=min(height, top), heading=spot.normal_deg % 360.0
            )
            face = next((one.at for one in named_points(site, first) if one.ident == entry.id), None)
            if face is None or row.camera is None:
                break
            heading = math.degrees(math.atan2(face[1] - spot.y_m, face[0] - spot.x_m)) % 360.0
            aimed = first.model_copy(update={"heading_deg": heading, "tilt_deg": CAMERA_TILT_DEG})
            best = view_of(site, aimed, row.camera).deciding
            if best is not None and best.density > 0.0:
                yield aimed, ""
                return


def _on_wall(
    device_id: str, name: str, sheet: str, spot: WallSpot, *, height: float, heading: float | None = None
) -> Device:
    mount = WallMount(wall=spot.wall, side=spot.side, offset_m=spot.offset_m, height_m=height)
    return Device(id=device_id, name=name, sheet=sheet, mount=mount, heading_deg=heading)


def _overhead(device_id: str, name: str, sheet: str, space: Space) -> Device:
    mount = CeilingMount(storey=space.storey, at_m=_middle(space))
    return Device(id=device_id[:80], name=name, sheet=sheet, mount=mount)


def _middle(space: Space) -> Point2:
    point = shapely.Polygon(space.outline_m).representative_point()
    return (float(point.x), float(point.y))


def _far(spot: WallSpot, place: Point2) -> float:
    return math.dist((spot.x_m, spot.y_m), place)


def _is_on(device: Device, opening: Opening | None) -> bool:
    mount = device.mount
    return opening is not None and isinstance(mount, OpeningMount) and mount.opening == opening.id
