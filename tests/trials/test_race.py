"""The worked terrace run by the engines: the same orderings and margin signs as the worked example.

The example's numbers (at the unit, broken, message) are in `test_zone_response`; here every leg comes from the
walking engine and every notice of a movement detector from the detection engine.
"""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from common.turning import quarter_turned
from common.worked_terrace import UPSTAIRS, worked_terrace
from wardwright.errors import NotComputable
from wardwright.model.device import WallMount
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.alarm import alarm_of
from wardwright.trials.race import Race, first_notice, race
from wardwright.trials.watchers import control_units
from wardwright.trials.ways_in import ways_in
from wardwright.trials.ways_on_foot import spot_of

CATALOGUE = load_catalogue()
HALL = {"hall": (WallMount(wall="ground-back", side="left", offset_m=7.8, height_m=2.2), -60.0, "instant")}
LANDING = {"landing": (WallMount(wall="upper-left", side="left", offset_m=1.0, height_m=2.2), 0.0, "instant")}

# Way in, manner, kit, then the example's: at the unit [s], sounder ahead of it [s], message ahead of its end [s].
CASES: dict[str, tuple[str, str, dict[str, Any], float, float, float]] = {
    "A": ("kitchen-window", "opened", {"contacts": {"kitchen-window": "instant"}}, 9.0, 8.0, 8.0),
    "A+": (
        "kitchen-window", "opened",
        {"contacts": {"kitchen-window": "instant-delayed"}, "abort_delay_s": 30.0}, 9.0, 8.0, -22.0,
    ),
    "B": ("kitchen-window", "through the glass", {"contacts": {}, "movement": HALL}, 9.0, 0.2, 0.2),
    "C": ("front-door", "opened", {"contacts": {"front-door": "entry-exit"}}, 1.6, -29.4, -29.4),
    "C+": (
        "front-door", "opened",
        {"contacts": {"front-door": "entry-exit"}, "entry_time_s": 45.0, "abort_delay_s": 30.0},
        1.6, -44.4, -74.4,
    ),
    "D": (
        "front-door", "opened",
        {"contacts": {"front-door": "entry-exit"}, "movement": LANDING, "unit": UPSTAIRS}, 9.2, 3.0, 3.0,
    ),
}  # fmt: skip


def run(name: str) -> Race:
    opening, manner, kit, *_ = CASES[name]
    return run_on(worked_terrace(**kit), opening, manner)


def run_on(site: Site, opening: str, manner: str) -> Race:
    way = next(w for w in ways_in(site, CATALOGUE)[0] if (w.opening.id, w.manner) == (opening, manner))
    return race(site, CATALOGUE, way=way, goal=spot_of(site, control_units(site, CATALOGUE)[0]))


def ahead(one: Race) -> tuple[float, float]:
    assert one.sounder is not None
    return float((one.reached - one.sounder)[0]), float((one.broken - one.message)[0])


@pytest.mark.parametrize("name", CASES)
def test_the_engines_walk_the_examples_legs(name: str) -> None:
    at_unit = CASES[name][3]
    one = run(name)
    # The plan is ours: each leg is within half a second of the example's.
    assert float(one.reached[0]) == pytest.approx(at_unit, abs=0.5)
    assert float(one.broken[0]) == pytest.approx(at_unit + 10.0, abs=0.5)


@pytest.mark.parametrize("name", CASES)
def test_margins_have_the_examples_signs_and_are_near_it(name: str) -> None:
    sounder, message = CASES[name][4:]
    # Where the first notice is a movement detector's, its place depends on the plan: within 1.5 s.
    assert ahead(run(name)) == pytest.approx((sounder, message), abs=1.5)
    if name != "B":  # a coin toss in the example: no sign to hold it to
        assert np.sign(ahead(run(name))).tolist() == np.sign((sounder, message)).tolist()


def test_orderings_of_the_example() -> None:
    message = {name: ahead(run(name))[1] for name in CASES}
    assert message["C+"] < message["C"] < message["A+"] < message["B"] < message["D"] < message["A"]


def test_no_more_devices_only_a_place_and_a_behaviour_turn_c_into_d() -> None:
    assert ahead(run("C"))[1] < 0 < ahead(run("D"))[1]


def test_nothing_notices_a_pane_that_only_a_contact_is_on() -> None:
    site = worked_terrace(contacts={"kitchen-window": "instant"})
    one = run_on(site, "kitchen-window", "through the glass")
    assert one.first_watcher is None
    assert np.isinf(one.message).all()


@pytest.mark.parametrize("name", CASES)
def test_the_first_notice_alone_is_that_of_the_race(name: str) -> None:
    opening, manner, kit, *_ = CASES[name]
    site = worked_terrace(**kit)
    way = next(w for w in ways_in(site, CATALOGUE)[0] if (w.opening.id, w.manner) == (opening, manner))
    heard = tuple(device for device, _ in alarm_of(site, CATALOGUE).heard)
    goal = spot_of(site, control_units(site, CATALOGUE)[0])
    alone = first_notice(site.bare, CATALOGUE, heard, way=way, goal=goal)
    assert alone.tolist() == run(name).first_notice.tolist()
    assert np.isinf(first_notice(site.bare, CATALOGUE, (), way=way, goal=goal)).all()


def test_the_abort_delay_is_said_to_count_only_where_it_does() -> None:
    assert run("A+").message_waits
    assert not run("A").message_waits


@pytest.mark.parametrize("name", CASES)
def test_a_quarter_turn_of_the_house_changes_nothing(name: str) -> None:
    opening, manner, kit, *_ = CASES[name]
    turned = run_on(quarter_turned(worked_terrace(**kit)), opening, manner)
    assert ahead(turned) == pytest.approx(ahead(run(name)), abs=1e-9)


def test_the_order_of_lists_changes_nothing() -> None:
    site = worked_terrace(**CASES["D"][2])
    other = site.model_copy(
        update={
            name: tuple(reversed(getattr(site, name)))
            for name in ("spaces", "walls", "openings", "devices", "zones", "storeys")
        }
    )
    one, two = run_on(site, "front-door", "opened"), run_on(other, "front-door", "opened")
    assert one.message.tolist() == two.message.tolist()
    assert one.reached.tolist() == two.reached.tolist()


def test_a_goal_that_cannot_be_walked_to_is_said_so() -> None:
    site = worked_terrace(contacts={})
    way = ways_in(site, CATALOGUE)[0][0]
    no_stairs = site.model_copy(update={"stairs": ()})
    with pytest.raises(NotComputable, match="no way on foot from front door"):
        race(no_stairs, CATALOGUE, way=way, goal=Spot("upper", 6.9, 1.2))


@pytest.mark.parametrize("name", CASES)
def test_the_likely_clock_is_the_routes_own(name: str) -> None:
    one = run(name)
    climb = CATALOGUE.figure("climb-in").value if one.way.climbs else 0.0
    assert float(one.reached[0]) == pytest.approx(float(one.route.clock[-1]) + climb, abs=1e-9)


def test_nobody_is_noticed_through_a_shut_door_before_it_is_opened() -> None:
    # From the kitchen the hall detector looks at the kitchen door: its contact signals first, then the detector.
    contacts = {"kitchen-door": "entry-exit"}
    hall = {"hall": (HALL["hall"][0], HALL["hall"][1], "entry-route")}
    one = run_on(worked_terrace(contacts=contacts, movement=hall), "kitchen-window", "opened")
    assert one.first_watcher == "kitchen-door-contact"
    assert one.sounder is not None
    # So the entry time runs, and the entry route says nothing: 30 s after the door.
    door = next(leg for leg in one.route.legs if leg.kind == "door")
    opened = float(one.route.clock[door.first]) + 5.0
    assert float(one.first_notice[0]) == pytest.approx(opened, abs=1e-6)
    assert float(one.sounder[0]) == pytest.approx(opened + 31.0, abs=1e-6)
    instant = {"hall": (HALL["hall"][0], HALL["hall"][1], "instant")}
    two = run_on(worked_terrace(contacts={}, movement=instant), "kitchen-window", "opened")
    assert float(two.first_notice[0]) >= float(two.route.clock[door.last]) + 5.0 - 1e-9


def test_a_race_is_one_object_in_each_manner() -> None:
    site = worked_terrace(movement=HALL, contacts={})
    pane, leaf = (run_on(site, "kitchen-window", manner) for manner in ("through the glass", "opened"))
    assert run_on(worked_terrace(movement=HALL, contacts={}), "kitchen-window", "opened") is leaf
    assert pane is not leaf
    assert pane != leaf
    assert pane.message is leaf.message
