import math

import pytest

from wardwright.model.edits import edited
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.heard_at_pillows import AT_NIGHT, answers_at_pillows
from wardwright.rules.mending import operations_of
from wardwright.rules.pillows import pillows
from wardwright.rules.sound_heard import INTRUDER_KINDS, sounders
from wardwright.rules.sounder_mends import FROM_THE_PILLOW_M, MOST
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
SITE = read_sample("terrace")


def of(site: Site, subject: str) -> Answer:
    every = sounders(site, CATALOGUE, INTRUDER_KINDS)
    found = answers_at_pillows(site, CATALOGUE, every, with_mends=True)
    return next(one for one in found if one.subject == subject)


def test_each_mend_carried_out_brings_the_level_that_it_says() -> None:
    answer = of(SITE, "pillow in Bedroom 2")
    assert {mend.action for mend in answer.mends} == {"add-device", "leave-open"}
    assert len(answer.mends) <= MOST
    for mend in answer.mends:
        operations = operations_of(SITE, CATALOGUE, mend)
        assert operations is not None
        after = of(edited(SITE, operations), "pillow in Bedroom 2")
        found = after.estimate
        if mend.action == "leave-open":
            found = next(part.estimate for part in after.parts if part.name == AT_NIGHT)
        assert mend.gain is not None
        assert found is not None
        assert found.value == pytest.approx(mend.gain.value, abs=0.01)
        assert (found.low, found.high) == (pytest.approx(mend.gain.low), pytest.approx(mend.gain.high))


def test_a_sounder_in_the_room_keeps_off_the_pillow() -> None:
    head = next(one for one in pillows(SITE) if one.space.id == "bedroom-2")
    mend = next(m for m in of(SITE, head.name).mends if m.subject == "bedroom-2")
    operations = operations_of(SITE, CATALOGUE, mend)
    assert operations is not None
    site = edited(SITE, operations)
    place = standing(site, site.devices[-1])
    assert math.dist((place.x_m, place.y_m), head.at_m) >= FROM_THE_PILLOW_M


def test_a_catalogue_without_sounders_offers_doors_only() -> None:
    rows = tuple(row for row in CATALOGUE.sheets if row.kind != "sounder" or row.is_outside)
    bare = CATALOGUE.model_copy(update={"sheets": rows})
    every = sounders(SITE, bare, INTRUDER_KINDS)
    found = answers_at_pillows(SITE, bare, every, with_mends=True)
    assert {mend.action for one in found for mend in one.mends} == {"leave-open"}
