from common.houses import one_room, person
from wardwright.model.fixture import Fixture
from wardwright.model.site import Site
from wardwright.rules.pillows import pillows
from wardwright.store.samples import read_sample

SITE = read_sample("terrace")


def bed(name: str, x: float, y: float) -> Fixture:
    return Fixture(
        id=name.replace(" ", "-"),
        name=name,
        storey="ground",
        kind="bed",
        centre_m=(x, y),
        size_m=(0.9, 2.0),
        height_m=0.5,
    )


def test_each_bed_has_a_pillow_with_who_sleeps_in_its_room() -> None:
    found = {one.space.id: one for one in pillows(SITE)}
    assert sorted(found) == ["bedroom-1", "bedroom-2", "bedroom-3"]
    assert [one.name for one in found["bedroom-1"].people] == ["Father", "Mother"]
    assert found["bedroom-3"].people[0].hears_badly
    assert found["bedroom-3"].name == "pillow in Bedroom 3"


def test_a_pillow_lies_at_the_end_by_the_wall() -> None:
    (one,) = pillows(one_room(fixtures=(bed("bed", 2.0, 1.2),)))
    assert one.at_m == (2.0, 0.5)
    assert one.height_m == 0.6


def test_two_beds_of_a_room_are_told_apart() -> None:
    names = [
        one.name
        for one in pillows(one_room(fixtures=(bed("left bed", 1.0, 1.2), bed("right bed", 3.0, 1.2))))
    ]
    assert names == ["left bed in Living room", "right bed in Living room"]


def test_somebody_told_to_sleep_where_no_bed_is_drawn_lies_in_its_middle() -> None:
    (one,) = pillows(one_room(people=(person("Ann", bed="living"),)))
    assert not one.is_drawn
    assert one.id == "living"


def test_a_house_without_beds_has_no_pillow() -> None:
    bare: Site = one_room()
    assert pillows(bare) == ()
