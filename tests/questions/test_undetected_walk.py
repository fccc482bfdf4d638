"""Question 5 on the worked terrace."""

from __future__ import annotations

import pytest

from common.worked_terrace import ear_in_kitchen, with_watch, worked_terrace
from wardwright.model.device import WallMount
from wardwright.model.household import Target
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.undetected_walk import answers
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()
KITCHEN = {
    "kitchen": (WallMount(wall="ground-cross", side="left", offset_m=5.7, height_m=2.2), 135.0, "instant")
}
JEWELS = Target(id="jewels", name="jewels", space="bedroom")


def ask(site: Site) -> dict[str, Answer]:
    return {one.subject_id: one for one in answers(site, CATALOGUE)}


def with_target(site: Site) -> Site:
    return site.model_copy(update={"targets": (JEWELS,)})


def test_a_bare_house_is_walked_to_its_end_and_that_is_bad() -> None:
    site = with_target(worked_terrace(contacts={})).model_copy(update={"devices": ()})
    door = ask(site)["front-door"]
    assert door.verdict == "bad"
    assert "nothing would notice" in door.notes
    assert "noticed as it is opened" not in door.notes
    assert door.estimate is not None
    # To the far corner of the bedroom: 1.6 m, stairs 4.5 m, 2.3 m, then some 9 m across the room.
    assert door.estimate.value == pytest.approx(17.5, abs=1.5)


def test_a_detector_where_one_comes_in_leaves_little_and_no_target() -> None:
    site = with_target(worked_terrace(contacts={"front-door": "entry-exit"}, movement=KITCHEN))
    window = ask(site)["kitchen-window"]
    assert window.estimate is not None
    assert window.estimate.value < 3.5
    assert "no target is reached undetected" in window.notes
    assert window.verdict == "good"


def test_a_target_that_is_reached_undetected_is_named_with_its_distance() -> None:
    site = with_target(worked_terrace(contacts={"kitchen-window": "instant"}))
    door = ask(site)["front-door"]
    assert door.verdict == "bad"
    assert "Control unit is reached undetected" in door.notes
    parts = {p.name: p.estimate for p in door.parts}
    unit = parts["undetected to Control unit"]
    assert unit is not None
    # 4.03 m from the front door to the unit under the stairs, less what an arm's length leaves.
    assert unit.value == pytest.approx(3.8, abs=0.35)


def test_without_targets_the_verdict_is_no_better_than_unknown() -> None:
    site = worked_terrace(
        contacts={"front-door": "entry-exit", "kitchen-window": "instant"}, movement=KITCHEN
    )
    assert ask(site)["kitchen-window"].verdict in ("unknown", "bad", "thin")
    assert "no targets are known" in ask(site)["kitchen-window"].notes


def test_parts_say_seconds_floor_and_second_notice() -> None:
    site = with_target(worked_terrace(contacts={}, movement=KITCHEN))
    window = ask(site)["kitchen-window"]
    parts = {p.name: p.estimate for p in window.parts}
    seconds, area = parts["walked at a hurry"], parts["undetected floor"]
    second = parts["before a second, independent device notices"]
    assert window.estimate is not None
    assert seconds is not None
    assert area is not None
    assert second is not None
    assert seconds.value == pytest.approx(window.estimate.value / 2.5)
    assert seconds.low <= seconds.value <= seconds.high
    assert area.low <= area.value <= area.high
    assert second.value >= window.estimate.value


def test_a_target_that_cannot_be_walked_to_leaves_the_verdict_unknown() -> None:
    site = with_target(worked_terrace(contacts={"front-door": "instant"}, movement=KITCHEN))
    window = ask(site.model_copy(update={"stairs": ()}))["kitchen-window"]
    assert window.verdict == "unknown"
    assert "jewels: no way on foot leads to Bedroom" in window.notes


def test_drivers_come_with_the_largest_swing_first() -> None:
    site = with_target(worked_terrace(contacts={}, movement=KITCHEN))
    for answer in answers(site, CATALOGUE):
        for part in answer.parts:
            swings = [] if part.estimate is None else [d.swing for d in part.estimate.drivers]
            assert swings == sorted(swings, reverse=True)
            assert all(swing > 0 for swing in swings)


def test_a_house_with_no_way_in_drawn_says_so() -> None:
    site = worked_terrace(contacts={}).model_copy(update={"openings": ()})
    (only,) = answers(site, CATALOGUE)
    assert only.verdict == "unknown"
    assert only.reason == "not computable: no way in is drawn, or none can be come through"


def test_it_says_that_the_glass_is_noticed_as_it_breaks() -> None:
    """A window that does not open is come through by its glass alone."""
    site = worked_terrace(contacts={})
    fixed = tuple(
        one.model_copy(update={"hinge": "fixed"}) if one.id == "kitchen-window" else one
        for one in site.openings
    )
    site = site.model_copy(update={"openings": fixed})
    assert "noticed as the glass is broken" not in ask(site)["kitchen-window"].notes
    found = ask(with_watch(site, ear_in_kitchen()))["kitchen-window"]
    assert "noticed as the glass is broken" in found.notes
    assert found.estimate is not None
    assert found.estimate.value == 0.0
