"""LNK105: metal in the way."""

from __future__ import annotations

from common.houses import CATALOGUE, one_room, standing_free
from common.rule_houses.links import BOILER, UNIT, WEAK
from wardwright.rules.links.metal_or_coated_glass_in_the_way import metal_or_coated_glass_in_the_way as rule
from wardwright.rules.registry import findings_of


def test_what_is_in_the_way_is_named_with_what_it_takes() -> None:
    (found,) = findings_of(rule, one_room(devices=(UNIT, WEAK), fixtures=(BOILER,)), CATALOGUE)
    assert found.message == "weak: its path to unit goes through metal or coated glass: Boiler"
    assert found.estimate is not None
    assert found.estimate.value == next(r.value_db for r in CATALOGUE.wall_losses if r.id == "metal-thing")
    assert "radio-cost" in {sketch.role for sketch in found.sketches}


def test_past_it_nothing_is_said() -> None:
    beside = standing_free("weak", "radio-weak", 4.5, 3.9)
    unit = UNIT.model_copy(update={"mount": UNIT.mount.model_copy(update={"at_m": (0.5, 3.9)})})
    assert findings_of(rule, one_room(devices=(unit, beside), fixtures=(BOILER,)), CATALOGUE) == ()


def test_where_no_link_can_be_worked_out_it_says_why() -> None:
    (found,) = findings_of(rule, one_room(devices=(WEAK,)), CATALOGUE)
    assert found.severity == "not run"
    assert found.message == "no control unit that could hear it"
