"""Question 1 on the worked terrace."""

from __future__ import annotations

import numpy as np
import pytest

from common.worked_terrace import UPSTAIRS, ear_in_kitchen, shock_on, with_watch, worked_terrace
from wardwright.model.device import Device, WallMount
from wardwright.model.opening import Opening
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.race_from_opening import MEASURE, answers
from wardwright.questions.time_in_hand import time_in_hand
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.draws import estimate_of
from wardwright.trials.race import race
from wardwright.trials.ways_in import ways_in
from wardwright.trials.ways_on_foot import spot_of

CATALOGUE = load_catalogue()
KITCHEN = {
    "kitchen": (WallMount(wall="ground-cross", side="left", offset_m=5.7, height_m=2.2), 135.0, "instant")
}


def ask(site: Site) -> dict[str, Answer]:
    return {one.subject_id: one for one in answers(site, CATALOGUE)}


def parts(answer: Answer) -> dict[str, float | None]:
    return {p.name: None if p.estimate is None else p.estimate.value for p in answer.parts}


def test_a_bare_house_says_that_nothing_would_notice() -> None:
    site = worked_terrace(contacts={}).model_copy(update={"devices": ()})
    found = ask(site)
    assert {one.reason for one in found.values()} == {"nothing would notice: there is no alarm"}
    assert {one.verdict for one in found.values()} == {"bad"}
    assert all(one.estimate is None for one in found.values())


def test_without_a_control_unit_it_is_not_computable() -> None:
    site = worked_terrace(contacts={"front-door": "instant"})
    site = site.model_copy(update={"devices": tuple(d for d in site.devices if d.id != "unit")})
    assert ask(site)["front-door"].reason == "not computable: no control unit"
    assert ask(site)["front-door"].verdict == "unknown"


def test_the_worse_manner_decides() -> None:
    window = ask(worked_terrace(contacts={"kitchen-window": "instant"}))["kitchen-window"]
    assert window.reason == "nothing would notice somebody who comes through the glass"
    assert window.verdict == "bad"
    assert "the worse manner: come through the glass" in window.notes
    assert parts(window)["control unit reached"] == pytest.approx(9.0, abs=0.5)
    assert parts(window)["message outside"] is None


@pytest.mark.parametrize("device", [shock_on("kitchen-window"), ear_in_kitchen()])
def test_what_notices_the_glass_is_named_where_it_does(device: Device) -> None:
    site = with_watch(worked_terrace(contacts={"kitchen-window": "instant"}), device)
    window = ask(site)["kitchen-window"]
    assert window.estimate is not None
    assert parts(window)["first notice"] == 0.0
    labels = [one.label for one in window.sketches if one.role == "notice"]
    assert len(labels) == 1
    assert labels[0] in (f"noticed by {device.name}", "noticed by kitchen-window contact")


def test_a_shock_detector_on_an_open_leaf_is_not_called_a_contact() -> None:
    site = with_watch(worked_terrace(contacts={"front-door": "entry-exit"}), shock_on("kitchen-window"))
    openings = tuple(o.model_copy(update={"habit": "open"}) for o in site.openings)
    found = ask(site.model_copy(update={"openings": openings}))
    text = "its contact is on a leaf that usually stands open, and tells nothing"
    assert text in found["front-door"].notes
    assert text not in found["kitchen-window"].notes


def test_the_value_is_the_lesser_time_in_hand_and_its_drivers_move_it() -> None:
    door = ask(worked_terrace(contacts={"front-door": "entry-exit"}))["front-door"]
    assert door.estimate is not None
    # Unit reached after 1.6 s, sounder after 1 + 30 s; broken 10 s later and the message 10 s later: the same hand.
    # The message's is less at the low end, so it is the one that is named.
    assert door.measure == MEASURE["message"]
    assert door.estimate.value == pytest.approx(1.61 - 31.0, abs=0.05)
    assert door.estimate.low < door.estimate.value < door.estimate.high < 0
    assert door.verdict == "bad"
    assert door.chance == 0.0
    assert {d.name for d in door.estimate.drivers[:2]} == {"message leaving", "breaking the control unit"}
    assert door.estimate.basis == "default"


def test_locks_and_lights_are_named_first() -> None:
    door = ask(worked_terrace(contacts={"front-door": "entry-exit"}))["front-door"]
    assert [mend.action for mend in door.mends][:2] == ["change-lock", "add-light"]


def test_a_better_design_is_good_or_thin_and_says_whether_a_way_round_is_left() -> None:
    site = worked_terrace(
        contacts={"front-door": "entry-exit", "kitchen-window": "instant"}, movement=KITCHEN, unit=UPSTAIRS
    )
    window = ask(site)["kitchen-window"]
    assert window.estimate is not None
    assert window.estimate.value > 0
    assert window.verdict in ("good", "thin")
    assert any("in the design case" in note for note in window.notes)


def test_walk_notice_goal_and_timely_floor_are_drawn() -> None:
    site = worked_terrace(contacts={"front-door": "entry-exit"}, movement=KITCHEN, unit=UPSTAIRS)
    window = ask(site)["kitchen-window"]
    roles = {sketch.role for sketch in window.sketches}
    assert {"walk", "notice", "goal", "timely"} <= roles
    walks = [sketch for sketch in window.sketches if sketch.role == "walk"]
    assert [walk.storey for walk in walks] == ["ground", "upper"]
    clock = [t for walk in walks for t in walk.times_s]
    assert clock == sorted(clock)
    assert clock[-1] == pytest.approx(parts(window)["control unit reached"], abs=1e-6)


def test_an_opening_out_of_reach_is_named_and_not_counted() -> None:
    high = Opening(
        id="high", name="high window", kind="window", wall="upper-front", offset_m=5.0, width_m=1.0, sill_m=0.9,
        head_m=2.1,
    )  # fmt: skip
    site = worked_terrace(contacts={"front-door": "entry-exit"})
    found = ask(site.model_copy(update={"openings": (*site.openings, high)}))["high"]
    assert found.verdict == "unknown"
    assert (found.reason or "").startswith("not counted as a way in: 3.8 m above the ground")


def test_good_means_that_both_needs_are_met() -> None:
    # Through the window the sounder is 3 s ahead over the whole range; the message's range goes below zero.
    site = worked_terrace(contacts={}, movement=KITCHEN, unit=UPSTAIRS)
    window = ask(site)["kitchen-window"]
    chosen = next(w for w in ways_in(site, CATALOGUE)[0] if w.manner == "through the glass")
    one = race(site, CATALOGUE, way=chosen, goal=spot_of(site, site.device("unit")))
    hands = time_in_hand(one, CATALOGUE)
    assert window.estimate is not None
    assert window.estimate.low == pytest.approx(
        estimate_of(np.minimum(hands["message"], hands["sounder"]), one.cases, unit="s").low
    )
    assert window.estimate.low <= min(estimate_of(h, one.cases, unit="s").low for h in hands.values()) + 1e-9


@pytest.mark.parametrize("habit", ["ajar", "open"])
def test_a_contact_on_a_leaf_that_stands_open_tells_nothing(habit: str) -> None:
    site = worked_terrace(contacts={"front-door": "instant"})
    assert parts(ask(site)["front-door"])["first notice"] == 0.0
    openings = tuple(
        o.model_copy(update={"habit": habit}) if o.id == "front-door" else o for o in site.openings
    )
    door = ask(site.model_copy(update={"openings": openings}))["front-door"]
    assert door.reason == "nothing would notice somebody who comes in here"
    assert "its contact is on a leaf that usually stands open, and tells nothing" in door.notes


def test_no_premises_no_race() -> None:
    site = worked_terrace(contacts={"front-door": "instant"})
    theirs = tuple(s.model_copy(update={"belongs": "neighbour"}) for s in site.spaces)
    (only,) = answers(site.model_copy(update={"spaces": theirs}), CATALOGUE)
    assert only.reason == "not computable: none of the spaces is ours"
    assert only.verdict == "unknown"


def test_without_a_sounder_it_is_said_that_only_the_message_is_judged() -> None:
    site = worked_terrace(contacts={"front-door": "instant"})
    sheets = tuple(
        s.model_copy(update={"control": s.control.model_copy(update={"has_sounder": False})})
        if s.control
        else s
        for s in CATALOGUE.sheets
    )
    silent = site.model_copy(update={"devices": tuple(d for d in site.devices if d.id != "sounder")})
    found = {a.subject_id: a for a in answers(silent, CATALOGUE.model_copy(update={"sheets": sheets}))}
    assert "there is no sounder: only the message is judged" in found["front-door"].notes


def test_a_house_with_no_way_in_drawn_says_so() -> None:
    site = worked_terrace(contacts={}).model_copy(update={"openings": ()})
    (only,) = answers(site, CATALOGUE)
    assert only.reason == "not computable: no way in is drawn"
