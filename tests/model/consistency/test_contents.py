from typing import Any

import pytest

from common.broken import found, only

OUTLET = {"id": "o", "name": "socket", "kind": "power", "storey": "ground", "at_m": [3.2, 1]}


@pytest.mark.parametrize(
    ("edits", "weight", "what"),
    [
        ((("fixtures/table/height_m", 2.6),), "noted", "its top (2.60 m) is above the ceiling (2.40 m)"),
        ((("fixtures/table/centre_m", [9, 9]),), "noted", "it stands outside every space"),
        ((("outlets/+", OUTLET | {"at_m": [9, 9]}),), "noted", "it is outside every space"),
        ((("ground/boundary_m", [[0, 0], [1, 1]]),), "stops", "'boundary_m' crosses itself or has too few corners"),
        ((("place/latitude_deg", 51.5),), "noted", "only one of latitude and longitude is given"),
        ((("place/country", "US"),), "noted", "the country is US, but the rule pack is 'uk-eu'"),
        ((("spaces/landing/belongs", "neighbour"), ("targets", [])), "stops",
         "the bed is in 'landing', which is not ours"),
        ((("spaces/landing/belongs", "neighbour"), ("people", [])), "stops", "it is in 'landing', which is not ours"),
    ],
)  # fmt: skip
def test_what_stands_and_lives_in_the_house(
    edits: tuple[tuple[str, Any], ...], weight: str, what: str
) -> None:
    said = only(*edits)
    assert (said[0], said[2]) == (weight, what)


@pytest.mark.parametrize(
    ("told", "what"),
    [
        (
            {"part": "nihgt"},
            "'passes.part' names the part 'nihgt', which does not exist; did you mean 'night'",
        ),
        (
            {"part": "night", "may": ["landnig"]},
            "'passes.may' names the space 'landnig', which does not exist; did you mean 'landing'",
        ),
        (
            {"part": "night", "may_not": ["bath"]},
            "'passes.may_not' names the space 'bath', which does not exist",
        ),
        (
            {"part": "night", "may": ["landing"], "may_not": ["landing"]},
            "'landing' is a space where they may be and may not be while 'night' is set",
        ),
    ],
)
def test_passes_name_what_is_there_and_do_not_contradict_themselves(told: dict[str, Any], what: str) -> None:
    assert only(("people/mother/passes", [told])) == ("stops", "mother", what)


def test_what_fits_is_not_named() -> None:
    assert found(("outlets/+", OUTLET), ("place/country", "US"), ("place/rule_pack", "us")) == ()
    assert found(("place/latitude_deg", 51.5), ("place/longitude_deg", 0.0)) == ()


def test_a_time_zone_that_is_none_and_a_thing_upside_down() -> None:
    assert (
        only(("place/time_zone", "Europe/Atlantis"))[2] == "'Europe/Atlantis' is no time zone that is known"
    )
    block = {"id": "block", "name": "Block", "kind": "building", "outline_m": [[0, -9], [4, -9], [4, -6]]}
    upside = block | {"base_m": 5.0, "height_m": 4.0}
    assert "the underside of 'block' (5 m)" in only(("ground/things", [upside]))[2]


@pytest.mark.parametrize(
    ("path", "value", "key"),
    [
        ("walls/south/line_m", [[0, 0], [6000, 0]], "line_m"),
        ("fixtures/table/centre_m", [1e300, 0], "centre_m"),
        ("targets/safe/at_m", [0, -5000], "at_m"),
        ("stairs/stairs/line_m", [[0, 0], [0, 2800]], "line_m"),
    ],
)
def test_a_point_too_far_away_is_the_one_fault(path: str, value: object, key: str) -> None:
    weight, subject, what = only((path, value))
    assert (weight, subject) == ("stops", path.split("/")[1])
    assert what.startswith(f"'{key}' holds the point ")


def test_a_storey_in_millimetres_and_spaces_too_far_apart() -> None:
    assert only(("storeys/first/elevation_m", 2700))[2] == "its elevation is 2700 m, too far away"
    ring = [[400, 0], [406, 0], [406, 4], [400, 4]]
    assert only(("spaces/landing/outline_m", ring))[2] == "the spaces stretch over 406 m"
