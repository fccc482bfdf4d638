"""Mends of what is set in a part, as edits."""

from __future__ import annotations

from common.night_house import night_house
from wardwright.model.edits import edited
from wardwright.rules.mending_parts import into_part, otherwise_part_set, out_of_part
from wardwright.trials.watchers import heard_in

SITE = night_house()


def test_a_zone_out_of_a_part() -> None:
    operations = out_of_part(SITE, "zone-1", {"without": "night"})
    assert operations is not None
    assert edited(SITE, operations).zones[0].parts == ("full",)
    assert out_of_part(SITE, "zone-1", {"without": "evening"}) is None
    assert out_of_part(SITE, "gone", {"without": "night"}) is None


def test_a_zone_that_behaves_otherwise_when_part_set() -> None:
    operations = otherwise_part_set(SITE, "zone-1", {"behaviour": "entry-exit"})
    assert operations is not None
    after = edited(SITE, operations)
    assert [heard_in(after, part)["hall-movement"].id for part in ("full", "night")] == [
        "instant",
        "entry-exit",
    ]
    assert otherwise_part_set(SITE, "zone-1", {"behaviour": "gone"}) is None
    assert otherwise_part_set(SITE, "gone", {"behaviour": "instant"}) is None


def test_a_zone_into_one_part_more() -> None:
    by_day = tuple(one.model_copy(update={"parts": ("full",)}) for one in SITE.zones)
    site = SITE.model_copy(update={"zones": by_day})
    operations = into_part(site, "zone-1", {"part": "night"})
    assert operations is not None
    assert edited(site, operations) == SITE
    assert into_part(SITE, "zone-1", {"part": "night"}) is None
    assert into_part(site, "zone-1", {"part": "evening"}) is None
    assert into_part(site, "gone", {"part": "night"}) is None
