"""The sun in a house: beams held against another ray caster, and what may never happen."""

from __future__ import annotations

import math
from functools import lru_cache

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from common.sun_by_rays import STEPS_A_DAY, cast, caster_of, sky_of
from common.turning import quarter_turned
from wardwright.errors import NotComputable
from wardwright.geometry.raster import BoolArray
from wardwright.model.daylight import panes_of
from wardwright.model.floor_cells import floor_cells
from wardwright.model.place import Place
from wardwright.model.site import Site
from wardwright.model.surfaces import level_of
from wardwright.model.surroundings import GroundThing
from wardwright.physics.sunlight.from_site import (
    beams_into,
    beams_on,
    sun_of,
    year_of,
)
from wardwright.physics.sunlight.shine import Lens, View
from wardwright.store.samples import read_sample

LENSES = (
    Lens("ground", 2.71, 1.38, 1.3),
    Lens("ground", 3.79, 2.76, 1.7),
    Lens("ground", 4.33, 0.46, 1.0),
    Lens("ground", 1.38, 5.81, 1.3),
    Lens("first", 0.54, 1.89, 4.0),
    Lens("first", 2.71, 0.99, 4.0),
    Lens("first", 4.33, 0.33, 3.7),
)


@lru_cache
def terrace() -> Site:
    return read_sample("terrace")


@lru_cache
def shaded() -> Site:
    """The terrace with eaves, a canopy over the living room window and a house across the street."""
    things = (
        thing("eaves", "overhang", (-0.3, -0.9, 5.0, -0.3), low=4.95, high=5.1),
        thing("canopy", "overhang", (2.0, -1.4, 4.8, -0.3), low=2.4, high=2.5),
        thing("across", "building", (-4.0, -16.0, 3.0, -11.0), low=0.0, high=8.0),
    )
    ground = terrace().ground
    return terrace().model_copy(
        update={"ground": ground.model_copy(update={"things": ground.things + things})}
    )


def thing(
    name: str, kind: str, sides: tuple[float, float, float, float], *, low: float, high: float
) -> GroundThing:
    x0, y0, x1, y1 = sides
    outline = ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
    return GroundThing.model_validate(
        {"id": name, "name": name, "kind": kind, "outline_m": outline, "base_m": low, "height_m": high}
    )


def shines(site: Site, lens: Lens, *, spread: float = 0.0) -> BoolArray:
    """Whether any beam is on a lens, for every step of the year, lit or not."""
    sun, found = sun_of(site), np.zeros(365 * STEPS_A_DAY, dtype=np.bool_)
    for beam in beams_on(site, lens, north=sun.north or 0.0, spread=spread):
        found[sun.year.day[beam.steps] * STEPS_A_DAY + (sun.year.minute[beam.steps] / 2.0).astype(int)] = True
    return found


def ends_of(mask: BoolArray) -> tuple[list[int], list[int]]:
    """First and last step of each beam."""
    change = np.diff(mask.astype(int), prepend=0, append=0)
    return np.nonzero(change == 1)[0].tolist(), (np.nonzero(change == -1)[0] - 1).tolist()


@pytest.mark.parametrize("site", [terrace, shaded])
def test_each_beam_starts_and_ends_within_a_step_of_another_ray_caster(site: object) -> None:
    house = site()  # type: ignore[operator]  # one of the two above
    sky = sky_of(house.place.latitude_deg, house.place.longitude_deg)
    north = math.radians(house.place.north_deg)
    reference = cast(caster_of(house), [lens[1:] for lens in LENSES], sky, north=north)
    total = 0
    for lens, theirs in zip(LENSES, reference, strict=True):
        mine = shines(house, lens)
        for own, others in zip(ends_of(mine), ends_of(theirs), strict=True):
            # A beam that only one of them knows is one that lasts a step or two, at its first or last day.
            pairs = [min(abs(one - other) for other in others) for one in own] if others else []
            late = [one for one, off in zip(own, pairs, strict=True) if off > 1]
            total += len(own)
            assert len(late) <= 0.005 * len(own) + 1, (lens, [divmod(one, STEPS_A_DAY) for one in late])
        assert np.count_nonzero(mine ^ theirs) <= 0.002 * np.count_nonzero(theirs) + 3
    assert total > 1200


def test_shade_takes_minutes_away_and_never_adds_any() -> None:
    for lens in LENSES:
        bare, less = shines(terrace(), lens), shines(shaded(), lens)
        assert not (less & ~bare).any()
    assert shines(shaded(), LENSES[0]).sum() < shines(terrace(), LENSES[0]).sum()


def view_of(site: Site, storey: str) -> View:
    cells = floor_cells(level_of(site, storey), 0.1)
    return View(storey, cells.grid, cells.free)


def lit(site: Site, storey: str) -> dict[str, int]:
    north = sun_of(site).north or 0.0
    return {beam.opening: len(beam.steps) for beam in beams_into(site, view_of(site, storey), north=north)}


@given(
    st.floats(-8.0, 12.0),
    st.floats(-15.0, 20.0),
    st.floats(0.5, 9.0),
    st.floats(0.2, 6.0),
    st.floats(0.0, 4.0),
)
def test_a_block_added_never_adds_minutes(x: float, y: float, high: float, wide: float, base: float) -> None:
    block = thing("block", "building", (x, y, x + wide, y + wide), low=min(base, 0.9 * high), high=high)
    site = terrace()
    ground = site.ground.model_copy(update={"things": (*site.ground.things, block)})
    blocked = site.model_copy(update={"ground": ground})
    for lens in LENSES[:3]:
        assert not (shines(blocked, lens) & ~shines(site, lens)).any()
    before, after = lit(site, "ground"), lit(blocked, "ground")
    assert all(after.get(name, 0) <= steps for name, steps in before.items())
    assert after.keys() <= before.keys()


@given(st.sampled_from(("living-window", "kitchen-window", "bedroom-1-window")), st.floats(0.01, 0.4))
def test_a_window_widened_never_removes_minutes(name: str, more: float) -> None:
    site = terrace()
    openings = tuple(
        one.model_copy(update={"width_m": one.width_m + more}) if one.id == name else one
        for one in site.openings
    )
    wider = site.model_copy(update={"openings": openings})
    for lens in LENSES:
        assert not (shines(site, lens) & ~shines(wider, lens)).any()
    for storey in ("ground", "first"):
        before, after = lit(site, storey), lit(wider, storey)
        assert all(after[one] >= steps for one, steps in before.items())


def test_quarter_turns_of_house_and_north_together_change_nothing() -> None:
    site = turned = terrace()
    for turn in range(1, 4):
        turned = quarter_turned(turned)
        angle = turn * math.pi / 2
        for lens in LENSES[:4]:
            x = lens.x * math.cos(angle) - lens.y * math.sin(angle)
            y = lens.x * math.sin(angle) + lens.y * math.cos(angle)
            moved = lens._replace(x=x, y=y)
            assert np.count_nonzero(shines(site, lens) ^ shines(turned, moved)) <= 2
        assert lit(turned, "ground").keys() == lit(site, "ground").keys()
        # The cells lie up to half a cell otherwise when the grid is turned.
        for name, steps in lit(site, "ground").items():
            assert lit(turned, "ground")[name] == pytest.approx(steps, rel=0.01)


def test_the_thinned_year_comes_to_about_the_same() -> None:
    site = terrace()
    north = sun_of(site).north or 0.0
    for lens in LENSES[:3]:
        whole = sum(len(beam.steps) for beam in beams_on(site, lens, north=north)) * year_of(site).step_min
        thin = sum(len(beam.steps) for beam in beams_on(site, lens, north=north, is_thin=True))
        assert thin * year_of(site, is_thin=True).step_min == pytest.approx(whole, rel=0.15, abs=200.0)


def test_several_norths_at_once_come_to_each_by_itself() -> None:
    site, norths = shaded(), (0.3, 2.0, 5.1)
    size = len(year_of(site, is_thin=True).day)
    view = view_of(site, "ground")
    for lens in LENSES:
        found = {one.opening: one for one in beams_on(site, lens, north=norths, is_thin=True)}
        for place, north in enumerate(norths):
            alone = {one.opening: one for one in beams_on(site, lens, north=north, is_thin=True)}
            assert alone.keys() <= found.keys()
            for name, beam in found.items():
                part = beam.steps // size == place
                steps = alone[name].steps.tolist() if name in alone else []
                assert (beam.steps[part] - place * size).tolist() == steps
                if steps:
                    assert beam.bearings[part] == pytest.approx(alone[name].bearings)
    lit_at = {
        (beam.opening, step + place * size)
        for place, north in enumerate(norths)
        for beam in beams_into(site, view, north=north, is_thin=True)
        for step in beam.steps.tolist()
    }
    together = beams_into(site, view, north=norths, is_thin=True)
    assert {(one.opening, step) for one in together for step in one.steps.tolist()} == lit_at


def test_panes_know_where_outside_is_and_what_is_drawn_before_them() -> None:
    panes = {one.opening: one for one in panes_of(terrace().bare)}
    assert set(panes) == {
        "living-window", "garden-door", "kitchen-window", "bedroom-1-window", "landing-window",
        "bedroom-2-window", "bathroom-window",
    }  # fmt: skip
    assert panes["living-window"].is_covered
    assert not panes["kitchen-window"].is_covered
    assert panes["living-window"].pane.normal == pytest.approx((0.0, -1.0))
    assert panes["bedroom-1-window"].pane.sill == pytest.approx(2.7 + 0.9)


def test_without_a_latitude_it_says_so() -> None:
    with pytest.raises(NotComputable, match="no latitude"):
        sun_of(terrace().model_copy(update={"place": Place()}))


def test_hours_are_those_of_the_clock_where_its_zone_is_known() -> None:
    sun = sun_of(terrace())
    assert sun.zone == "Europe/London"
    assert sun.clock[200] - sun.clock[0] == 60.0
    place = terrace().place.model_copy(update={"country": None})
    nowhere = sun_of(terrace().model_copy(update={"place": place}))
    assert nowhere.zone is None
    assert not nowhere.clock.any()
