from common.houses import on_ceiling
from wardwright.model.device import CeilingMount, Device
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.heard_fire_alarms import answers_of_fire_alarms
from wardwright.rules.sound_heard import FIRE_KINDS, sounders
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
TERRACE = read_sample("terrace")


def alarm(name: str, storey: str, x: float, y: float, sheet: str = "smoke-alarm-radio") -> Device:
    return Device(id=name, name=name, sheet=sheet, mount=CeilingMount(storey=storey, at_m=(x, y)))


def asked(*devices: Device, site: Site = TERRACE) -> dict[str, Answer]:
    site = site.model_copy(update={"devices": devices})
    every = sounders(site, CATALOGUE, FIRE_KINDS)
    return {one.subject_id: one for one in answers_of_fire_alarms(site, CATALOGUE, every, with_mends=True)}


HALL = alarm("hall-smoke", "ground", 0.9, 3.5)
LANDING = alarm("landing-smoke", "first", 0.9, 5.0)


def value(answer: Answer) -> float:
    assert answer.estimate is not None
    return answer.estimate.value


def test_linked_alarms_sound_together() -> None:
    alone, both = asked(HALL)["hall-smoke"], asked(HALL, LANDING)
    assert value(both["hall-smoke"]) == value(both["landing-smoke"]) > value(alone)
    assert "2 linked alarms sound together" in both["hall-smoke"].notes
    assert "it could sound with others, and there is none that is linked" in alone.notes


def test_the_worst_pillow_decides_and_every_pillow_is_told() -> None:
    answer = asked(HALL, LANDING)["hall-smoke"]
    levels = [part.estimate.value for part in answer.parts if part.estimate is not None]
    assert len(levels) == 3
    assert value(answer) == min(levels)
    assert any("no fire design" in note for note in answer.notes)


def test_an_alarm_that_is_not_linked_is_offered_a_link() -> None:
    alone = alarm("hall-smoke", "ground", 0.9, 3.5, sheet="smoke-alarm-alone")
    answer = asked(alone, LANDING)["hall-smoke"]
    mend = next(one for one in answer.mends if one.action == "replace-device")
    assert dict(mend.values)["sheet"] == "smoke-alarm-radio"
    linked = asked(HALL, LANDING)["hall-smoke"]
    assert mend.gain == linked.estimate
    assert value(linked) > value(answer)


def test_without_a_pillow_nothing_is_asked() -> None:
    bare = TERRACE.model_copy(
        update={
            "fixtures": (),
            "people": (),
            "spaces": tuple(s.model_copy(update={"use": "other"}) for s in TERRACE.spaces),
        }
    )
    assert asked(on_ceiling("s", "smoke-alarm-radio", 0.9, 3.5), site=bare) == {}
