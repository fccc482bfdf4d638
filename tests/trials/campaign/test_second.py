"""A second, independent detection within the window of the rule pack."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest

from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.campaign.run import Campaign, campaign, window_of
from wardwright.trials.campaign.second import limit_words, second_of

CATALOGUE = load_catalogue()


def terrace(pack: str) -> Site:
    site = read_sample("terrace-better")
    place = site.place.model_copy(update={"rule_pack": pack, "country": None})
    return site.model_copy(update={"place": place})


@cache
def sent(pack: str) -> Campaign:
    return campaign(terrace(pack), CATALOGUE, trials=2_000)


@pytest.mark.parametrize(("pack", "window_s"), [("uk-eu", 1800.0), ("us", 120.0)])
def test_each_pack_has_its_window_with_where_it_is_from(pack: str, window_s: float) -> None:
    assert window_of(terrace(pack), CATALOGUE) == window_s
    share, window, reason = second_of(sent(pack), CATALOGUE)
    assert (window, reason) == (window_s, None)
    assert share is not None
    assert share.count == np.count_nonzero(sent(pack).columns.second <= window_s)
    mark = {"uk-eu": "bs-8243 2021; from memory", "us": "common practice"}[pack]
    assert limit_words(sent(pack), CATALOGUE).startswith(mark)


def test_a_shorter_window_confirms_fewer_of_the_same_intruders() -> None:
    long, short = (second_of(sent(pack), CATALOGUE)[0] for pack in ("uk-eu", "us"))
    assert long is not None
    assert short is not None
    assert long.trials == short.trials
    assert 0 < short.count < long.count


def test_without_a_window_there_is_a_reason_instead() -> None:
    none = CATALOGUE.model_copy(update={"limits": ()})
    share, window, reason = second_of(sent("uk-eu"), none)
    assert (share, window) == (None, None)
    assert reason is not None
    assert "confirmation-window" in reason
    assert limit_words(sent("uk-eu"), none) == ""
