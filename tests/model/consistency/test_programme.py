import pytest

from common.broken import found, only

DOUBLE = {"id": "zone-3", "number": 3, "name": "again", "devices": [], "behaviour": "instant"}


@pytest.mark.parametrize(
    ("edits", "weight", "what"),
    [
        ((("zones/zone-2/devices", ["kitchen-detector"] * 2),), "stops",
         "the device 'kitchen-detector' is named twice in it"),
        ((("zones/+", DOUBLE),), "stops", "the zone has no device"),
        ((("zones/zone-2/parts", []),), "stops", "the zone is active in no part"),
        ((("programme/entry_time_s", 0),), "noted", "it starts the entry time, but the entry time is 0 s"),
        ((("zones/zone-2/devices", ["unit"]),), "noted", "it is in no zone, so the control unit does not know it"),
        ((("behaviours", [{"id": "instant", "name": "i"},
                          {"id": "entry-exit", "name": "e", "starts_entry": True, "alarms": False}]),), "stops",
         "it starts the entry time and yet never alarms"),
        ((("behaviours", [{"id": "instant", "name": "i"},
                          {"id": "entry-exit", "name": "e", "starts_entry": True, "is_always_active": True}]),),
         "noted", "it starts the entry time and yet is always active, also when unset"),
    ],
)  # fmt: skip
def test_zones_and_behaviours(edits: tuple[tuple[str, object], ...], weight: str, what: str) -> None:
    said = only(*edits)
    assert (said[0], said[2]) == (weight, what)


def test_an_always_on_zone_needs_no_part() -> None:
    assert found(("zones/zone-2/parts", []), ("zones/zone-2/behaviour", "always-on")) == ()


def test_without_any_zone_nothing_is_said_of_devices_without_one() -> None:
    assert found(("zones", [])) == ()


def test_more_zones_than_the_control_unit_has() -> None:
    # The unit of the good house has 24 zones.
    many = [
        {"id": f"zone-{n}", "number": n, "name": f"z {n}", "devices": [f"d{n}"], "behaviour": "instant"}
        for n in range(1, 26)
    ]
    said = [p.what for p in found(("zones", many))]
    assert "there are 25 zones, but the control unit 'unit' has only 24" in said
    assert not any("beyond the control unit's last" in what for what in said)
