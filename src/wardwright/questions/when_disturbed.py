"""Question 9: when, in dates and clock hours, will sun, a hot thing or headlights disturb this detector?"""

from __future__ import annotations

from functools import lru_cache

import numpy as np
import shapely

from wardwright.errors import NotComputable
from wardwright.geometry.raster import outlines
from wardwright.model.catalogue import Catalogue
from wardwright.model.daylight import GlossyFloor, Mirror
from wardwright.model.device import Device
from wardwright.model.estimate import Estimate
from wardwright.model.placement import space_at, standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.detection.from_site import Watch, watch
from wardwright.physics.sunlight.from_site import brightest, sun_of, year_of
from wardwright.physics.sunlight.shine import Beam, View
from wardwright.questions.answer import Answer, PartAnswer, Verdict, about_the_site, unanswered
from wardwright.questions.sunshine import Sunshine, sunshine
from wardwright.rules.finding import Mend
from wardwright.rules.hot_things import hot_things_in_view, hot_things_near
from wardwright.rules.out_of_the_sun import blinds, out_of_the_sun
from wardwright.rules.strong_lights import Light, headlamps, sees_bare_pane
from wardwright.rules.sun_on_detectors import LENS_LIMIT_MIN, VIEW_LIMIT_MIN, SunOn, sun_on
from wardwright.rules.sun_thrown import thrown_on
from wardwright.trials.watchers import devices_of

NUMBER = 9
Thrown = tuple[tuple[GlossyFloor | Mirror, Beam], ...]
MEASURE = "sun straight on its lens in a year"
OUTSIDE_M = 1.5
"""How far outside of the wall a beam is drawn. [m]"""


def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """One answer for each movement detector and for each camera in a room."""
    return _answers(site, catalogue, with_mends=True)


def without_mends(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """The same without what would mend them: quicker, for what is still in the hand that moves it."""
    return _answers(site, catalogue, with_mends=False)


def _answers(site: Site, catalogue: Catalogue, *, with_mends: bool) -> tuple[Answer, ...]:
    found = [*devices_of(site, catalogue, "movement-detector"), *_cameras(site, catalogue)]
    if not found:
        return (about_the_site(NUMBER, MEASURE, site=site, reason="no movement detector or camera inside"),)
    return tuple(_answer(site.bare, catalogue, device, with_mends=with_mends) for device in found)


def _cameras(site: Site, catalogue: Catalogue) -> list[Device]:
    """Cameras that hang in a room."""
    found = []
    for device in devices_of(site, catalogue, "camera"):
        place = standing(site, device)
        space = space_at(site, place.storey, (place.x_m, place.y_m))
        if space is not None and not space.is_outdoors:
            found.append(device)
    return found


@lru_cache(maxsize=256)
def _answer(house: Site, catalogue: Catalogue, device: Device, *, with_mends: bool) -> Answer:
    near = _hot(house, catalogue, device)
    try:
        sun = sun_on(house, catalogue, device)
    except NotComputable as missing:
        none = unanswered(
            NUMBER,
            MEASURE,
            subject=device.name,
            subject_id=device.id,
            reason=f"not computable: {missing}",
        )
        return none.model_copy(update={"notes": _other_notes(house, catalogue, device, near=near)})
    lamps = _lamps(house, catalogue, device)
    thrown = thrown_on(house, catalogue, device)
    shining = _shining(house, sun)
    return Answer(
        question=NUMBER,
        subject=device.name,
        subject_id=device.id,
        measure=MEASURE,
        estimate=sun.lens,
        verdict=_verdict(sun, is_hot=bool(near), is_bright=lamps is not None or bool(thrown)),
        parts=(*_parts(house, sun, shining, lamps=lamps), *_thrown_parts(house, thrown)),
        notes=(*_sun_notes(house, sun, shining), *_other_notes(house, catalogue, device, near=near)),
        mends=_mends(house, catalogue, device, sun=sun) if with_mends else (),
        sketches=_sketches(house, catalogue, device, sun=sun),
        sunshine=shining,
    )


def _shining(house: Site, sun: SunOn) -> tuple[Sunshine, ...]:
    year = sun_of(house)
    onto_lens = [sunshine(year, beam, onto="lens") for beam in sun.on_lens]
    return (*onto_lens, *(sunshine(year, beam, onto="view") for beam in sun.in_view))


def _lamps(house: Site, catalogue: Catalogue, device: Device) -> Light | None:
    """Headlamps that fall on it, unless its sheet stands them."""
    sheet = catalogue.sheet(device.sheet).movement
    if sheet is None or house.ground.road_m is None:
        return None
    light = headlamps(house, device, sheet, figure=catalogue.figure("headlamp"))
    stands = sheet.white_light_lux
    return None if light is None or (stands is not None and light.strength.value <= stands) else light


def _hot(house: Site, catalogue: Catalogue, device: Device) -> tuple[str, ...]:
    """Names of warm things nearer than its sheet wants them."""
    sheet, place = catalogue.sheet(device.sheet).movement, standing(house, device)
    if sheet is None:
        return ()
    near = hot_things_near(house, place.storey, (place.x_m, place.y_m), clearance_m=sheet.hot_clearance_m)
    return tuple(one.fixture.name for one in near)


def _verdict(sun: SunOn, *, is_hot: bool, is_bright: bool) -> Verdict:
    if sun.lens.value > LENS_LIMIT_MIN:
        return "bad"
    lies_long = sun.view is not None and sun.view.value > VIEW_LIMIT_MIN
    return "thin" if sun.lens.high > LENS_LIMIT_MIN or lies_long or is_hot or is_bright else "good"


def _parts(
    house: Site, sun: SunOn, shining: tuple[Sunshine, ...], *, lamps: Light | None
) -> tuple[PartAnswer, ...]:
    found = [] if sun.view is None else [PartAnswer(name="sun on floor in its view", estimate=sun.view)]
    for one in shining:
        if one.is_covered:
            continue
        where = "straight on its lens" if one.onto == "lens" else "on floor in its view"
        minutes = Estimate(value=one.minutes, low=one.minutes, high=one.minutes, unit="min", basis="default")
        name = f"through {house.opening(one.opening).name} {where}"
        found.append(PartAnswer(name=name, estimate=minutes))
    if lamps is not None:
        name = f"headlamps through {lamps.opening.name} on its lens"
        found.append(PartAnswer(name=name, estimate=lamps.strength))
    return tuple(found)


def _thrown_parts(house: Site, thrown: Thrown) -> tuple[PartAnswer, ...]:
    """Minutes of sun that something smooth throws on it."""
    found = []
    for thing, beam in thrown:
        minutes = len(beam.steps) * year_of(house).step_min
        one = Estimate(value=minutes, low=minutes, high=minutes, unit="min", basis="default")
        name = f"through {house.opening(beam.opening).name}, thrown on its lens by {thing.name}"
        found.append(PartAnswer(name=name, estimate=one))
    return tuple(found)


def _sun_notes(house: Site, sun: SunOn, shining: tuple[Sunshine, ...]) -> tuple[str, ...]:
    notes = []
    if not sun.is_north_known:
        notes.append("north not known: worst of all norths, tried every 15 degrees")
    if sun_of(house).zone is None:
        notes.append("no time zone or longitude is known: hours are the sun's mean time, without summer time")
    covered = dict.fromkeys(one.opening for one in shining if one.is_covered)
    notes += [
        f"{house.opening(name).name}: its {house.opening(name).covering} keeps the sun out only when it is "
        "drawn whenever the alarm is set"
        for name in covered
    ]
    notes.append("clear sky all year: trees, hills, and what is not drawn outside hide nothing")
    return tuple(notes)


def _other_notes(
    house: Site, catalogue: Catalogue, device: Device, *, near: tuple[str, ...]
) -> tuple[str, ...]:
    sheet = catalogue.sheet(device.sheet).movement
    if sheet is None:
        return ()
    notes = (
        [f"nearer to it than its sheet wants, whenever the heating is on: {', '.join(near)}"] if near else []
    )
    seen = [name for name in hot_things_in_view(house, watch(house, catalogue, device)) if name not in near]
    if seen:
        notes.append(f"warm things in its view, whenever they warm up or blow: {', '.join(seen)}")
    if house.ground.road_m is None and sees_bare_pane(house, device, sheet):
        notes.append("headlamps were not looked at: no road is drawn")
    return tuple(notes)


def _mends(house: Site, catalogue: Catalogue, device: Device, *, sun: SunOn) -> tuple[Mend, ...]:
    if sun.lens.value <= LENS_LIMIT_MIN:
        return ()
    sheet = catalogue.sheet(device.sheet).movement
    if sheet is None:
        return blinds(sun)
    return out_of_the_sun(house, catalogue, device, sheet=sheet, sun=sun)


def _sketches(house: Site, catalogue: Catalogue, device: Device, *, sun: SunOn) -> tuple[Sketch, ...]:
    """The middle beam of each pane on the lens, and the floor that is lit when most of it is."""
    place, found = standing(house, device), []
    for beam in sun.on_lens:
        bearing = float(beam.bearings[len(beam.bearings) // 2])
        wall = house.wall(house.opening(beam.opening).wall)
        eye = np.array((place.x_m, place.y_m))
        toward = np.array((np.cos(bearing), np.sin(bearing)))
        line = shapely.LineString([eye, eye + 60.0 * toward])
        met = line.intersection(shapely.LineString(wall.line_m))
        reach = shapely.distance(shapely.Point(eye), met) + OUTSIDE_M if not met.is_empty else OUTSIDE_M
        start = tuple((eye + reach * toward).tolist())
        found.append(
            Sketch(
                role="beam",
                storey=place.storey,
                points=(start, (place.x_m, place.y_m)),
                label=house.opening(beam.opening).name,
            )
        )
    if catalogue.sheet(device.sheet).movement is not None:
        shapes = watch(house, catalogue, device)
        found += [_lit(house, shapes, beam, north=sun.north) for beam in sun.in_view if not beam.is_covered]
    return tuple(found)


def _lit(house: Site, shapes: Watch, beam: Beam, *, north: float) -> Sketch:
    mask = brightest(house, View(shapes.storey, shapes.grid, shapes.seen), beam, north=north)
    rings = outlines(shapes.grid, mask, tolerance=shapes.grid.cell)
    return Sketch(role="sunlit", storey=shapes.storey, rings=rings, label=house.opening(beam.opening).name)
