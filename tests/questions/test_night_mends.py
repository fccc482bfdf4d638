"""Cures for a trip that rings at night: each does what it says, by the edit that it is."""

from __future__ import annotations

import pytest

from common.arrival_house import KITCHEN
from common.houses import zone
from common.night_house import AT_NIGHT, night_house
from wardwright.model.edits import edited
from wardwright.model.site import Site
from wardwright.questions.night_mends import night_mends
from wardwright.questions.zones_at_night import part_set
from wardwright.rules.finding import Mend
from wardwright.rules.mending import operations_of
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.leaves_opened import Leaves
from wardwright.trials.night_rings import ring_on
from wardwright.trials.night_trips import NightTrip, night_trips

CATALOGUE = load_catalogue()


def trip_to(site: Site, goal: str) -> NightTrip:
    return next(one for one in night_trips(site, CATALOGUE) if one.goal == goal)


def mended(site: Site, *mends: Mend) -> Site:
    for mend in mends:
        operations = operations_of(site, CATALOGUE, mend)
        assert operations is not None
        site = edited(site, operations)
    return site


def mends_of(site: Site, goal: str, leaves: Leaves = "night") -> dict[str, list[Mend]]:
    found: dict[str, list[Mend]] = {}
    for mend in night_mends(site, CATALOGUE, trip_to(site, goal), leaves=leaves):
        found.setdefault(mend.action, []).append(mend)
    return found


def test_a_silent_trip_has_none() -> None:
    site = night_house({"front-contact": "instant"})
    assert night_mends(site, CATALOGUE, trip_to(site, "kitchen"), leaves="most") == ()


def test_all_zones_that_ring_are_taken_out_and_then_it_is_silent() -> None:
    site = night_house(dict.fromkeys(("hall-movement", "kitchen-movement"), "instant"))
    mends = mends_of(site, "kitchen")["change-parts"]
    assert [mend.subject for mend in mends] == ["zone-1", "zone-2"]
    assert ring_on(mended(site, *mends), CATALOGUE, trip_to(site, "kitchen")) is None
    assert ring_on(mended(site, mends[0]), CATALOGUE, trip_to(site, "kitchen")) is not None
    assert mends[0].gain is not None
    assert (mends[0].gain.value, mends[0].gain.unit) == (0.0, "openings")  # nothing is left in the part


def test_what_is_always_active_is_in_no_part_to_be_taken_out_of() -> None:
    always = zone(1, "hall", "hall-movement", behaviour="always-on")
    site = night_house(zones=(always, zone(2, "rest", "front-contact", parts=AT_NIGHT)))
    assert "change-parts" not in mends_of(site, "kitchen")


def test_in_the_morning_the_zone_may_start_the_entry_time_at_night_alone() -> None:
    site = night_house()
    (mend,) = mends_of(site, "out")["behave-part-set"]
    assert (mend.subject, mend.values) == ("zone-1", (("behaviour", "entry-exit"),))
    after = mended(site, mend)
    assert ring_on(after, CATALOGUE, trip_to(site, "out")) is None
    assert (after.zones[0].behaviour, after.zones[0].behaviour_part_set) == ("instant", "entry-exit")
    assert after == part_set(site, site.zones[0], behaviour="entry-exit")
    assert "behave-part-set" not in mends_of(site, "kitchen")


def test_a_keyfob_by_the_bed_unsets_it_before_anybody_gets_up() -> None:
    site = night_house()
    (mend,) = mends_of(site, "out")["add-device"]
    after = mended(site, mend)
    assert CATALOGUE.sheet(after.devices[-1].sheet).kind == "keyfob"
    assert trip_to(after, "out").ends is None
    assert ring_on(after, CATALOGUE, trip_to(after, "out")) is None
    assert "add-device" not in mends_of(site, "kitchen")


def test_a_leaf_kept_shut() -> None:
    site = night_house({"kitchen-movement": "instant"}, leaves="shut", ever="open")
    out = trip_to(site, "out")
    assert ring_on(site, CATALOGUE, out) is None
    if ring_on(site, CATALOGUE, out, leaves="most") is not None:
        mends = mends_of(site, "out", "most")["keep-shut"]
        assert "kitchen-door" in [mend.subject for mend in mends]


def test_a_detector_turned_off_the_trip_does_not_ring() -> None:
    # From the kitchen's south end it looks across the hall's door; turned along its wall it does not.
    looks = KITCHEN.model_copy(update={"heading_deg": 10.0})
    house = night_house({"kitchen-movement": "instant"}, leaves="open")
    site = house.model_copy(
        update={"devices": tuple(looks if one.id == KITCHEN.id else one for one in house.devices)}
    )
    trip = trip_to(site, "out")
    ring = ring_on(site, CATALOGUE, trip)
    mends = night_mends(site, CATALOGUE, trip, leaves="night")
    turned = [mend for mend in mends if mend.action == "turn-device"]
    if ring is None:
        pytest.fail("the house is to have a detector that looks across the way out")
    for mend in turned:
        assert ring_on(mended(site, mend), CATALOGUE, trip) is None
