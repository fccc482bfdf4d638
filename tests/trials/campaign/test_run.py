"""Campaigns as a whole: the same for the same seed, whatever the order of lists; losses; every sample."""

from __future__ import annotations

import numpy as np
import pytest

from common.houses import CATALOGUE
from common.small_campaign import fitted_hall, watched_hall
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample, sample_names
from wardwright.trials.campaign.losses import NOTHING_LOST
from wardwright.trials.campaign.misses import traced
from wardwright.trials.campaign.run import BLOCK, LOSSES_FROM, campaign, window_of

ALL = load_catalogue()


def backwards(site: Site) -> Site:
    """The same site with every list the other way round."""
    lists = ("spaces", "walls", "openings", "stairs", "fixtures", "targets", "devices", "zones", "people")
    return site.model_copy(update={name: tuple(reversed(getattr(site, name))) for name in lists})


def test_the_order_of_lists_makes_no_difference() -> None:
    first, second = (
        campaign(site, CATALOGUE, trials=3000, seed=9) for site in (watched_hall(), backwards(watched_hall()))
    )
    for one, other in zip(first.columns, second.columns, strict=True):
        assert np.allclose(np.minimum(one, 1e9), np.minimum(other, 1e9), atol=1e-6)


def test_the_first_intruders_are_the_same_however_many_follow() -> None:
    few, many = (campaign(watched_hall(), CATALOGUE, trials=n, seed=9) for n in (700, BLOCK + 100))
    assert len(many.columns.way) == BLOCK + 100
    for one, other in zip(few.columns, many.columns, strict=True):
        assert np.array_equal(one, other[..., :700])


def test_one_more_detector_changes_no_other_intruder() -> None:
    """The same people come the same ways; only what notices them is more."""
    site = watched_hall()
    without = site.model_copy(
        update={
            "devices": tuple(one for one in site.devices if one.id != "kitchen-fan"),
            "zones": tuple(one for one in site.zones if one.devices != ("kitchen-fan",)),
        }
    )
    more, less = (campaign(one, CATALOGUE, trials=4000, seed=9) for one in (site, without))
    assert np.array_equal(more.columns.way, less.columns.way)
    assert np.allclose(np.minimum(more.columns.unit, 1e9), np.minimum(less.columns.unit, 1e9))
    assert (more.columns.notice <= less.columns.notice + 1e-9).all()
    # A lost detector is one that is not there.
    assert np.array_equal(more.losses["kitchen-fan"][0], less.losses[NOTHING_LOST][0])
    assert np.array_equal(more.losses["kitchen-fan"][1], less.losses[NOTHING_LOST][1])


def test_losses_are_tried_on_the_first_intruders() -> None:
    found = campaign(watched_hall(), CATALOGUE, trials=BLOCK, seed=9)
    whole = found.losses[NOTHING_LOST]
    assert np.array_equal(whole[0], found.sounder_in_time[:LOSSES_FROM])
    assert np.array_equal(whole[1], found.message_in_time[:LOSSES_FROM])
    assert set(found.losses) == {NOTHING_LOST, "bell", *(one.id for one in found.setting.devices)}
    assert LOSSES_FROM <= BLOCK


def test_without_targets_the_sounder_is_measured_at_the_unit() -> None:
    found = campaign(fitted_hall(), CATALOGUE, trials=500)
    assert not found.sounder_in_time.any()
    assert found.columns.at_target.shape == (0, 500)
    assert 0.0 < found.message_in_time.mean() < 1.0


def test_the_window_is_the_rule_packs() -> None:
    site = read_sample("terrace")
    assert window_of(site, ALL) == 1800.0
    american = site.model_copy(update={"place": site.place.model_copy(update={"rule_pack": "us"})})
    assert window_of(american, ALL) == 120.0
    assert window_of(american, ALL.model_copy(update={"limits": ()})) == float("inf")


@pytest.mark.parametrize("name", sample_names())
def test_every_sample_runs_and_no_miss_is_a_bug(name: str) -> None:
    """Where the design case is said to hold from a way in, nobody inside the design case gets through."""
    site = read_sample(name)
    found = campaign(site, ALL, trials=5000, seed=3)
    assert 0.0 < found.message_in_time.mean() < 1.0
    for one in traced(found, ALL):
        assert one.bugs == ()
        assert one.design <= one.misses
