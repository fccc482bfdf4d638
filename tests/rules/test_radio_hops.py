import pytest

from common.radio_house import CATALOGUE, device, long_house
from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.physics.radio.from_site import path_losses, radio_paths
from wardwright.rules.radio_hops import heard_by, linked_devices, ways_of, work_out_together
from wardwright.store.samples import read_sample


def ways(site: Site, name: str, catalogue: Catalogue = CATALOGUE):  # noqa: ANN201 - plain records
    return ways_of(site.bare, catalogue, site.device(name), heard=heard_by(site, catalogue))


def silent(sheet_id: str, **changes: object) -> Catalogue:
    rows = tuple(row.model_copy(update=changes) if row.id == sheet_id else row for row in CATALOGUE.sheets)
    return CATALOGUE.model_copy(update={"sheets": rows})


def test_a_device_talks_to_the_unit_and_by_each_repeater() -> None:
    site = long_house(device("far", "water-radio", 20.0), device("rep", "repeater-radio", 10.0))
    found = ways(site, "far")
    assert [[hop.receiver.ident for hop in way.hops] for way in found[0]] == [["unit"], ["rep", "unit"]]
    assert [len(way.hops) for way in ways(site, "rep")[0]] == [1]


def test_wired_devices_and_what_others_talk_to_have_no_link() -> None:
    site = long_house(device("wired", "movement-8m-wired", 20.0), device("router", "router-existing", 4.0))
    assert linked_devices(site, CATALOGUE) == ()


def test_a_camera_talks_to_the_router_device_or_point() -> None:
    camera = device("cam", "camera-inside", 20.0)
    with pytest.raises(NotComputable, match="no router"):
        ways(long_house(camera), "cam")
    point = {"id": "r", "name": "Router", "kind": "router", "storey": "g", "at_m": (4.0, 2.0)}
    assert ways(long_house(camera, outlets=[point]), "cam")[0][0].hops[0].receiver.ident == "r"
    both = long_house(camera, device("router", "router-existing", 4.0), outlets=[point])
    assert ways(both, "cam")[0][0].hops[0].receiver.ident == "router"


def test_a_keyfob_is_pressed_before_each_entry_door_and_at_the_boundary() -> None:
    site = read_sample("bungalow")
    words = [places[0].place_words for places in ways(site, "first-keyfob")]
    assert words == [
        "before Front door", "the boundary before Front door", "before Side door", "the boundary before Side door",
    ]  # fmt: skip
    assert all(way[0].hops[0].has_body for way in ways(site, "first-keyfob"))


@pytest.mark.parametrize(
    ("sheet", "changes", "said"),
    [
        ("water-radio", {"radio": None}, "does not say what its radio sends"),
        ("water-radio", {"frequency_mhz": None}, "does not say in which band"),
        ("water-radio", {"frequency_mhz": 433.92}, "433.92 MHz, where no control unit listens"),
        ("control-unit-radio", {"radio": None}, "no sheet of a control unit says what its radio takes"),
        ("control-unit-radio", {"link": "wired"}, "no control unit that could hear it"),
    ],
)
def test_what_is_silent_is_named_and_never_guessed(sheet: str, changes: dict[str, object], said: str) -> None:
    site = long_house(device("far", "water-radio", 20.0))
    with pytest.raises(NotComputable, match=said):
        ways(site, "far", silent(sheet, **changes))


def test_paths_worked_out_together_are_those_worked_out_one_by_one() -> None:
    site = long_house(device("far", "water-radio", 20.0), device("near", "water-radio", 5.0))
    hops = [ways(site, name)[0][0].hops[0] for name in ("far", "near")]
    work_out_together(site.bare, CATALOGUE, hops)
    for hop in hops:
        one, other = sorted((hop.sender.place, hop.receiver.place))
        ends, band = (one, other), hop.frequency_mhz * 1e6
        (remembered,) = radio_paths(site, CATALOGUE, [ends], frequency=band)
        loss, counts = path_losses(site, CATALOGUE, [ends], frequency=band)
        assert remembered.free_space_db + remembered.walls_db == loss[0]
        assert remembered.counts == tuple(counts[0].tolist())
