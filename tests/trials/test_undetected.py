"""How far somebody gets unnoticed on the worked terrace."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from common.worked_terrace import UNDER_STAIRS, ear_in_kitchen, shock_on, with_watch, worked_terrace
from wardwright.errors import NotComputable
from wardwright.model.device import Device, WallMount
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.barriers import Side
from wardwright.trials.undetected import active_devices, undetected
from wardwright.trials.undetected_floor import Undetected, reaches_space, reaches_spot
from wardwright.trials.ways_in import WayIn, ways_in

CATALOGUE = load_catalogue()
HALL = WallMount(wall="ground-back", side="left", offset_m=7.8, height_m=2.2)
KITCHEN = WallMount(wall="ground-cross", side="left", offset_m=5.7, height_m=2.2)
SIDES: tuple[Side, ...] = ("possibly", "likely", "surely")


def way(site: Site, opening: str, manner: str) -> WayIn:
    return next(w for w in ways_in(site, CATALOGUE)[0] if (w.opening.id, w.manner) == (opening, manner))


def run(site: Site, side: Side, *, manner: str = "through the glass", allowed: int = 0) -> Undetected:
    chosen = way(site, "kitchen-window", manner)
    return undetected(site, CATALOGUE, way=chosen, side=side, others_allowed=allowed)


def test_with_nothing_in_the_house_all_of_it_is_walked_undetected() -> None:
    site = worked_terrace(contacts={})
    found = run(site, "surely")
    assert reaches_space(found, "bedroom") is not None
    assert reaches_spot(found, Spot(UNDER_STAIRS.storey, *UNDER_STAIRS.at_m)) == pytest.approx(7.3, abs=0.4)
    assert active_devices(site, CATALOGUE, "full") == ()


def test_sides_are_ordered() -> None:
    site = worked_terrace(contacts={}, movement={"hall": (HALL, -60.0, "instant")})
    distances = [run(site, side).distance_m for side in SIDES]
    assert distances == sorted(distances)
    assert all(reaches_space(run(site, side), "bedroom") is None for side in SIDES)


def test_a_contact_on_the_way_in_is_notice_at_once() -> None:
    site = worked_terrace(contacts={"kitchen-window": "instant"})
    assert run(site, "surely", manner="opened").distance_m == 0.0
    assert undetected(site, CATALOGUE, way=way(site, "kitchen-window", "opened"), side="likely").rings == {}
    assert run(site, "surely", manner="opened", allowed=1).distance_m > 5.0


@pytest.mark.parametrize("device", [shock_on("kitchen-window"), ear_in_kitchen()])
def test_broken_glass_is_notice_at_once(device: Device) -> None:
    site = with_watch(worked_terrace(contacts={}), device)
    assert active_devices(site, CATALOGUE, "full") == (device,)
    assert run(site, "surely").distance_m == 0.0
    broken = way(site, "kitchen-window", "through the glass")
    assert undetected(site, CATALOGUE, way=broken, side="likely").rings == {}
    # By the front door nothing tells, and no floor is closed by it.
    bare = undetected(
        worked_terrace(contacts={}), CATALOGUE, way=way(site, "front-door", "opened"), side="surely"
    )
    found = undetected(site, CATALOGUE, way=way(site, "front-door", "opened"), side="surely")
    assert found.distance_m == bare.distance_m


@given(
    st.sampled_from(
        (shock_on("front-door"), shock_on("kitchen-window"), shock_on("kitchen-door"), ear_in_kitchen())
    ),
    st.sampled_from([{}, {"kitchen-window": "instant"}, {"kitchen-door": "instant"}]),
    st.booleans(),
)
def test_one_more_at_an_opening_never_lengthens_the_walk(
    device: Device, contacts: dict[str, str], has_movement: bool
) -> None:
    movement = {"hall": (HALL, -60.0, "instant")} if has_movement else {}
    site = worked_terrace(contacts=contacts, movement=movement)
    more = with_watch(site, device)
    for one in ways_in(site, CATALOGUE)[0]:
        for side in SIDES:
            for allowed in (0, 1):
                before = undetected(site, CATALOGUE, way=one, side=side, others_allowed=allowed)
                after = undetected(more, CATALOGUE, way=one, side=side, others_allowed=allowed)
                assert after.distance_m <= before.distance_m


def test_before_a_second_device_one_gets_at_least_as_far() -> None:
    movement = {"hall": (HALL, -60.0, "instant"), "kitchen": (KITCHEN, 135.0, "instant")}
    site = worked_terrace(contacts={}, movement=movement)
    for side in SIDES:
        first, second = run(site, side), run(site, side, allowed=1)
        assert second.distance_m >= first.distance_m
        for storey, mask in first.floors.items():
            assert not (mask & ~second.floors[storey]).any()


def test_one_detector_alone_never_gives_a_second_notice() -> None:
    site = worked_terrace(contacts={}, movement={"hall": (HALL, -60.0, "instant")})
    bare = worked_terrace(contacts={})
    assert run(site, "surely", allowed=1).distance_m == pytest.approx(run(bare, "surely").distance_m)


def test_log_only_zones_do_not_count() -> None:
    site = worked_terrace(contacts={}, movement={"hall": (HALL, -60.0, "log-only")})
    assert active_devices(site, CATALOGUE, "full") == ()
    assert reaches_space(run(site, "possibly"), "bedroom") is not None


def test_a_goal_that_cannot_be_walked_to_is_not_taken_for_watched() -> None:
    site = worked_terrace(contacts={}).model_copy(update={"stairs": ()})
    found = run(site, "surely")
    with pytest.raises(NotComputable, match="no way on foot leads to Bedroom"):
        reaches_space(found, "bedroom")
    with pytest.raises(NotComputable):
        reaches_spot(found, Spot("upper", 6.9, 1.2))


def test_nobody_reaches_through_a_wall() -> None:
    # The unit hangs in the kitchen on the thin wall to the hall; the kitchen door is shut, with an instant contact.
    site = worked_terrace(contacts={"kitchen-door": "instant", "kitchen-window": "instant"})
    unit = Spot("ground", 2.14, 5.0)
    door = undetected(site, CATALOGUE, way=way(site, "front-door", "opened"), side="surely")
    assert reaches_spot(door, unit) is None
    glass = run(site, "surely")
    assert reaches_spot(glass, unit) is not None


def test_two_detectors_wired_into_one_zone_are_one_notice() -> None:
    movement = {"hall": (HALL, -60.0, "instant"), "kitchen": (KITCHEN, 135.0, "instant")}
    site = worked_terrace(contacts={}, movement=movement)
    both = site.zones[0].model_copy(update={"devices": ("hall", "kitchen")})
    one_zone = site.model_copy(update={"zones": (both,)})
    bare = worked_terrace(contacts={})
    assert run(one_zone, "likely", allowed=1).distance_m == run(bare, "likely").distance_m
    assert run(site, "likely", allowed=1).distance_m < run(bare, "likely").distance_m


def test_a_detector_wired_with_what_told_at_the_way_in_is_no_second_notice() -> None:
    shock = shock_on("kitchen-window")
    site = with_watch(worked_terrace(contacts={}, movement={"hall": (HALL, -60.0, "instant")}), shock)
    both = site.zones[0].model_copy(update={"devices": ("hall", shock.id)})
    one_zone = site.model_copy(update={"zones": (both,)})
    bare = worked_terrace(contacts={})
    assert run(one_zone, "likely", allowed=1).distance_m == run(bare, "likely").distance_m
    assert run(site, "likely", allowed=1).distance_m < run(bare, "likely").distance_m
    assert run(one_zone, "likely").distance_m == 0.0
