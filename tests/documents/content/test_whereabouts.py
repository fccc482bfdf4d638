from __future__ import annotations

from wardwright.documents.content.whereabouts import storeys_by_thing, things_of
from wardwright.questions.answer import unanswered
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

SITE = read_sample("terrace")


def test_everything_that_stands_on_a_storey_is_on_it() -> None:
    storeys = storeys_by_thing(SITE)
    assert storeys["front-door"] == storeys["front-door-contact"] == storeys["hall"] == "ground"
    assert storeys["bathroom-window"] == "first"
    assert "site" not in storeys
    things = (*SITE.devices, *SITE.openings, *SITE.spaces, *SITE.targets, *SITE.fixtures)
    assert {one.id for one in things} <= storeys.keys()


def test_an_answer_has_to_do_with_its_leaf_with_what_is_on_it_and_with_what_its_mends_change() -> None:
    contact = unanswered(4, "leaf", subject="Contact", subject_id="front-door-contact", reason="no")
    assert things_of(SITE, contact) == ("front-door-contact", "front-door")
    race = next(one for one in ask(SITE, load_catalogue(), (1,)) if one.subject_id == "front-door")
    about = things_of(SITE, race)
    assert about[:2] == ("front-door", "front-door-contact")
    assert {mend.subject for mend in race.mends} <= set(about)
    assert len(about) == len(set(about))
