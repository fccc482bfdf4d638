"""What is protected and what is not, in facts for the customer."""

from __future__ import annotations

import pytest

from common.worked_terrace import ear_in_kitchen, shock_on, with_watch, worked_terrace
from wardwright.model.device import OpeningMount
from wardwright.model.site import Site
from wardwright.questions.protection import Cover, protection
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def cover(site: Site, part: str = "full") -> Cover:
    return next(one for one in protection(site, CATALOGUE) if one.part == part)


def test_each_opening_is_told_by_how_it_is_come_through() -> None:
    found = {one.opening: (one.opened, one.glass) for one in cover(read_sample("terrace")).openings}
    assert found["front-door"] == ("at once", None)
    assert found["garden-door"] == ("at once", "further in")
    assert found["living-window"] == ("in the room", "in the room")
    assert found["landing-window"] == (None, None)


def test_a_part_with_no_zone_notices_nothing() -> None:
    site = read_sample("terrace")
    by_day = tuple(zone.model_copy(update={"parts": ("full",)}) for zone in site.zones)
    night = cover(site.model_copy(update={"zones": by_day}), "night")
    assert {one.opened for one in night.openings} == {"not", None}
    assert all(not one.by and not one.openings for one in night.rooms)


def test_rooms_name_what_watches_them() -> None:
    rooms = {one.space: one for one in cover(read_sample("terrace")).rooms}
    assert rooms["hall"].by == ("movement-detector",)
    assert rooms["hall"].openings == ("front-door",)
    assert rooms["landing"].by == ()


def test_in_a_single_room_nothing_is_promised_without_a_detector() -> None:
    """A contact on the door alone tells nothing of who comes in by the window."""
    site = read_sample("one-room")
    contacts = tuple(one for one in site.devices if isinstance(one.mount, OpeningMount))
    kept = {one.id for one in contacts}
    zones = tuple(zone for zone in site.zones if set(zone.devices) <= kept)
    bare = site.model_copy(update={"devices": contacts, "zones": zones})
    assert contacts
    found = {one.opening: one.opened for one in cover(bare).openings}
    assert found == {"door": "at once", "window": "not"}
    assert {one.opened for one in cover(site).openings} == {"at once", "in the room"}


@pytest.mark.parametrize("name", ["terrace", "terrace-better"])
def test_where_the_control_unit_is_changes_nothing(name: str) -> None:
    site = read_sample(name)
    moved = tuple(
        one.model_copy(update={"mount": next(d.mount for d in site.devices if "keypad" in d.id)})
        if "control-unit" in one.id
        else one
        for one in site.devices
    )
    assert moved != site.devices
    assert protection(site.model_copy(update={"devices": moved}), CATALOGUE) == protection(site, CATALOGUE)


def test_glass_and_force_are_told_by_what_notices_them() -> None:
    bare = worked_terrace(contacts={})

    def told(site: Site) -> tuple[str | None, str | None]:
        return next(
            (one.opened, one.glass) for one in cover(site).openings if one.opening == "kitchen-window"
        )

    assert told(with_watch(bare, ear_in_kitchen())) == ("not", "at once")
    assert told(with_watch(bare, shock_on("kitchen-window"))) == ("at once", "at once")
    # Too far along the wall to hear the far corner, hypot(5.0, 3.5) m.
    assert told(with_watch(bare, ear_in_kitchen(0.2))) == ("not", "not")
