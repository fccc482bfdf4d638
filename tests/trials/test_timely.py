"""Every way caught, or not, in the design case; by hand on the worked terrace.

Needs of an instant zone in the design case: message 1 radio + 15 slow message - 10 break = 6 s; sounder 1 + 0 = 1 s.
"""

from __future__ import annotations

import pytest

from common.worked_terrace import UNDER_STAIRS, ear_in_kitchen, shock_on, with_watch, worked_terrace
from wardwright.model.device import WallMount
from wardwright.model.fixture import Fixture
from wardwright.model.programme import STANDARD_BEHAVIOURS, Programme
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.timely import Need, is_every_way_caught, still_needed, timely_floor
from wardwright.trials.ways_in import ways_in

CATALOGUE = load_catalogue()
GOAL = Spot(UNDER_STAIRS.storey, *UNDER_STAIRS.at_m)
BEHAVIOURS = {b.id: b for b in STANDARD_BEHAVIOURS}
KITCHEN = WallMount(wall="ground-cross", side="left", offset_m=5.7, height_m=2.2)
HALL = WallMount(wall="ground-back", side="left", offset_m=7.8, height_m=2.2)


def caught(site: Site, opening: str, need: Need, manner: str = "opened") -> bool:
    way = next(w for w in ways_in(site, CATALOGUE)[0] if (w.opening.id, w.manner) == (opening, manner))
    return is_every_way_caught(site, CATALOGUE, way=way, goal=GOAL, need=need)


@pytest.mark.parametrize(
    ("behaviour", "need", "seconds"),
    [
        ("instant", "message", 6.0),
        ("instant", "sounder", 1.0),
        ("entry-exit", "message", 6.0 + 30.0 + 20.0),
        ("entry-exit", "sounder", 31.0),
        ("entry-route", "message", 6.0),
    ],
)
def test_what_each_behaviour_still_needs(behaviour: str, need: Need, seconds: float) -> None:
    programme = Programme(entry_time_s=30.0, abort_delay_s=20.0)
    found = still_needed(CATALOGUE, programme, BEHAVIOURS[behaviour], need=need)
    assert found == pytest.approx(seconds)


def test_an_instant_contact_on_a_window_that_is_climbed_catches_whoever_opens_it() -> None:
    # From the window 5 s to climb in and 3.9 s to the unit remain: more than 6 s.
    site = worked_terrace(contacts={"kitchen-window": "instant"})
    assert caught(site, "kitchen-window", "message")
    assert not caught(site, "kitchen-window", "message", "through the glass")


def test_a_shock_detector_catches_both_manners_and_a_glass_break_detector_the_glass() -> None:
    """The same 5 s and 3.9 s remain, whichever device tells."""
    bare = worked_terrace(contacts={})
    shock, ear = with_watch(bare, shock_on("kitchen-window")), with_watch(bare, ear_in_kitchen())
    assert caught(shock, "kitchen-window", "message")
    assert caught(shock, "kitchen-window", "message", "through the glass")
    assert not caught(ear, "kitchen-window", "message")
    assert caught(ear, "kitchen-window", "message", "through the glass")
    assert not caught(with_watch(bare, shock_on("kitchen-door")), "kitchen-window", "sounder")


def test_a_contact_on_the_entry_door_catches_nobody_at_a_unit_in_the_hall() -> None:
    site = worked_terrace(contacts={"front-door": "entry-exit"})
    assert not caught(site, "front-door", "message")
    assert not caught(site, "front-door", "sounder")


def test_a_detector_in_the_hall_is_in_time_for_the_sounder_but_not_for_the_message() -> None:
    # Surely noticed 1.5 m past the kitchen door; the unit is some 1.7 m from that door: less than a second is left.
    site = worked_terrace(contacts={}, movement={"hall": (HALL, -60.0, "instant")})
    assert not caught(site, "kitchen-window", "message")


def test_a_detector_in_the_kitchen_is_in_time_for_the_sounder() -> None:
    site = worked_terrace(contacts={}, movement={"kitchen": (KITCHEN, 135.0, "instant")})
    assert caught(site, "kitchen-window", "sounder", "through the glass")
    assert not caught(site, "front-door", "sounder")


def test_without_a_sounder_nothing_is_in_time_for_it() -> None:
    site = worked_terrace(contacts={"kitchen-window": "instant"})
    silent = site.model_copy(
        update={"devices": tuple(d for d in site.devices if d.id not in ("sounder", "unit"))}
    )
    assert not caught(silent, "kitchen-window", "sounder")


def test_zones_of_the_way_in_do_not_count_once_the_entry_time_runs() -> None:
    movement = {"kitchen": (KITCHEN, 135.0, "entry-route")}
    site = worked_terrace(contacts={}, movement=movement)
    assert caught(site, "kitchen-window", "sounder")
    entry = worked_terrace(contacts={"kitchen-window": "entry-exit"}, movement=movement)
    assert not caught(entry, "kitchen-window", "sounder")


def test_timely_floor_is_the_floor_far_enough_from_the_goal() -> None:
    site = worked_terrace(contacts={})
    rings = timely_floor(site, CATALOGUE, goal=GOAL, need="sounder")
    assert set(rings) == {"ground", "upper"}
    # 1 s at 2.5 m/s: nothing of it is nearer than that to the unit, a cell and a half apart.
    nearest = min(
        ((x - GOAL.x) ** 2 + (y - GOAL.y) ** 2) ** 0.5 for ring in rings["ground"] for x, y in ring if x < 2.0
    )
    assert nearest > 2.5 - 0.25


def test_starting_the_entry_time_on_the_way_silences_the_entry_route() -> None:
    # Whoever comes in by the window can open the front door from inside: then the hall's entry route says nothing.
    movement = {"hall": (HALL, -60.0, "entry-route")}
    upstairs = Spot("upper", 6.9, 1.2)
    site = worked_terrace(contacts={"kitchen-door": "entry-exit"}, movement=movement)
    way = next(w for w in ways_in(site, CATALOGUE)[0] if w.opening.id == "kitchen-window")
    assert not is_every_way_caught(site, CATALOGUE, way=way, goal=upstairs, need="sounder")
    alone = worked_terrace(contacts={}, movement=movement)
    assert is_every_way_caught(alone, CATALOGUE, way=way, goal=upstairs, need="sounder")


def test_a_start_among_furniture_is_taken_to_the_floor_and_never_to_nowhere() -> None:
    box = Fixture(
        id="box",
        name="box",
        storey="ground",
        kind="cupboard",
        centre_m=(7.3, 7.2),
        size_m=(1.4, 1.4),
        height_m=1.2,
    )
    site = worked_terrace(contacts={"front-door": "instant"}).model_copy(update={"fixtures": (box,)})
    assert not caught(site, "kitchen-window", "sounder")
