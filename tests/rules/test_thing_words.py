from common.radio_house import CATALOGUE, behind_radiators, device, long_house
from wardwright.model.site import Site
from wardwright.rules.radio_links import links_of
from wardwright.rules.thing_words import thing_words


def words(site: Site, name: str) -> list[str]:
    path = links_of(site, CATALOGUE, site.device(name))[0].weakest.path
    return [thing_words(site, met) for met in path.met]


def test_a_wall_is_called_by_the_rooms_beside_it() -> None:
    found = words(long_house(device("far", "water-radio", 20.0)), "far")
    assert sorted(found) == [
        "the wall between Room east and Room middle", "the wall between Room middle and Room west"
    ] or sorted(found) == [
        "the wall between Room middle and Room east", "the wall between Room west and Room middle"
    ]  # fmt: skip


def test_floors_things_and_openings_by_their_names() -> None:
    found = words(behind_radiators(), "kitchen-movement")
    assert "the floor of First floor" in found
    assert "Bedroom 3 radiator" in found


def test_an_outer_wall_is_called_by_its_room() -> None:
    site = long_house(device("out", "sounder-outside", 25.0))
    assert "the outer wall of Room east" in words(site, "out")
