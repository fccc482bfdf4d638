import pytest

from wardwright.model.fabric import Space
from wardwright.model.room_shapes import floor_polygon, hull_of, indoors, space_height
from wardwright.store.samples import read_sample

TERRACE = read_sample("terrace")


def space(*corners: tuple[float, float]) -> Space:
    return Space(id="s", name="S", storey="g", outline_m=corners)


def test_the_hull_runs_anticlockwise_round_every_room() -> None:
    ring = hull_of(TERRACE.spaces)
    turns = sum(ax * by - ay * bx for (ax, ay), (bx, by) in zip(ring, (*ring[1:], ring[0]), strict=True))
    assert turns > 0
    assert hull_of(()) == ()


def test_an_outline_that_touches_itself_still_has_a_floor() -> None:
    pinched = space((0, 0), (2, 0), (2, 2), (1, 0), (0, 2))
    assert floor_polygon(pinched).area == pytest.approx(1.0)
    assert floor_polygon(pinched).is_valid


def test_a_balcony_is_not_indoors_and_a_room_without_a_height_has_its_storeys() -> None:
    outdoors = TERRACE.spaces[0].model_copy(update={"use": "balcony"})
    site = TERRACE.model_copy(update={"spaces": (outdoors, *TERRACE.spaces[1:])})
    assert outdoors.id not in [one.id for one in indoors(site)]
    assert space_height(TERRACE, TERRACE.space("hall")) == 2.4
