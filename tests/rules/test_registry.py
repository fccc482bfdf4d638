"""The table refuses what would make codes unsure; findings come in order; unknown is not passed."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from common.houses import CATALOGUE, one_room
from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.finding import Finding
from wardwright.rules.movement.movement_detector_facing_glass import movement_detector_facing_glass
from wardwright.rules.registry import Rule, exactly, findings_of, rule, tabled, weakest


def made(code: str, name: str = "a-fault", **facts: Any) -> Rule:
    usual: dict[str, Any] = {"since": "0.1", "stage": "trial use", "mark": "assumption"}
    usual |= {"severity": "advise", "sources": ()}

    @rule(code=code, name=name, **(usual | facts))
    def check(site: Site, catalogue: Catalogue) -> Iterator[Finding]:  # noqa: ARG001 - the form of a check
        """Say something."""
        this = made(code, name)
        yield this.finding("b", "second", cure="mend it")
        yield this.finding("a", "first", cure="mend it")
        raise NotComputable("the rest is not known")

    return check


def test_a_code_or_name_is_given_once() -> None:
    with pytest.raises(ValueError, match="'MOV101' is registered twice"):
        tabled(made("MOV101"), made("MOV101", "another"))
    with pytest.raises(ValueError, match="'a-fault' is registered twice"):
        tabled(made("MOV101"), made("MOV102"))


def test_codes_have_their_form_and_order() -> None:
    with pytest.raises(ValueError, match="'MOVE1' is not three letters"):
        tabled(made("MOVE1"))
    with pytest.raises(ValueError, match="CON101 stands after MOV101"):
        tabled(made("MOV101"), made("CON101", "another"))


def test_a_rule_without_text_is_refused() -> None:
    silent = made("MOV101")
    silent.check.__doc__ = None
    with pytest.raises(ValueError, match="MOV101 has no text"):
        tabled(silent)


def test_what_was_found_before_it_stopped_is_kept_in_order() -> None:
    found = findings_of(made("MOV101"), one_room(), CATALOGUE)
    assert [(one.subject, one.severity) for one in found] == [
        ("a", "advise"),
        ("b", "advise"),
        ("one room", "not run"),
    ]
    assert found[-1].message == "the rest is not known"
    assert found == findings_of(made("MOV101"), one_room(), CATALOGUE)


def test_an_exact_number_has_no_range() -> None:
    number = exactly(0.3, "m", "measured")
    assert (number.low, number.value, number.high, number.basis) == (0.3, 0.3, 0.3, "measured")


def test_the_worst_known_fact_counts() -> None:
    assert weakest("measured") == "measured"
    assert weakest("default", "guessed", "told") == "default"


def test_a_lacking_kind_of_device_is_kept_as_data() -> None:
    (found,) = findings_of(movement_detector_facing_glass, one_room(), CATALOGUE)
    assert (found.severity, found.lacks) == ("not run", "movement-detector")
