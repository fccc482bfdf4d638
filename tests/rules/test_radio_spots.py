import pytest

from common.radio_house import CATALOGUE, device, long_house
from wardwright.model.edits import edited
from wardwright.model.site import Site
from wardwright.rules.finding import Mend
from wardwright.rules.mending import operations_of
from wardwright.rules.radio_belief import read_devices
from wardwright.rules.radio_hops import heard_by
from wardwright.rules.radio_links import links_of
from wardwright.rules.radio_spots import other_place_mend, repeater_mend

FAR = device("far", "water-radio", 23.0)


def mended(site: Site, mend: Mend) -> Site:
    operations = operations_of(site, CATALOGUE, mend)
    assert operations is not None
    return edited(site, operations)


def tried(site: Site, name: str, mend):  # noqa: ANN001, ANN201 - either of the two
    hop = links_of(site, CATALOGUE, site.device(name))[0].weakest.hop
    return mend(
        site,
        CATALOGUE,
        site.device(name),
        hop=hop,
        heard=heard_by(site, CATALOGUE),
        readings=read_devices(site),
    )


def test_a_repeater_goes_by_a_power_point_and_brings_what_it_promises() -> None:
    site = long_house(FAR)
    mend = tried(site, "far", repeater_mend)[0]
    assert mend.action == "add-device"
    assert mend.subject in ("middle", "east")
    after = links_of(mended(site, mend), CATALOGUE, site.device("far"))[0]
    assert len(after.hops) == 2
    assert mend.gain is not None
    assert after.margin.value == pytest.approx(mend.gain.value)


def test_without_a_power_point_or_worth_there_is_none() -> None:
    assert tried(long_house(FAR, outlets=[]), "far", repeater_mend) == ()
    assert tried(long_house(device("far", "water-radio", 1.5)), "far", repeater_mend) == ()


def wall_device(sheet: str) -> dict[str, object]:
    mount = {"on": "wall", "wall": "outer-east", "side": "left", "offset_m": 2.0, "height_m": 1.4}
    return {"id": "far", "name": "Far", "sheet": sheet, "mount": mount}


def test_a_keypad_may_hang_elsewhere_in_its_room_but_no_detector() -> None:
    # A post of steel stands before it: another place of the room sees past that.
    post = {"id": "post", "storey": "g", "line_m": ((23, 1.0), (23, 3.0)), "construction": "steel-sheet"}
    base = long_house(wall_device("keypad-radio"))
    site = Site.model_validate(base.model_dump() | {"walls": [*(w.model_dump() for w in base.walls), post]})
    mend = tried(site, "far", other_place_mend)[0]
    assert mend.action == "move-device"
    after = links_of(mended(site, mend), CATALOGUE, mended(site, mend).device("far"))[0]
    assert mend.gain is not None
    assert after.margin.value == pytest.approx(mend.gain.value)
    fixed = long_house(wall_device("movement-12m"))
    assert tried(fixed, "far", other_place_mend) == ()
