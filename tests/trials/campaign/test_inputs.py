"""The draws: by key and seed alone, block after block alike, distributed as their figures say."""

from __future__ import annotations

import numpy as np
import pytest

from common.houses import CATALOGUE
from wardwright.model.catalogue import Figure
from wardwright.trials.campaign.inputs import Inputs, Who, design_values, drawn, picked
from wardwright.trials.campaign.streams import Streams

WHO = Who(
    ways=(("door", "opened"), ("window", "opened"), ("window", "through the glass")),
    shares=(0.75, 0.25, 0.25),
    goals=("control unit", "target a", "target b"),
    unit=0,
    movement=("m1", "m2"),
    at_openings=("c1",),
    paths=frozenset(),
)
ROOM = Figure(
    id="room", name="room", value=20, low=12, high=28, unit="deg C", source="own", mark="assumption"
)


def lots(who: Who = WHO, *, seed: int = 5, count: int = 40_000, streams: Streams | None = None) -> Inputs:
    return drawn(streams or Streams(seed), CATALOGUE, who, room=ROOM, count=count)


def test_the_same_seed_gives_the_same_and_another_does_not() -> None:
    first, again, other = lots(count=50), lots(count=50), lots(count=50, seed=6)
    for name in Inputs._fields:
        assert np.array_equal(getattr(first, name), getattr(again, name))
    assert not np.array_equal(first.pace, other.pace)


def test_blocks_follow_one_another() -> None:
    """Two blocks of 30 are one of 60: how much is played at once changes nothing."""
    whole, streams = lots(count=60), Streams(5)
    parts = [lots(count=30, streams=streams) for _ in range(2)]
    for name in Inputs._fields:
        axis = -1 if name in ("reach", "walked", "tells") else 0
        assert np.array_equal(
            np.concatenate([getattr(one, name) for one in parts], axis=axis), getattr(whole, name)
        )


def test_one_more_device_or_goal_moves_no_other_draw() -> None:
    """Keys, not places: what is drawn for the others stays."""
    more = WHO._replace(movement=("m0", *WHO.movement), at_openings=("c0", "c1"))
    first, second = lots(count=500), lots(more, count=500)
    assert np.array_equal(second.reach[1:], first.reach)
    assert np.array_equal(second.walked[1:], first.walked)
    assert np.array_equal(second.tells[1], first.tells[0])
    assert np.array_equal(second.way, first.way)
    other = lots(WHO._replace(goals=(*WHO.goals, "target c")), count=500)
    without = np.array([[goal for goal in row if goal < 3] for row in other.order.tolist()])
    assert np.array_equal(without, first.order)


def test_shares_come_out_within_sampling_error() -> None:
    found, count = lots(), 40_000
    glass = CATALOGUE.figure("share-through-glass").value
    for got, expected in (
        ((found.way == 0).mean(), 0.75),
        ((found.way == 2).mean(), 0.25 * glass),
        (found.is_cautious.mean(), CATALOGUE.figure("share-cautious").value),
        (found.tells.mean(), CATALOGUE.figure("chance-contact-tells").value),
        # Before the others with its share; else in a third of the orders.
        ((found.order[:, 0] == 0).mean(), 0.3 + 0.7 / 3.0),
        ((found.order[:, 0] == 1).mean(), 0.7 / 3.0),
    ):
        assert abs(got - expected) < 4.5 * (expected * (1.0 - expected) / count) ** 0.5


def test_figures_have_their_percentiles() -> None:
    """A twentieth lies under the low value and a twentieth over the high one; nothing is negative."""
    found, count = lots(), 40_000
    for values, name in (
        (found.stairs, "stairs-share"),
        (found.breaking, "break-control-unit"),
        (found.stay, "stay"),
    ):
        figure = CATALOGUE.figure(name)
        assert values.min() > 0.0
        for share in ((values < figure.low).mean(), (values > figure.high).mean()):
            assert abs(share - 0.05) < 4.5 * (0.05 * 0.95 / count) ** 0.5
        assert np.median(values) == pytest.approx(figure.value, rel=0.02)


def test_message_paths() -> None:
    """By broadband alone, a message is lost whenever broadband is down; with mobile data too, never."""
    alone = lots(WHO._replace(paths=frozenset({"broadband"})))
    share = 1.0 - CATALOGUE.figure("share-broadband-up").value
    assert abs(np.isinf(alone.message).mean() - share) < 4.5 * (share / 40_000) ** 0.5
    both = lots(WHO._replace(paths=frozenset({"broadband", "mobile"})))
    assert np.isfinite(both.message).all()
    mobile = lots(WHO._replace(paths=frozenset({"mobile"})))
    assert np.median(mobile.message) == pytest.approx(CATALOGUE.figure("message-mobile").value, rel=0.02)


def test_some_are_picked_whole() -> None:
    every = lots(count=20)
    some = picked(every, np.array([3, 7]))
    assert np.array_equal(some.reach, every.reach[:, [3, 7]])
    assert np.array_equal(some.order, every.order[[3, 7]])


def test_the_design_case_is_hurried_and_its_message_slow() -> None:
    found = design_values(CATALOGUE)
    assert found["pace"] == CATALOGUE.figure("pace-hurried").value
    assert found["message"] == CATALOGUE.figure("message-time").high
    assert found.keys() <= set(Inputs._fields)
