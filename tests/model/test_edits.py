from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from common.houses import on_opening, on_wall, one_room, opening, two_rooms_and_hall, zone
from wardwright.errors import DocumentError
from wardwright.model.device import WallMount
from wardwright.model.edits import OPERATION, Edit, edited
from wardwright.model.site import Site

FAN = on_wall("fan-1", "fan", "south", 2.0)


def after(site: Site, **operation: Any) -> Site:
    return edited(site, (OPERATION.validate_python(operation),))


def test_a_device_is_put_mounted_and_turned() -> None:
    site = after(one_room(), do="put-device", device=FAN.model_dump(exclude_unset=True))
    assert site.devices == (FAN,)
    mount = {"on": "wall", "wall": "north", "side": "left", "offset_m": 1.0, "height_m": 2.1}
    site = after(site, do="mount-device", device="fan-1", mount=mount, heading_deg=250.0)
    assert site.device("fan-1").mount == WallMount.model_validate(mount)
    site = after(site, do="turn-device", device="fan-1", heading_deg=-30.0, tilt_deg=5.0)
    assert (site.device("fan-1").heading_deg, site.device("fan-1").tilt_deg) == (330.0, 5.0)


def test_a_fact_is_told_with_how_it_is_known() -> None:
    site = one_room(openings=(opening("door", "south", 2.65),))
    told = after(site, do="tell", of="openings", id="door", facts={"lock": "rc2"}, basis="measured").opening(
        "door"
    )
    assert (told.lock, told.basis_of("lock"), told.name) == ("rc2", "measured", "door")
    again = after(site, do="tell", of="openings", id="door", facts={"lock": "latch"}).opening("door")
    assert (again.lock, again.basis_of("lock")) == ("latch", "told")


def test_what_there_is_one_of_is_told_without_an_id() -> None:
    site = after(one_room(), do="tell", of="programme", facts={"entry_time_s": 20.0})
    assert site.programme.entry_time_s == 20.0
    assert after(site, do="tell", of="name", facts={"name": "cabin"}).name == "cabin"


def test_a_record_is_added_and_removed_with_what_cannot_be_without_it() -> None:
    site = one_room(
        openings=(opening("door", "south", 2.65),),
        devices=(FAN, on_opening("door-contact", "door")),
        zones=(zone(1, "Door", "door-contact"), zone(2, "Both", "fan-1", "door-contact")),
    )
    left = after(site, do="remove", of="openings", id="door")
    assert [d.id for d in left.devices] == ["fan-1"]
    assert [(z.id, z.devices) for z in left.zones] == [("zone-2", ("fan-1",))]
    more = after(left, do="add", to="people", record={"id": "mother", "name": "mother"})
    assert [p.id for p in more.people] == ["mother"]


@pytest.mark.parametrize(
    ("operation", "message"),
    [
        ({"do": "turn-device", "device": "x", "heading_deg": 0.0}, "there is no 'x' any more"),
        ({"do": "remove", "of": "devises", "id": "x"}, "'devises' is no list of a site"),
        ({"do": "tell", "of": "weather", "facts": {}}, "'weather' is no part of a site"),
        ({"do": "tell", "of": "walls", "id": "south", "facts": {"thickness_m": -1.0}}, "thickness_m"),
        ({"do": "tell", "of": "walls", "id": "south", "facts": {"colour": "red"}}, "colour"),
        ({"do": "add", "to": "walls", "record": {"id": "south"}}, "missing"),
        ({"do": "add", "to": "people", "record": {"id": "a", "name": "a", "pace": "fast"}}, "pace"),
    ],
)
def test_what_cannot_be_done_is_said(operation: dict[str, Any], message: str) -> None:
    with pytest.raises(DocumentError, match=message):
        after(one_room(), **operation)


def test_an_edit_names_itself_and_its_base() -> None:
    good = {
        "id": "a" * 8,
        "author": "tablet",
        "base": 1,
        "operations": [{"do": "remove", "of": "devices", "id": "x"}],
    }
    assert Edit.model_validate(good).operations[0].do == "remove"
    for wrong in ({"id": "short"}, {"base": -1}, {"operations": []}, {"author": ""}):
        with pytest.raises(ValidationError):
            Edit.model_validate(good | wrong)


def test_a_wall_moves_by_its_own_operation() -> None:
    site = after(two_rooms_and_hall(), do="move-wall", wall="study-wall", by_m=-0.5)
    assert site.wall("study-wall").line_m == ((6.65, 0.0), (6.65, 6.0))
