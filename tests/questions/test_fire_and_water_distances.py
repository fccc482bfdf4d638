import pytest

from common.houses import CATALOGUE, on_ceiling, on_wall, one_room, two_rooms_and_hall
from common.turning import quarter_turned
from wardwright.questions.answer import Answer
from wardwright.questions.fire_and_water_distances import answers
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

WHOLE = load_catalogue()


def asked(*devices: object) -> dict[str, Answer]:
    return {one.subject_id: one for one in answers(two_rooms_and_hall(devices=devices), CATALOGUE)}


def test_without_such_devices_nothing_is_checked_and_that_is_said() -> None:
    (one,) = answers(one_room(devices=(on_wall("unit", "unit", "south", 1.0),)), CATALOGUE)
    assert one.verdict == "unknown"
    assert one.reason is not None
    assert "the dwelling's own may be there all the same" in one.reason


def test_a_device_within_all_limits_is_met_with_its_margin() -> None:
    found = asked(on_ceiling("smoke", "smoke", 5.1, 3.0))
    one = found["smoke"]
    assert one.verdict == "good"
    assert one.estimate is not None
    assert one.estimate.value == pytest.approx(1.0 - 0.3)
    assert one.notes[0].startswith("decided by the distance to the nearest wall: at least 0.3 m (bs-5839-6")
    assert any("not a fire design" in note for note in one.notes)
    assert one.sketches[0].role == "distance"
    assert one.sketches[0].label == "1.00 m"
    assert {"kitchen", "study"} <= set(found)


def test_just_within_is_thin_and_beyond_is_not_met_and_carries_the_rules_mend() -> None:
    thin, bad = (asked(on_ceiling("smoke", "smoke", 4.1 + x, 3.0))["smoke"] for x in (0.33, 0.1))
    assert (thin.verdict, bad.verdict) == ("thin", "bad")
    assert [mend.action for mend in bad.mends] == ["move-device"]
    assert thin.mends == ()


def test_what_is_missing_is_a_subject_of_its_own() -> None:
    terrace = read_sample("terrace")
    alarm = on_ceiling("smoke", "smoke-alarm-radio", 0.9, 3.0)
    site = terrace.model_copy(update={"devices": (alarm,)})
    found = {one.subject_id: one for one in answers(site, WHOLE)}
    upstairs = found["first"]
    assert (upstairs.verdict, upstairs.estimate) == ("bad", None)
    assert upstairs.reason is not None
    assert "no smoke alarm is drawn there" in upstairs.reason
    assert upstairs.mends


def test_every_answer_defers_to_the_local_code() -> None:
    for name in ("bungalow", "lakeside"):
        for one in answers(read_sample(name), WHOLE):
            assert any("the local code and licensed practice decide" in note for note in one.notes)


def test_a_quarter_turn_changes_nothing() -> None:
    site = read_sample("bungalow")
    one, two = answers(site, WHOLE), answers(quarter_turned(site), WHOLE)
    for a, b in zip(one, two, strict=True):
        assert (a.subject_id, a.verdict) == (b.subject_id, b.verdict)
        if a.estimate is not None and b.estimate is not None:
            assert a.estimate.value == pytest.approx(b.estimate.value, abs=1e-6)


def test_another_device_makes_no_difference() -> None:
    site = read_sample("bungalow")
    fewer = tuple(d for d in site.devices if WHOLE.sheet(d.sheet).kind != "movement-detector")
    assert len(fewer) < len(site.devices)
    assert answers(site.model_copy(update={"devices": fewer}), WHOLE) == answers(site, WHOLE)
