"""Houses for the rules with codes WTR."""

from __future__ import annotations

from typing import Any

from common.houses import on_floor, one_room
from common.rule_houses.form import Houses
from wardwright.model.fixture import Fixture


def sink(x: float, y: float, **facts: Any) -> Fixture:
    usual: dict[str, Any] = {"id": "sink", "name": "sink", "kind": "sanitary", "size_m": (0.6, 0.6)}
    return Fixture(storey="ground", centre_m=(x, y), **(usual | facts))


HOUSES: dict[str, Houses] = {
    "WTR101": Houses(
        fires=one_room(devices=(on_floor("water", "water", 2.5, 2.0, 0.9),)),
        silent=one_room(devices=(on_floor("water", "water", 2.5, 2.0, 0.0),)),
        cannot_run=one_room(),
    ),
    "WTR102": Houses(
        fires=one_room(devices=(on_floor("water", "water", 4.0, 2.0, 0.0),), fixtures=(sink(0.5, 3.5),)),
        silent=one_room(devices=(on_floor("water", "water", 1.7, 3.5, 0.0),), fixtures=(sink(0.5, 3.5),)),
        cannot_run=one_room(devices=(on_floor("water", "water", 4.0, 2.0, 0.0),)),
    ),
}
