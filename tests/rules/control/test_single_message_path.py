"""CTL107: which paths there are, and what stops with the mains."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_wall, two_rooms_and_hall
from wardwright.rules.control.single_message_path import single_message_path as rule
from wardwright.rules.finding import Finding
from wardwright.rules.registry import findings_of


def findings(*sheets: str) -> tuple[Finding, ...]:
    devices = tuple(on_wall(f"path-{i}", sheet, "south", 1.0 + i) for i, sheet in enumerate(sheets))
    return findings_of(rule, two_rooms_and_hall(devices=devices), CATALOGUE)


@pytest.mark.parametrize(
    ("sheet", "standby", "words"),
    [
        ("by-broadband", 0.0, "broadband only, which stops with the mains"),
        ("by-broadband-standby", 6.0, "broadband only"),
    ],
)
def test_broadband_alone_is_one_path(sheet: str, standby: float, words: str) -> None:
    (found,) = findings(sheet)
    assert found.message.endswith(words)
    assert found.severity == "advise"
    assert found.estimate is not None
    assert (found.estimate.value, found.estimate.unit) == (standby, "h")
    assert found.mends[0].values == (("sheet", "by-both"),)


@pytest.mark.parametrize(
    "sheets",
    [("by-both",), ("by-mobile",), ("by-broadband", "by-mobile")],
    ids=["both", "mobile", "two devices"],
)
def test_two_paths_or_mobile_with_standby_are_not_found(sheets: tuple[str, ...]) -> None:
    assert findings(*sheets) == ()


def test_two_devices_on_one_path_are_one_finding() -> None:
    (found,) = findings("by-broadband", "by-broadband-standby")
    assert (found.subject, found.related) == ("path-1", ("path-0",))


def test_no_path_known_is_not_run() -> None:
    (found,) = findings()
    assert (found.severity, found.lacks) == ("not run", "transmitter")
