"""Zones in and out of the night part."""

from __future__ import annotations

import pytest

from common.houses import on_opening, zone
from common.night_house import AT_NIGHT, night_house
from wardwright.model.edits import edited
from wardwright.questions.still_protected import openings_noticed, watched_at_night
from wardwright.questions.zones_at_night import (
    heard_at_night,
    heard_with,
    more_at_night,
    out_of_night,
    part_set,
    still_noticed,
)
from wardwright.rules.mending import operations_of
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.night_trips import night_trips

CATALOGUE = load_catalogue()
PANE = on_opening("pane", "kitchen-window", "contact-radio")


def test_what_is_noticed_and_that_it_is_not_known_without_a_unit() -> None:
    site = night_house({"front-contact": "entry-exit"})
    assert still_noticed(site, CATALOGUE) == openings_noticed(watched_at_night(site, CATALOGUE))
    without = tuple(one for one in site.devices if one.id != "unit")
    assert still_noticed(site.model_copy(update={"devices": without}), CATALOGUE) is None


@pytest.mark.parametrize("sample", ["terrace", "terrace-better", "bungalow", "lakeside", "sunrise"])
def test_without_races_the_same_openings_are_counted(sample: str) -> None:
    site = read_sample(sample)
    for one in site.zones:
        after = out_of_night(site, one)
        assert still_noticed(after, CATALOGUE) == openings_noticed(watched_at_night(after, CATALOGUE))


def test_a_zone_that_behaves_otherwise_when_part_set() -> None:
    site = night_house()
    after = part_set(site, site.zones[0], behaviour="entry-exit")
    assert (after.zones[0].behaviour, after.zones[0].behaviour_part_set) == ("instant", "entry-exit")


def test_a_zone_out_of_the_night_part() -> None:
    site = night_house()
    assert out_of_night(site, site.zones[0]).zones[0].parts == ("full",)


def test_a_zone_that_wakes_nobody_may_be_set_at_night_too() -> None:
    by_day = [zone(1, "front", "front-contact"), zone(2, "hall", "hall-movement")]
    site = night_house(zones=(*by_day, zone(3, "window", "pane", parts=AT_NIGHT)), also=(PANE,))
    now = openings_noticed(watched_at_night(site, CATALOGUE))
    assert now.value == 1.0
    (mend,) = more_at_night(site, CATALOGUE, night_trips(site, CATALOGUE), now=now)
    # The hall's detector would notice more, but whoever goes to the kitchen, too.
    assert (mend.action, mend.subject) == ("add-to-part", "zone-1")
    operations = operations_of(site, CATALOGUE, mend)
    assert operations is not None
    after = edited(site, operations)
    assert mend.gain == openings_noticed(watched_at_night(after, CATALOGUE))
    assert mend.gain is not None
    assert mend.gain.value == 2.0


def test_what_is_heard_after_a_change_takes_in_detectors_that_were_not_asked_about() -> None:
    site = night_house(dict.fromkeys(("hall-movement", "kitchen-movement"), "instant"))
    few = site.model_copy(update={"devices": tuple(d for d in site.devices if d.id != "kitchen-movement")})
    after = out_of_night(few, few.zones[0])
    assert few.zones[0].devices == ("hall-movement",)
    assert [one.id for one in heard_with(site, CATALOGUE, after)] == ["kitchen-movement"]
    assert heard_with(site, CATALOGUE, few) == heard_at_night(site, CATALOGUE)
