"""LNK106: jamming told too late."""

from __future__ import annotations

from common.houses import CATALOGUE, one_room, standing_free
from common.rule_houses.links import LATE, UNIT
from wardwright.model.place import Place
from wardwright.rules.links.jamming_told_too_late import jamming_told_too_late as rule
from wardwright.rules.registry import findings_of
from wardwright.store.catalogue import load_catalogue


def test_the_standard_s_time_is_from_memory_and_a_quicker_unit_is_named() -> None:
    (found,) = findings_of(rule, one_room(devices=(LATE,)), CATALOGUE)
    assert found.severity == "check with the standard"
    assert (found.estimate.value if found.estimate else None, found.limit) == (90.0, 30.0)
    assert found.mends[0].values == (("sheet", "radio-unit"),)


def test_american_practice_is_shorter() -> None:
    unit = UNIT.model_copy(update={"sheet": "control-unit-radio"})
    own = load_catalogue()
    assert findings_of(rule, one_room(devices=(unit,)), own) == ()
    (found,) = findings_of(rule, one_room(devices=(unit,), place=Place(rule_pack="us")), own)
    assert (found.severity, found.limit) == ("advise", 20.0)


def test_a_silent_sheet_is_not_run() -> None:
    (found,) = findings_of(rule, one_room(devices=(standing_free("unit", "unit", 0.5, 2.0),)), CATALOGUE)
    assert found.severity == "not run"
    assert "does not say when it tells of jamming" in found.message
