"""A site turned by a quarter, anticlockwise about the plan's origin."""

from __future__ import annotations

import json
from typing import Any

from wardwright.model.document import write_document
from wardwright.model.site import Site

PLACES = {
    "line_m",
    "outline_m",
    "centre_m",
    "at_m",
    "corners_m",
    "well_m",
    "footprint_m",
    "boundary_m",
    "road_m",
}


def quarter_turned(site: Site) -> Site:
    """The same house, drawn with east where north was."""
    return Site(**_turned(json.loads(write_document(site))))


def _turned(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _moved(item) if key in PLACES else _changed(key, item) for key, item in value.items()}
    return [_turned(item) for item in value] if isinstance(value, (list, tuple)) else value


def _changed(key: str, value: Any) -> Any:
    if key in ("heading_deg", "turn_deg", "north_deg") and isinstance(value, float | int):
        return value + 90.0
    return _turned(value)


def _moved(value: Any) -> Any:
    if value is None:
        return None
    if all(isinstance(item, (int, float)) for item in value):
        x, y, *rest = value
        return (-y, x, *rest)
    return tuple(_moved(item) for item in value)
