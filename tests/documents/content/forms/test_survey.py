from __future__ import annotations

from collections.abc import Callable

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.forms.survey import survey
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


def test_the_survey_of_a_house_reads_as_it_did(kept: Callable[[str, str], None]) -> None:
    site = fitted()
    kept("survey.txt", as_text(survey(site, CATALOGUE, ask(site, CATALOGUE), drawn_up=DAY)))


def test_locks_and_lights_come_before_any_other_thing_of_the_house() -> None:
    sections = survey(fitted(), CATALOGUE, (), drawn_up=DAY).sections
    assert [one.heading for one in sections[:2]] == ["Enquiry", "Locks and lights first"]


def test_what_nobody_said_is_told_as_not_known() -> None:
    site = fitted()
    bare = site.model_copy(
        update={
            "openings": tuple(one.model_copy(update={"lock": "unknown"}) for one in site.openings),
            "people": (), "pets": (), "targets": (), "outlets": (), "fixtures": (),
        }
    )  # fmt: skip
    paper = survey(bare, CATALOGUE, (), drawn_up=DAY)
    openings = paper.sections[1].table
    assert openings is not None
    assert len(openings.rows) == 8
    assert {row[2] for row in openings.rows} == {"not known"}
    assert {row[5] for row in openings.rows} == {"not known"}
    assert as_text(paper).count("is known") == 0


def test_what_is_worth_finding_out_stands_first() -> None:
    site = fitted()
    known = survey(site, CATALOGUE, (), drawn_up=DAY).sections[0].points
    bare = survey(site.model_copy(update={"targets": ()}), CATALOGUE, (), drawn_up=DAY).sections[0].points
    (new,) = set(bare) - set(known)
    assert new == "To find out: in which rooms an intruder would find something worth taking."
