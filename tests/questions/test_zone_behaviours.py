"""Question 4 on a house worked by hand."""

from __future__ import annotations

import pytest

from common.arrival_house import arrival_house
from common.houses import standing_free, zone
from common.turning import quarter_turned
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.zone_behaviours import answers
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


def found(site: Site) -> dict[str, Answer]:
    return {one.subject_id: one for one in answers(site, CATALOGUE)}


def test_a_design_as_the_plan_asks_for_is_good() -> None:
    site = arrival_house(kitchen_door="shut", without=("study-movement",))
    each = found(site)
    assert each.keys() == {"site", "front-contact", "hall-movement", "kitchen-movement"}
    assert {one.verdict for one in each.values()} == {"good"}
    whole = each["site"].estimate
    assert whole is not None
    assert (whole.value, whole.low, whole.high, whole.unit) == (0.0, 0.0, 0.0, "devices")


def test_a_sliver_through_an_open_door_is_found_with_its_area_and_its_mends() -> None:
    kitchen = found(arrival_house(kitchen_door="open"))["kitchen-movement"]
    assert kitchen.verdict == "bad"
    assert kitchen.estimate is not None
    assert kitchen.estimate.unit == "m2"
    assert 0.1 < kitchen.estimate.value < 0.5
    text = " ".join(kitchen.notes)
    assert "to be entry route: it possibly sees" in text
    assert "through kitchen door (open)" in text
    assert "whoever comes home may set it off" in text
    assert [mend.action for mend in kitchen.mends][-1] == "change-behaviour"
    assert dict(kitchen.mends[-1].values) == {"behaviour": "entry-route"}
    assert {sketch.role for sketch in kitchen.sketches} == {"arrival-band", "arrival-seen", "walk"}


def test_a_door_that_nobody_has_spoken_of_makes_it_thin_and_moves_it_most() -> None:
    kitchen = found(arrival_house(kitchen_door=None))["kitchen-movement"]
    assert kitchen.verdict == "thin"
    assert kitchen.estimate is not None
    assert kitchen.estimate.value == kitchen.estimate.low == 0.0 < kitchen.estimate.high
    (driver,) = kitchen.estimate.drivers
    assert (driver.name, driver.basis) == ("how kitchen door stands", "default")


def test_what_would_break_a_good_one_is_said() -> None:
    kitchen = found(arrival_house(kitchen_door="shut"))["kitchen-movement"]
    assert kitchen.verdict == "good"
    assert any(note.startswith("what breaks it: with kitchen door open") for note in kitchen.notes)


def test_an_entry_route_detector_that_the_way_does_not_pass_is_a_gift() -> None:
    kitchen = found(arrival_house(kitchen_door="shut", roles={"kitchen-movement": "entry-route"}))
    answer = kitchen["kitchen-movement"]
    assert answer.verdict == "bad"
    assert any("an intruder whom it notices is let pass" in note for note in answer.notes)
    assert dict(answer.mends[0].values) == {"behaviour": "instant"}


@pytest.mark.parametrize(
    ("device", "role", "said"),
    [
        ("front-contact", "instant", "coming home is an alarm at once"),
        ("front-contact", "entry-route", "it does not start the entry time"),
        ("hall-movement", "entry-exit", "has the whole entry time"),
        ("hall-movement", "log-only", "it gives no alarm"),
        ("hall-movement", "tamper", "told as another kind"),
    ],
)
def test_each_wrong_behaviour_is_said_with_what_it_does(device: str, role: str, said: str) -> None:
    answer = found(arrival_house(kitchen_door="shut", roles={device: role}))[device]
    assert answer.verdict == "bad"
    assert any(said in note for note in answer.notes)


def test_kinds_that_no_plan_changes_are_held_to_their_kind() -> None:
    water = standing_free(
        "water", next(s.id for s in CATALOGUE.sheets if s.kind == "water-detector"), 1.0, 1.0
    )
    site = arrival_house(also=(water,))
    wrong = site.model_copy(update={"zones": (*site.zones, zone(9, "water", "water", behaviour="instant"))})
    right = site.model_copy(update={"zones": (*site.zones, zone(9, "water", "water", behaviour="water"))})
    assert found(wrong)["water"].verdict == "bad"
    assert found(right)["water"].verdict == "good"
    estimate = found(right)["water"].estimate
    assert estimate is not None
    assert (estimate.value, estimate.unit) == (0.0, "settings")


def test_a_device_that_no_zone_hears_is_bad_and_a_house_without_zones_not_known() -> None:
    site = arrival_house()
    fewer = site.model_copy(update={"zones": site.zones[:1]})
    answer = found(fewer)["hall-movement"]
    assert answer.verdict == "bad"
    assert "no zone hears it" in answer.notes
    none = found(site.model_copy(update={"zones": ()}))
    assert {one.verdict for one in none.values()} == {"unknown"}
    assert "no zone is programmed yet" in none["hall-movement"].notes
    assert any(note.startswith("to be entry route") for note in none["hall-movement"].notes)


def test_a_zone_on_soak_is_said() -> None:
    site = arrival_house()
    zones = tuple(one.model_copy(update={"is_on_soak": True}) for one in site.zones)
    assert any(
        "soak test" in note for note in found(site.model_copy(update={"zones": zones}))["hall-movement"].notes
    )


def test_a_bare_house_is_not_computable() -> None:
    for site, reason in (
        (arrival_house(devices=(), zones=()), "no keypad"),
        (arrival_house(spaces=()), "none of the spaces is ours"),
        (
            arrival_house(without=("front-contact", "hall-movement", "kitchen-movement", "study-movement")),
            "no device",
        ),
    ):
        (only,) = answers(site, CATALOGUE)
        assert only.verdict == "unknown"
        assert (only.reason or "").startswith(f"not computable: {reason}")


def test_a_quarter_turn_and_another_order_change_nothing() -> None:
    site = arrival_house(kitchen_door=None)
    names = ("walls", "openings", "devices", "people", "spaces", "zones")
    other = site.model_copy(update={name: tuple(reversed(getattr(site, name))) for name in names})
    one = found(site)
    assert found(other) == one
    for name, answer in found(quarter_turned(site)).items():
        before = one[name].estimate
        assert answer.verdict == one[name].verdict
        assert answer.notes == one[name].notes
        assert answer.estimate is not None
        assert before is not None
        assert answer.estimate.value == pytest.approx(before.value, abs=1e-9)
