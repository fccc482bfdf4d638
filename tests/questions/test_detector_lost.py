"""One detector lost: held against asking the first question again without it."""

from __future__ import annotations

import pytest

from wardwright.model.site import Site
from wardwright.questions.one_thing_lost import answers
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.alarm import DETECTORS

CATALOGUE = load_catalogue()
SITE = read_sample("terrace")


def without(site: Site, name: str) -> Site:
    zones = tuple(
        zone.model_copy(update={"devices": tuple(one for one in zone.devices if one != name)})
        for zone in site.zones
    )
    return site.model_copy(
        update={"devices": tuple(one for one in site.devices if one.id != name), "zones": zones}
    )


def noticed(site: Site) -> set[str]:
    """Openings whose worst manner something notices."""
    return {one.subject_id for one in ask(site, CATALOGUE, [1]) if one.estimate is not None}


@pytest.mark.parametrize(
    "name", [one.id for one in SITE.devices if CATALOGUE.sheet(one.sheet).kind in DETECTORS]
)
def test_what_is_lost_is_what_the_first_question_says_without_it(name: str) -> None:
    answer = next(one for one in answers(SITE, CATALOGUE) if one.subject_id == name)
    lost = noticed(SITE) - noticed(without(SITE, name))
    assert (answer.verdict == "bad") == bool(lost)
    told = next((note for note in answer.notes if note.startswith("nothing notices any more: ")), "")
    for opening in lost:
        assert SITE.opening(opening).name in told


def test_a_second_eye_is_named_where_something_is_lost() -> None:
    (answer,) = [
        one
        for one in answers(SITE, CATALOGUE)
        if one.verdict == "bad" and one.mends and "movement" in one.subject_id
    ]
    assert answer.mends[0].action == "add-device"
    assert {sketch.role for sketch in answer.sketches} == {"fault", "unnoticed"}
