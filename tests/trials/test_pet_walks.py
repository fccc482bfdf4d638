"""Whether an animal's walks trip a detector."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from common.houses import CATALOGUE, on_wall, one_room, pet
from common.rule_houses.movement import PASSING_PETS, SIDEBOARD
from wardwright.model.device import Device
from wardwright.model.fabric import Stair, Storey
from wardwright.model.site import Site
from wardwright.rules.animals import animals
from wardwright.rules.perches import UnderZones, under_zones
from wardwright.trials.pet_walks import REACH_SHARES, Tripped, tripped, trips


def under(site: Site, device: Device) -> tuple[UnderZones, ...]:
    sheet = CATALOGUE.sheet(device.sheet).movement
    assert sheet is not None
    return under_zones(site, device, sheet)


def played(site: Site) -> tuple[Tripped, ...]:
    device = site.devices[0]
    animal = animals(site, CATALOGUE)[0]
    return tripped(site.bare, CATALOGUE, device, animal=animal, under=under(site, device))


def test_a_cat_that_walks_along_the_sideboard_trips_it_and_one_on_the_floor_does_not() -> None:
    """The sideboard lies 4.4 m off, where the zones are 0.12 m wide: along its 1 m several are filled and left."""
    site = one_room(devices=(PASSING_PETS,), fixtures=(SIDEBOARD,), pets=(pet("cat"),))
    floor, sideboard = played(site)
    assert floor.seconds == (float("inf"),) * len(REACH_SHARES)
    # At 0.64 m/s the whole walk there and back takes 3 s at most.
    assert 0.0 < sideboard.seconds[1] < 3.2


def test_less_reach_never_trips_it_sooner() -> None:
    site = one_room(devices=(on_wall("fan", "fan", "west", 2.0),), pets=(pet("big-dog"),))
    for one in played(site):
        assert list(one.seconds) == sorted(one.seconds)


def test_a_dog_on_the_floor_trips_a_detector_whose_zones_come_down() -> None:
    site = one_room(devices=(on_wall("fan", "fan", "west", 2.0),), pets=(pet("big-dog"),))
    (floor,) = played(site)
    assert floor.seconds[1] < 6.0


def test_where_there_is_nothing_to_walk_on() -> None:
    site = one_room(devices=(PASSING_PETS,), pets=(pet("cat"),))
    assert tripped(site.bare, CATALOGUE, PASSING_PETS, animal=animals(site, CATALOGUE)[0], under=()) == ()


def stairs_and_sideboard() -> Site:
    """A flight along the room's middle, a sideboard against its east wall, a dog."""
    first = Storey(id="first", name="first floor", elevation_m=2.7)
    room = one_room().spaces[0].model_copy(update={"id": "bedroom", "storey": "first"})
    stair = Stair(id="stair", name="stairs", lower="ground", upper="first", line_m=((0.5, 1.0), (4.5, 1.0)))
    return one_room(
        storeys=(*one_room().storeys, first),
        spaces=(*one_room().spaces, room),
        stairs=(stair,),
        fixtures=(SIDEBOARD,),
        pets=(pet("big-dog"),),
    )


def test_all_steps_of_a_flight_are_walked_at_once() -> None:
    """It goes up and the detector signals after as long, whichever step is asked about."""
    site, fan = stairs_and_sideboard(), on_wall("fan", "fan", "west", 2.0)
    steps = {one.seconds for one in played(site.model_copy(update={"devices": (fan,)}))[2:]}
    assert len(steps) == 1


@given(
    st.lists(
        st.tuples(st.sampled_from(["west", "north"]), st.floats(0.5, 3.5), st.floats(2.0, 2.4)),
        min_size=1,
        max_size=4,
    )
)
def test_several_watched_in_one_pass_is_each_watched_by_itself(
    places: list[tuple[str, float, float]],
) -> None:
    site = stairs_and_sideboard()
    (animal,) = animals(site, CATALOGUE)
    fans = [on_wall("fan", "fan-passing-pets", wall, along, height_m=up) for wall, along, up in places]
    watched = [(fan, under(site, fan)) for fan in fans]
    alone = [
        any(
            one.seconds[1] < float("inf")
            for one in tripped(site.bare, CATALOGUE, fan, animal=animal, under=tops)
        )
        for fan, tops in watched
    ]
    assert trips(site.bare, CATALOGUE, watched, animal=animal) == tuple(alone)


def test_one_with_nothing_under_its_zones_is_not_tripped() -> None:
    site = one_room(pets=(pet("cat"),))
    (animal,) = animals(site, CATALOGUE)
    assert trips(site.bare, CATALOGUE, [(PASSING_PETS, ())], animal=animal) == (False,)
    assert trips(site.bare, CATALOGUE, [], animal=animal) == ()
