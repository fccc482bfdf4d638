"""SND103: one, two, or one that sounds by itself."""

from __future__ import annotations

from typing import Any

from common.houses import CATALOGUE, two_rooms_and_hall
from common.rule_houses.control import UNIT_IN_STUDY
from common.rule_houses.keypads import KEYPAD
from common.rule_houses.sounders import HIGH, IN_HALL, IN_KITCHEN
from wardwright.rules.finding import Finding
from wardwright.rules.registry import findings_of
from wardwright.rules.sounders.one_sounder_only import one_sounder_only as rule


def findings(*devices: Any) -> tuple[Finding, ...]:
    return findings_of(rule, two_rooms_and_hall(devices=(KEYPAD, UNIT_IN_STUDY, *devices)), CATALOGUE)


def test_one_that_hangs_on_the_unit_is_to_be_checked() -> None:
    (found,) = findings(IN_HALL)
    assert found.severity == "check with the standard"
    assert found.message.endswith("does not sound by itself when it loses the unit")
    values = dict(found.mends[0].values)
    assert (found.mends[0].action, values["sheet"], values["height_m"]) == ("add-device", "sounder", 2.1)


def test_one_that_sounds_by_itself_is_advised_on() -> None:
    (found,) = findings(HIGH)
    assert (found.severity, found.message) == ("advise", "high: it is the only sounder")


def test_two_are_enough() -> None:
    assert findings(IN_HALL, IN_KITCHEN) == ()


def test_none_is_not_run() -> None:
    (found,) = findings()
    assert (found.severity, found.lacks) == ("not run", "sounder")
