"""NAM101: what is wrong with a name, and the better one."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_opening, on_wall, person, standing_free, two_rooms_and_hall, zone
from wardwright.model.programme import Zone
from wardwright.model.site import Site
from wardwright.rules.finding import Finding
from wardwright.rules.names.name_not_clear_or_not_unique import name_not_clear_or_not_unique as rule
from wardwright.rules.registry import findings_of

UNIT = on_wall("unit", "unit", "north", 1.0)
DEVICES = (
    UNIT,
    on_wall("kitchen-fan", "fan", "south", 1.0),
    on_wall("kitchen-fan-2", "fan", "south", 3.0),
    on_opening("front", "front-door"),
)


def house(*zones: Zone, **parts: object) -> Site:
    return two_rooms_and_hall(**({"devices": DEVICES, "zones": zones, "people": (person("Anna"),)} | parts))


def findings(*zones: Zone) -> tuple[Finding, ...]:
    return findings_of(rule, house(*zones), CATALOGUE)


@pytest.mark.parametrize(
    ("name", "fault"),
    [
        ("Zone 7", "says nothing but a kind or a number"),
        ("Sensor2", "says nothing but a kind or a number"),
        ("12", "says nothing but a kind or a number"),
        ("", "says nothing but a kind or a number"),
        ("Anna hall", "names a person, Anna"),
        ("anna's hall", "names a person, Anna"),
        ("Lovely thing", "does not say where"),
        (
            "A long name: hall",
            None,
        ),  # cut by the display of 16 letters to `a long name: hal`, which is no word
    ],
)
def test_each_fault_is_named(name: str, fault: str | None) -> None:
    (found,) = findings(zone(1, name, "kitchen-fan"))
    assert (fault or "does not say where") in found.message
    assert found.severity == "advise"
    assert found.mends[0].values == (("name", "Kitchen movement"),)


@pytest.mark.parametrize(
    "name", ["Kitchen", "Front door", "Hall movement", "Annalise's study", "Stud movement"]
)
def test_a_name_with_a_place_is_clear(name: str) -> None:
    assert findings(zone(1, name, "front")) == ()


def test_two_of_one_name_are_the_same_whatever_their_capitals() -> None:
    two = findings(zone(1, "Kitchen movement", "kitchen-fan"), zone(2, "kitchen  Movement", "kitchen-fan-2"))
    assert [one.severity for one in two] == ["must mend", "must mend"]
    assert [one.related for one in two] == [("zone-2",), ("zone-1",)]
    names = [dict(one.mends[0].values)["name"] for one in two]
    assert len(set(names)) == 2
    assert all(len(str(name)) <= 16 for name in names)


def test_a_keyfob_may_have_its_users_name() -> None:
    keyfob = standing_free("keyfob", "keyfob", 5.0, 1.0)
    named = zone(1, "Anna hall", "keyfob")
    assert findings_of(rule, house(named, devices=(*DEVICES, keyfob)), CATALOGUE) == ()


def test_without_a_control_unit_names_are_compared_whole_and_that_is_said() -> None:
    site = house(
        zone(1, "Kitchen movement A", "kitchen-fan"),
        zone(2, "Kitchen movement B", "kitchen-fan-2"),
        devices=DEVICES[1:],
    )
    (found,) = findings_of(rule, site, CATALOGUE)
    assert (found.severity, found.subject) == ("not run", "two rooms and hall")


def test_no_better_name_for_a_zone_without_a_device() -> None:
    (found,) = findings(zone(1, "Zone 1"))
    assert found.mends == ()
