"""Which choice moves the work."""

from __future__ import annotations

import pytest

from common.houses import on_wall, one_room
from common.priced_room import UNIT
from wardwright.costing.choices_tried import LOWER, ON_TAPE, choices_for
from wardwright.rules.registry import faults_of
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample, sample_names

CATALOGUE = load_catalogue()


def test_a_sounder_lower_saves_its_ladder_but_would_be_in_reach() -> None:
    """15 min for the ladder, less 3 for steps."""
    site = read_sample("terrace")
    sounder = next(one for one in site.devices if one.sheet == "sounder-outside")
    found = [one for one in choices_for(site, CATALOGUE) if one.mend.subject == sounder.id]
    gains = [one.mend.gain.value for one in found if one.mend.gain and one.mend.action == "change-mount"]
    assert gains == pytest.approx([12.0])
    assert all("SND102" in one.broken for one in found if one.mend.action == "change-mount")


def test_a_cable_saved_is_the_most() -> None:
    wired = on_wall("md", "movement-8m-wired", "north", 3.0, height_m=1.9)
    first, *_ = choices_for(one_room(devices=(UNIT, wired)), CATALOGUE)
    assert first.mend.action == "replace-device"
    assert first.mend.gain is not None
    assert first.mend.gain.value > 10.0
    assert first.mend.gain.low < first.mend.gain.value < first.mend.gain.high


def test_what_saves_most_is_first_and_nothing_saves_nothing() -> None:
    gains = [one.mend.gain.value for one in choices_for(read_sample("bungalow"), CATALOGUE) if one.mend.gain]
    assert gains == sorted(gains, reverse=True)
    assert all(gain > 0 for gain in gains)


@pytest.mark.parametrize("name", sample_names())
def test_a_rule_that_looks_at_one_device_says_the_same_of_it_among_others(name: str) -> None:
    site = read_sample(name)
    for rule in {one.code: one for rules in (ON_TAPE, *LOWER.values()) for one in rules}.values():
        together = [(one.subject, one.message) for one in faults_of(rule, site, CATALOGUE)]
        alone = [
            (one.subject, one.message)
            for device in sorted(site.devices, key=lambda each: each.id)
            for one in faults_of(rule, site.bare.model_copy(update={"devices": (device,)}), CATALOGUE)
        ]
        assert alone == together


def test_an_empty_house_has_no_choices() -> None:
    assert choices_for(one_room(), CATALOGUE) == ()
