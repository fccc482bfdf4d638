"""New places, drawn where the device would be."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_ceiling, one_room, radiator
from common.mending import mended
from common.rule_houses import HOUSES
from wardwright.model.placement import standing
from wardwright.rules.registry import findings_of
from wardwright.rules.suggestion import suggestions
from wardwright.rules.table import check, rule


@pytest.mark.parametrize("code", ["MOV101", "CTL101", "CTL102"])
def test_it_is_drawn_where_the_mend_puts_it(code: str) -> None:
    site = HOUSES[code].fires
    (found,) = findings_of(rule(code), site, CATALOGUE)
    (sketch,) = (one for one in found.sketches if one.role == "suggestion")
    after = mended(site, found.mends[0])
    place = standing(after, after.device(found.subject))
    assert sketch.points == ((place.x_m, place.y_m),)
    assert sketch.storey == place.storey
    assert found.cure.startswith(f"Move it to the place given, in {sketch.label}")
    assert sketch.label in ("Living room", "Study")


def test_a_ceiling_place_is_drawn() -> None:
    site = one_room(devices=(on_ceiling("round", "round", 2.5, 2.0),), fixtures=(radiator(2.5, 2.0),))
    (found,) = findings_of(rule("MOV101"), site, CATALOGUE)
    (sketch,) = suggestions(site, found.mends)
    after = mended(site, found.mends[0])
    place = standing(after, after.device("round"))
    assert sketch.points == ((place.x_m, place.y_m),)


def test_what_moves_nothing_is_passed_over() -> None:
    for code in ("CON101", "MOV102", "NAM101"):
        for found in check(HOUSES[code].fires, CATALOGUE):
            if found.code == code:
                assert suggestions(HOUSES[code].fires, found.mends) == ()
