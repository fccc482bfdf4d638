"""What would mend a zone's behaviour, tried on the model."""

from __future__ import annotations

import pytest

from common.arrival_house import KEYPAD, KITCHEN, arrival_house
from common.houses import zone
from wardwright.model.revision import with_device
from wardwright.model.site import Site
from wardwright.questions.behaviour_mends import (
    SLIVER_M2,
    behaviour_mends,
    is_sliver,
    turned_away,
)
from wardwright.questions.zone_behaviours import answers
from wardwright.rules.finding import Mend
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.zone_roles import Derived, derived, zone_hearing

CATALOGUE = load_catalogue()


def one_of(site: Site, name: str = "kitchen-movement") -> Derived:
    return next(one for one in derived(site, CATALOGUE, (KEYPAD,)) if one.device.id == name)


def mends(site: Site, name: str = "kitchen-movement") -> tuple[Mend, ...]:
    return behaviour_mends(
        site, CATALOGUE, one_of(site, name), zone=zone_hearing(site, name), controls=(KEYPAD,)
    )


def test_a_sliver_is_little_of_the_way_in_seen_from_another_room() -> None:
    assert is_sliver(one_of(arrival_house(kitchen_door="open")))
    assert not is_sliver(one_of(arrival_house(kitchen_door="shut")))
    assert not is_sliver(one_of(arrival_house(), "hall-movement"))
    assert SLIVER_M2 == 0.5


def test_the_detector_is_turned_until_it_sees_none_of_the_way_in() -> None:
    straight = KITCHEN.model_copy(update={"heading_deg": 0.0})
    site = arrival_house(kitchen_door="open", without=(KITCHEN.id,), also=(straight,))
    turned = turned_away(site, CATALOGUE, one_of(site), controls=(KEYPAD,))
    assert turned is not None
    assert 30.0 < turned <= 45.0  # to the left: the door lies to its right
    assert ("heading_deg", turned) in next(
        mend for mend in mends(site) if mend.action == "turn-device"
    ).values
    there = with_device(site, one_of(site).device.model_copy(update={"heading_deg": turned}))
    assert one_of(there).role == "instant"
    after = next(one for one in answers(there, CATALOGUE) if one.subject_id == "kitchen-movement")
    assert after.verdict == "good"


def test_a_detector_of_the_way_in_itself_is_not_turned_away() -> None:
    site = arrival_house(roles={"hall-movement": "instant"})
    assert [mend.action for mend in mends(site, "hall-movement")] == ["change-behaviour"]


def test_a_door_is_kept_shut_where_that_hides_it() -> None:
    site = arrival_house(kitchen_door=None)
    found = mends(site)
    assert (found[0].action, found[0].subject) == ("keep-shut", "kitchen-door")
    # Once it is told to be shut, the detector may stay as it is.
    shut = next(
        one
        for one in answers(arrival_house(kitchen_door="shut"), CATALOGUE)
        if one.subject_id == "kitchen-movement"
    )
    assert shut.verdict == "good"


def test_the_behaviour_is_changed_of_the_zone_or_of_one_device_of_a_shared_one() -> None:
    site = arrival_house(kitchen_door="shut", roles={"kitchen-movement": "entry-route"})
    (mend,) = mends(site)
    heard = zone_hearing(site, "kitchen-movement")
    assert heard is not None
    assert (mend.subject, dict(mend.values)) == (heard.id, {"behaviour": "instant"})
    shared = zone(1, "both", "kitchen-movement", "hall-movement", behaviour="entry-route")
    both = site.model_copy(update={"zones": (shared,)})
    assert mends(both)[0].subject == "kitchen-movement"


@pytest.mark.parametrize("own", ["quiet-route", "entry-route"])
def test_a_behaviour_of_the_sites_own_is_named_by_its_id(own: str) -> None:
    site = arrival_house(roles={"hall-movement": "instant"})
    behaviours = tuple(
        one.model_copy(update={"id": own}) if one.id == "entry-route" else one for one in site.behaviours
    )
    (mend,) = mends(site.model_copy(update={"behaviours": behaviours}), "hall-movement")
    assert dict(mend.values) == {"behaviour": own}
