"""Which openings count as ways in, in which manner, and how long they hold."""

from __future__ import annotations

import pytest

from common.worked_terrace import OPENINGS, worked_terrace
from wardwright.model.opening import Opening
from wardwright.model.placement import sides_of_opening
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground, GroundThing
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.climbs import sill_above_ground
from wardwright.trials.ways_in import by_opening, leads_outside, ways_in

CATALOGUE = load_catalogue()
UPPER_WINDOW = Opening(
    id="upper-window", name="upper window", kind="window", wall="upper-front", offset_m=5.0, width_m=1.0,
    sill_m=0.9, head_m=2.1, glazing="double-plain",
)  # fmt: skip


def house(*more: Opening, **changes: object) -> Site:
    site = worked_terrace(contacts={})
    return site.model_copy(update={"openings": (*OPENINGS, *more), **changes})


def test_inside_doors_are_no_ways_in_and_glass_is_a_manner_of_its_own() -> None:
    ways, not_counted = ways_in(house(), CATALOGUE)
    assert [(way.opening.id, way.manner) for way in ways] == [
        ("front-door", "opened"),
        ("kitchen-window", "opened"),
        ("kitchen-window", "through the glass"),
    ]
    assert not_counted == ()


def test_the_kitchen_made_a_balcony_is_open_air() -> None:
    site = house()
    kitchen = site.space("kitchen")
    outdoors = house(
        spaces=tuple(s.model_copy(update={"use": "balcony"}) if s is kitchen else s for s in site.spaces)
    )
    door = next(o for o in site.openings if set(sides_of_opening(site, o)) == {"kitchen", "hall"})
    assert not leads_outside(site, door)
    assert leads_outside(outdoors, door)
    assert door.id in {way.opening.id for way in ways_in(outdoors, CATALOGUE)[0]}


def test_only_windows_are_climbed() -> None:
    ways, _ = ways_in(house(), CATALOGUE)
    assert {way.opening.id: way.climbs for way in ways} == {"front-door": False, "kitchen-window": True}


def test_an_upper_window_counts_once_there_is_something_to_climb() -> None:
    _, not_counted = ways_in(house(UPPER_WINDOW), CATALOGUE)
    assert [(one.opening.id, one.reason) for one in not_counted] == [
        # 2.7 storey + 0.9 sill + 0.15 down to the ground
        ("upper-window", "3.8 m above the ground with nothing drawn to climb"),
    ]
    roof = GroundThing(
        id="porch", name="porch roof", kind="flat-roof", height_m=2.5, can_be_climbed=True,
        outline_m=((4, -1.5), (6, -1.5), (6, -0.2), (4, -0.2)),
    )  # fmt: skip
    ways, not_counted = ways_in(house(UPPER_WINDOW, ground=Ground(things=(roof,))), CATALOGUE)
    assert "upper-window" in {way.opening.id for way in ways}
    assert not_counted == ()
    low = roof.model_copy(update={"height_m": 1.0})
    assert ways_in(house(UPPER_WINDOW, ground=Ground(things=(low,))), CATALOGUE)[1] != ()


def test_fixed_glass_is_only_broken_and_a_slit_lets_nobody_through() -> None:
    fixed = UPPER_WINDOW.model_copy(update={"hinge": "fixed", "wall": "ground-front", "id": "fixed-pane"})
    slit = fixed.model_copy(update={"id": "slit", "offset_m": 7.0, "width_m": 0.2})
    ways, not_counted = ways_in(house(fixed, slit), CATALOGUE)
    assert [way.manner for way in ways if way.opening.id == "fixed-pane"] == ["through the glass"]
    assert [one.reason for one in not_counted] == ["too small for a person"]


@pytest.mark.parametrize(
    ("facts", "figure"),
    [
        ({"lock": "rc2"}, "force-rc2"),
        ({"lock": "rc3"}, "force-rc3"),
        ({"is_locked": False}, "force-none"),
        ({"habit": "ajar"}, "force-none"),
        ({"lock": "unknown"}, "force-plain"),
    ],
)
def test_how_long_it_holds_is_the_locks_own_figure(facts: dict[str, object], figure: str) -> None:
    door = OPENINGS[0].model_copy(update=facts)
    site = house().model_copy(update={"openings": (door, *OPENINGS[1:])})
    way = ways_in(site, CATALOGUE)[0][0]
    assert way.holds == CATALOGUE.figure(figure)


def test_a_door_to_a_shared_stair_leads_in_but_not_to_the_outside() -> None:
    site = house()
    shared = site.space("hall").model_copy(update={"belongs": "shared"})
    flat = site.model_copy(update={"spaces": tuple(shared if s.id == "hall" else s for s in site.spaces)})
    ways, _ = ways_in(flat, CATALOGUE)
    ids = {way.opening.id for way in ways}
    assert "kitchen-door" in ids
    assert "front-door" not in ids
    assert not leads_outside(flat, flat.opening("kitchen-door"))
    assert sill_above_ground(flat, flat.opening("kitchen-window")) == pytest.approx(1.15)


def test_an_opening_that_neither_opens_nor_breaks_is_named() -> None:
    blind = UPPER_WINDOW.model_copy(
        update={"hinge": "fixed", "wall": "ground-front", "id": "blind", "glazing": None}
    )
    _, not_counted = ways_in(house(blind), CATALOGUE)
    assert [(one.opening.id, one.reason) for one in not_counted] == [
        ("blind", "it does not open, and no pane is known that could be broken")
    ]


def test_a_rooflight_over_no_known_space_is_named() -> None:
    light = UPPER_WINDOW.model_copy(update={"kind": "rooflight", "id": "light"})
    _, not_counted = ways_in(house(light), CATALOGUE)
    assert [one.reason for one in not_counted] == ["it is not known which space it lights"]


def test_manners_of_one_opening_stand_together() -> None:
    groups = by_opening(ways_in(house(), CATALOGUE)[0])
    assert [[way.manner for way in group] for group in groups] == [
        ["opened"],
        ["opened", "through the glass"],
    ]
