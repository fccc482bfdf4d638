from common.radio_house import CATALOGUE, behind_radiators, device, long_house
from wardwright.rules.radio_links import links_of
from wardwright.rules.radio_sketches import COSTLY, costly_on, radio_sketches
from wardwright.store.samples import read_sample


def test_the_path_and_its_costly_walls_are_drawn() -> None:
    site = long_house(device("far", "water-radio", 20.0))
    link = links_of(site, CATALOGUE, site.device("far"))[0]
    drawn = radio_sketches(site, link)
    paths, walls = ([s for s in drawn if s.role == role] for role in ("radio-path", "radio-cost"))
    assert {round(x, 6) for path in paths for x, _ in path.points} == {0.5, 20.0}
    assert {round(sketch.points[0][0], 6) for sketch in walls} == {8.0, 16.0}
    assert all(sketch.label.endswith(" dB") for sketch in walls)


def test_each_storey_has_its_piece() -> None:
    site = read_sample("terrace-better")
    link = links_of(site, CATALOGUE, site.device("garden-door-contact"))[0]
    ground, first = (
        next(s for s in radio_sketches(site, link) if s.role == "radio-path" and s.storey == storey)
        for storey in ("ground", "first")
    )
    shared = set(ground.points) & set(first.points)
    assert len(shared) == 1


def test_only_the_costliest_are_named() -> None:
    site = read_sample("bungalow")
    for device_ in site.devices:
        if device_.id.endswith("movement"):
            found = costly_on(links_of(site, CATALOGUE, device_)[0].weakest)
            assert len(found) <= COSTLY
            assert [met.loss_db for met in found] == sorted((met.loss_db for met in found), reverse=True)


def test_a_radiator_is_a_dot() -> None:
    site = behind_radiators()
    link = links_of(site, CATALOGUE, site.device("kitchen-movement"))[0]
    dots = [s for s in radio_sketches(site, link) if s.role == "radio-cost" and len(s.points) == 1]
    assert [dot.label for dot in dots] == ["10 dB", "10 dB"]
