from __future__ import annotations

from wardwright.documents.content.page import Page, page_of
from wardwright.documents.content.wording import NOT_DRAWN, NOT_WATCHED
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.rules.finding import Mend


def test_answers_are_counted_by_verdict_worst_first(page: Page) -> None:
    assert [(row.verdict, row.count) for row in page.counts] == [
        ("bad", 2),
        ("thin", 2),
        ("unknown", 1),
        ("good", 2),
    ]


def test_locks_and_lights_stand_first_each_once(page: Page) -> None:
    assert page.locks_and_lights == (
        "Fit a better lock (rc2) at front door.",
        "Fit a better pane (laminated) at kitchen window.",
        "Add a light that comes on by itself at kitchen window.",
    )


def test_lights_stand_in_one_line(site: Site, catalogue: Catalogue, answers: tuple[Answer, ...]) -> None:
    light = Mend(action="add-light", subject="back-door")
    more = (*answers[:2], answers[5].model_copy(update={"mends": (light, light)}))
    assert page_of(site, catalogue, more, ()).locks_and_lights[-1] == (
        "Add a light that comes on by itself at kitchen window and back door."
    )


def test_must_mend_stands_in_the_summary(page: Page) -> None:
    assert page.must_mend == ("Hall control unit stands 3.5 m along the way from the front door.",)


def test_answers_keep_their_order(page: Page, answers: tuple[Answer, ...]) -> None:
    assert [block.subject for block in page.answers] == [answer.subject for answer in answers]
    assert [block.rank for block in page.answers] == [1, 2, 3, 4, 5, 6, 7]


def test_storeys_are_drawn_from_the_lowest_and_say_why_nothing_is_noticed(page: Page) -> None:
    assert [(storey.name, storey.remark) for storey in page.storeys] == [
        ("Ground floor", ""),
        ("First floor", NOT_DRAWN),
    ]


def test_rules_not_run_are_not_rules_without_findings(site: Site, catalogue: Catalogue) -> None:
    assert not page_of(site, catalogue, (), None).were_rules_run
    assert page_of(site, catalogue, (), ()).were_rules_run


def test_a_bare_house_has_a_page(site: Site, catalogue: Catalogue) -> None:
    bare = site.model_copy(update={"devices": (), "zones": (), "people": (), "fixtures": ()})
    page = page_of(bare, catalogue, (), ())
    assert {storey.remark for storey in page.storeys} == {NOT_WATCHED}
    assert page.place == "GB, latitude 53.8\u00b0 N, rules: UK and EU"


def test_the_page_is_told_apart_by_value(site: Site, catalogue: Catalogue) -> None:
    assert page_of(site, catalogue, (), ()) == page_of(site, catalogue, (), ())


def test_findings_with_a_place_are_drawn_by_their_codes(page: Page) -> None:
    (plan,) = page.finding_plans
    assert plan.key == "findings-ground"
    texts = {getattr(verb, "text", "") for _, verb in plan.own.strokes}
    assert {"CTL101", "MD1 here"} <= texts
    assert plan.styles_used == ("fault", "suggestion")


def test_only_the_two_worst_lost_races_are_drawn_large(
    site: Site, catalogue: Catalogue, answers: tuple[Answer, ...]
) -> None:
    lost = tuple(
        answers[0].model_copy(update={"subject": name}) for name in ("front door", "back door", "side door")
    )
    blocks = page_of(site, catalogue, lost, ()).answers
    scales = [block.drawings[0].scale for block in blocks]
    assert scales[0] == scales[1] < scales[2]
