from __future__ import annotations

from collections.abc import Callable

import shapely

from wardwright.documents.drawing.plan import BasePlan, base_plan, plan_with
from wardwright.documents.drawing.recording import Box, Text
from wardwright.documents.drawing.sheet import HALF, QUARTER, sheet_for
from wardwright.documents.writers.svg import write_svg
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.questions.answer import Answer


def test_the_plan_of_a_storey_is_as_it_was(
    site: Site, catalogue: Catalogue, answers: tuple[Answer, ...], kept: Callable[[str, str], None]
) -> None:
    base = base_plan(site, catalogue, storey_id="ground", sheet=sheet_for(site))
    drawing = plan_with(
        base, answers[1].sketches, key="plan", title="Ground floor", description="The race from the window."
    )
    kept("plan-ground.svg", write_svg(drawing).decode().replace("><", ">\n<"))


def test_only_what_stands_on_a_storey_is_on_its_plan(site: Site, catalogue: Catalogue) -> None:
    base = base_plan(site, catalogue, storey_id="first", sheet=sheet_for(site))
    texts = {verb.text for _, verb in base.recording.strokes if isinstance(verb, Text)}
    assert "Landing" in texts
    assert "Kitchen" not in texts
    assert base.devices == ("md-landing", "siren-in")


def test_sketches_of_another_storey_are_left_out(
    site: Site, catalogue: Catalogue, answers: tuple[Answer, ...]
) -> None:
    base = base_plan(site, catalogue, storey_id="first", sheet=sheet_for(site))
    drawing = plan_with(base, answers[1].sketches, key="a", title="", description="")
    assert drawing.own.strokes == ()
    assert drawing.styles_used == ()


def test_order_of_the_lists_changes_no_ink_of_the_house(site: Site, catalogue: Catalogue) -> None:
    turned = site.model_copy(update={"walls": site.walls[::-1], "openings": site.openings[::-1]})
    one, other = (
        base_plan(each, catalogue, storey_id="ground", sheet=sheet_for(each)).recording
        for each in (site, turned)
    )
    assert {verb for layer, verb in one.strokes if layer != "house"} == {
        verb for layer, verb in other.strokes if layer != "house"
    }


def test_labels_call_devices_by_their_letters(site: Site, catalogue: Catalogue) -> None:
    base = base_plan(site, catalogue, storey_id="ground", sheet=sheet_for(site))
    sketches = (
        Sketch(
            role="notice", storey="ground", points=((3.0, 3.0),), label="noticed by Kitchen movement detector"
        ),
        Sketch(role="goal", storey="ground", points=((1.85, 3.6),), label="Hall control unit"),
        Sketch(role="goal", storey="ground", points=((4.0, 1.0),), label="jewellery"),
    )
    drawing = plan_with(base, sketches, key="a", title="", description="")
    texts = [verb.text for _, verb in drawing.own.strokes if isinstance(verb, Text)]
    assert sorted(texts) == ["jewellery", "noticed by MD2"]


def test_devices_keep_their_letters_off_walks_to_come(site: Site, catalogue: Catalogue) -> None:
    across = Sketch(role="walk", storey="ground", points=((4.9, 3.2), (2.2, 3.2)))
    plain, kept = (
        base_plan(site, catalogue, storey_id="ground", sheet=sheet_for(site, room=HALF), ways=ways)
        for ways in ((), (across,))
    )
    way = shapely.LineString(across.points)

    def lying(base: BasePlan) -> int:
        texts = [verb for _, verb in base.recording.strokes if isinstance(verb, Text | Box)]
        return sum(way.distance(shapely.Point(getattr(v, "at", None) or v.centre)) < 0.1 for v in texts)  # type: ignore[union-attr] # a box has a centre

    assert lying(kept) == 0
    assert plain.key == kept.key


def test_a_little_plan_says_less(site: Site, catalogue: Catalogue) -> None:
    base = base_plan(site, catalogue, storey_id="ground", sheet=sheet_for(site, room=QUARTER))
    sketch = Sketch(
        role="notice", storey="ground", points=((3.0, 3.0),), label="noticed by Kitchen movement detector"
    )
    drawing = plan_with(base, (sketch,), key="a", title="", description="")
    assert [verb.text for _, verb in drawing.own.strokes if isinstance(verb, Text)] == ["by MD2"]
