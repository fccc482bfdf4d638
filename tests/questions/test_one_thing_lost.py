"""Question 12: each thing lost, and what is left."""

from __future__ import annotations

import pytest

from common.houses import on_wall, one_room
from common.turning import quarter_turned
from wardwright.model.device import Device, FreeMount
from wardwright.model.fixture import Outlet
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.one_thing_lost import answers
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
UNIT = on_wall("unit", "control-unit-radio", "south", 1.0, height_m=1.5)
ROUTER = Outlet(id="plug", name="Router", kind="router", storey="ground", at_m=(4.0, 3.0))
SOUNDER = on_wall("bell", "sounder-inside", "north", 2.0)
OUTSIDE = on_wall("outside-bell", "sounder-outside", "south", 2.0, side="right")


def sender(sheet: str) -> Device:
    return on_wall("sender", sheet, "south", 2.0, height_m=1.5)


def of(name: str, site: Site) -> Answer:
    return next(answer for answer in answers(site, CATALOGUE) if answer.subject_id == name)


def house(*devices: Device, **parts: object) -> Site:
    return one_room(devices=devices, **parts)


def test_a_bare_house_cannot_lose_anything() -> None:
    (only,) = answers(one_room(), CATALOGUE)
    assert only.reason == "not computable: no control unit"


@pytest.mark.parametrize(
    ("sheet", "left", "verdict"), [("message-broadband", 0.0, "bad"), ("message-both", 1.0, "good")]
)
def test_a_router_lost(sheet: str, left: float, verdict: str) -> None:
    answer = of("plug", house(UNIT, sender(sheet), outlets=(ROUTER,)))
    assert answer.estimate is not None
    assert (answer.estimate.value, answer.verdict) == (left, verdict)
    assert bool(answer.mends) == (left == 0.0)


def test_a_router_where_no_message_path_is_known() -> None:
    assert of("plug", house(UNIT, outlets=(ROUTER,))).reason == "not computable: no message path is known"


def test_a_second_path_stands_beside_the_one_that_is_lost() -> None:
    answer = of("sender", house(UNIT, sender("message-both")))
    assert answer.verdict == "bad"
    assert [mend.action for mend in answer.mends] == ["add-device"]


def test_a_control_unit_lost_leaves_what_sounds_by_itself() -> None:
    without, with_one = of("unit", house(UNIT, SOUNDER)), of("unit", house(UNIT, SOUNDER, OUTSIDE))
    assert (without.verdict, with_one.verdict) == ("bad", "thin")
    assert "outside bell sounds by itself when it loses the control unit" in with_one.notes


def test_the_last_sounder_lost() -> None:
    answer = of("bell", house(UNIT, SOUNDER))
    # The unit's own is left.
    assert (answer.verdict, answer.estimate and answer.estimate.value) == ("thin", 1.0)
    assert of("bell", house(UNIT, SOUNDER, OUTSIDE)).verdict == "good"


def test_a_repeater_that_nothing_hangs_on() -> None:
    pir = on_wall("pir", "movement-12m", "north", 3.0)
    answer = of("rep", house(UNIT, pir, on_wall("rep", "repeater-radio", "north", 1.0)))
    assert (answer.verdict, answer.estimate and answer.estimate.value) == ("good", 1.0)


def test_a_repeater_that_a_detector_far_off_hangs_on() -> None:
    far, between = (
        device.model_copy(update={"mount": FreeMount(storey="ground", at_m=(away, 2.0))})
        for device, away in (
            (on_wall("pir", "movement-12m", "north", 3.0), 2560.0),
            (on_wall("rep", "repeater-radio", "north", 1.0), 1280.0),
        )
    )
    answer = of("rep", house(UNIT, far, between))
    assert (answer.verdict, answer.estimate and answer.estimate.value) == ("bad", 0.0)


def test_a_quarter_turn_changes_nothing() -> None:
    site = read_sample("terrace")
    one, two = answers(site, CATALOGUE), answers(quarter_turned(site), CATALOGUE)
    assert [(a.subject_id, a.estimate, a.verdict) for a in one] == [
        (a.subject_id, a.estimate, a.verdict) for a in two
    ]
