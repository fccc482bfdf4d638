"""Misses traced: to the one input that was set, to the design, and, where it is said to hold, to a bug."""

from __future__ import annotations

import dataclasses

import numpy as np
import pytest

from common.houses import CATALOGUE
from common.small_campaign import STILL, fitted_hall, watched_hall, world
from wardwright.trials.campaign import misses
from wardwright.trials.campaign.misses import DESIGN, SEVERAL, Traced, traced
from wardwright.trials.campaign.run import Campaign, campaign

SURE = STILL | {
    # Nothing is uncertain but whether contacts tell; with that the message is always in time.
    "climb-in": (5.0, 5.0, 5.0),
    "break-control-unit": (10.0, 10.0, 10.0),
    "radio-delay": (1.0, 1.0, 1.0),
    "message-time": (10.0, 10.0, 10.0),
}


def of_the_window(found: Campaign) -> Campaign:
    """Only the misses of those who came in by the kitchen's window."""
    window = [way.opening.id for way in found.setting.ways].index("kitchen-window")
    rows = np.flatnonzero(found.missed.way == window)
    return dataclasses.replace(found, missed=misses.picked(found.missed, rows))


def message(found: tuple[Traced, ...]) -> Traced:
    return next(one for one in found if one.need == "message")


def test_a_contact_that_did_not_tell_is_named_alone() -> None:
    """All else is as in the design case: each miss of the window is mended by its contact."""
    catalogue = world(SURE)
    found = message(traced(of_the_window(campaign(fitted_hall(), catalogue, trials=4000)), catalogue))
    assert found.misses > 20
    assert found.design == 0
    assert found.causes == (("a device at an opening that did not tell", found.misses),)
    assert found.bugs == ()


def test_a_slow_message_is_named() -> None:
    """Where everything tells, what is late is the message, and the break that was quick."""
    catalogue = world(SURE | {
        "chance-contact-tells": (1.0, 1.0, 1.0),
        "message-time": (10.0, 6.0, 14.0),
        "break-control-unit": (10.0, 7.0, 13.0),
    })  # fmt: skip
    found = message(traced(of_the_window(campaign(fitted_hall(), catalogue, trials=20_000)), catalogue))
    names = {name for name, _ in found.causes}
    assert found.design == 0
    assert names <= {
        "a control unit quickly broken", "a message slower than the slow path, or no path", SEVERAL,
    }  # fmt: skip
    assert sum(count for _, count in found.causes) >= found.misses > 0


def test_where_nothing_notices_the_design_is_to_blame() -> None:
    """Through the study's window nothing tells at all: no input mends it."""
    catalogue = world(SURE)
    whole = campaign(fitted_hall(), catalogue, trials=2000)
    study = [way.opening.id for way in whole.setting.ways].index("study-window")
    rows = np.flatnonzero(whole.missed.way == study)
    found = message(traced(dataclasses.replace(whole, missed=misses.picked(whole.missed, rows)), catalogue))
    assert found.design == found.misses == len(rows)
    assert found.causes == ()
    assert found.bugs == ()
    assert DESIGN


def test_a_design_that_is_wrongly_said_to_hold_is_a_bug(monkeypatch: pytest.MonkeyPatch) -> None:
    """The same misses, were `timely` to say that every way is caught."""
    monkeypatch.setattr(misses, "is_every_way_caught", lambda *_, **__: True)
    catalogue = world(SURE)
    found = message(traced(campaign(fitted_hall(), catalogue, trials=2000), catalogue))
    assert ("study-window opened", "control unit") in found.bugs


def test_no_miss_of_the_watched_hall_is_a_bug() -> None:
    """Every sort of zone, with all that is uncertain."""
    for one in traced(campaign(watched_hall(), CATALOGUE, trials=20_000), CATALOGUE):
        assert one.misses > 0
        assert one.bugs == ()
        assert sum(count for _, count in one.causes) + one.design >= one.misses


def test_without_misses_there_is_nothing_to_trace() -> None:
    found = campaign(fitted_hall(), CATALOGUE, trials=10)
    none = dataclasses.replace(found, missed=misses.picked(found.missed, np.zeros(0, dtype=np.int64)))
    assert [(one.misses, one.design, one.causes, one.bugs) for one in traced(none, CATALOGUE)] == [
        (0, 0, (), ())
    ] * 2
