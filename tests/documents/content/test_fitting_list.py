from __future__ import annotations

from wardwright.documents.content.fitting_list import fitting_list
from wardwright.documents.content.wording import DANGERS
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import DeviceKind
from wardwright.model.site import Site
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.works.fitting_order import FITTED_IN_ORDER

CATALOGUE = load_catalogue()
TERRACE, BUNGALOW = read_sample("terrace"), read_sample("bungalow")


def listed(site: Site, catalogue: Catalogue = CATALOGUE) -> dict[str, object]:
    found = fitting_list(site, catalogue, check(site, catalogue))
    return {line.device: line for storey in found for line in storey.devices}


def test_every_device_is_there_once_on_its_storey_from_the_lowest_up() -> None:
    found = fitting_list(TERRACE, CATALOGUE, ())
    assert [one.storey for one in found] == ["ground", "first"]
    names = [line.device for storey in found for line in storey.devices]
    assert sorted(names) == sorted(device.id for device in TERRACE.devices)


def test_the_control_unit_comes_first_and_keypads_last() -> None:
    assert set(FITTED_IN_ORDER) == set(DeviceKind.__args__)
    (ground,) = fitting_list(BUNGALOW, CATALOGUE, ())
    kinds = [line.kind for line in ground.devices]
    assert kinds[0] == "control unit"
    assert kinds[-2:] == ["keypad", "keypad"]
    assert kinds.index("opening contact") < kinds.index("movement detector")


def test_a_line_says_where_how_high_where_it_looks_and_how_it_is_held() -> None:
    line = listed(BUNGALOW)["corridor-movement"]
    assert "2.20 m above the floor" in line.facts[1]
    assert line.facts[2].startswith("Looks to the lower right")
    assert line.facts[-1] == "Fixing not decided."
    contact = listed(BUNGALOW)["front-contact"]
    assert "Gap between its parts 6 mm." in contact.facts
    shock = listed(BUNGALOW)["bedroom-1-shock"]
    assert not any("Gap" in one for one in shock.facts)


def test_cautions_stand_by_what_is_dangerous_to_fit_and_findings_by_what_must_be_mended_first() -> None:
    lines = listed(BUNGALOW)
    assert DANGERS["mains"] in lines["study-control-unit"].cautions
    assert DANGERS["fire"] in lines["corridor-smoke"].cautions
    assert lines["front-contact"].cautions == ()
    assert any(one.startswith("CON101: ") for one in listed(TERRACE)["garden-door-contact"].findings)
    assert not listed(TERRACE)["living-movement"].findings  # what is only advised waits in the design
