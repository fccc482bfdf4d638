from __future__ import annotations

from wardwright.documents.content.plans import storey_plans, storeys_of
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.answer import Answer


def test_storeys_are_drawn_at_the_sizes_that_a_page_needs(
    site: Site, catalogue: Catalogue, answers: tuple[Answer, ...]
) -> None:
    found = storeys_of(site, catalogue, answers)
    assert [group[0].sheet.scale for group in found] == [50, 100, 100, 200]
    assert found.shown is found.beside  # drawn once
    assert [base.storey for base in found.whole] == ["ground", "first"]


def test_a_plan_of_one_size_is_not_taken_for_another(site: Site, catalogue: Catalogue) -> None:
    found = storeys_of(site, catalogue, ())
    bases = {id(base): base for group in found for base in group}.values()
    assert len({base.key for base in bases}) == len(bases)


def test_one_storey_has_the_page_to_itself(site: Site, catalogue: Catalogue) -> None:
    ground = site.model_copy(
        update={
            "storeys": site.storeys[:1],
            "stairs": (),
            "devices": (),
            "zones": (),
            "spaces": tuple(space for space in site.spaces if space.storey == "ground"),
            "walls": tuple(wall for wall in site.walls if wall.storey == "ground"),
            "openings": tuple(one for one in site.openings if one.wall.startswith("g-")),
            "fixtures": tuple(one for one in site.fixtures if one.storey == "ground"),
        }
    )
    found = storeys_of(ground, catalogue, ())
    assert found.shown is found.whole


def test_the_file_is_larger_than_what_the_page_shows(
    site: Site, catalogue: Catalogue, answers: tuple[Answer, ...]
) -> None:
    found = storeys_of(site, catalogue, answers)
    ground, first = storey_plans(found, site, catalogue, answers=answers)
    assert (ground.drawing.scale, ground.shown.scale) == (50, 100)
    assert ground.drawing.key == ground.shown.key == "noticed-ground"
    assert ground.shown.styles_used == ("seen", "possibly-seen")
    assert first.shown.styles_used == ()
