"""Question 1 on the worked terrace."""

from __future__ import annotations

import pytest

from common.worked_terrace import UPSTAIRS, worked_terrace
from wardwright.model.device import WallMount
from wardwright.model.opening import Opening
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.race_from_opening import MEASURE, answers
from wardwright.store.catalogue import load_catalogue

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
    assert window.reason == "nothing would notice on the way"
    assert window.verdict == "bad"
    assert "the worse manner: come through the glass" in window.notes
    assert parts(window)["control unit reached"] == pytest.approx(9.0, abs=0.5)
    assert parts(window)["message outside"] is None


def test_the_value_is_the_lesser_time_in_hand_and_its_drivers_move_it() -> None:
    door = ask(worked_terrace(contacts={"front-door": "entry-exit"}))["front-door"]
    assert door.estimate is not None
    assert door.measure == MEASURE["sounder"]
    # Unit reached after 1.6 s, sounder after 1 + 30 s.
    assert door.estimate.value == pytest.approx(1.61 - 31.0, abs=0.05)
    assert door.estimate.low < door.estimate.value < door.estimate.high < 0
    assert door.verdict == "bad"
    assert door.chance == 0.0
    assert [d.name for d in door.estimate.drivers][:1] == ["radio to the control unit"]
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
