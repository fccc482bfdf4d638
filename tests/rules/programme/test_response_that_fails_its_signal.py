"""PRG106: what each signal needs of what follows it."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, one_room, standing_free, zone
from common.mending import mended
from common.rule_houses.programme import fire_zone
from wardwright.model.programme import Programme, Response
from wardwright.model.site import Site
from wardwright.rules.programme.response_that_fails_its_signal import response_that_fails_its_signal as rule
from wardwright.rules.programme.response_that_fails_its_signal import response_to
from wardwright.rules.registry import findings_of


def house(behaviour: str, **response: Any) -> Site:
    """One zone of one behaviour, with one response that is not the usual one."""
    return one_room(
        devices=(standing_free("thing", "fan", 2.5, 2.0),),
        zones=(zone(1, "Living thing", "thing", behaviour=behaviour),),
        programme=Programme(responses=(Response(**response),)),
    )


@pytest.mark.parametrize(
    ("behaviour", "response", "severity", "words"),
    [
        ("fire", {"signal": "fire", "state": "unset", "message": True}, "advise", "Fire sounds nothing while unset"),
        ("fire", {"signal": "fire", "state": "set", "sounders": "all"}, "advise", "told to nobody while set"),
        ("hold-up", {"signal": "hold-up", "state": "set", "sounders": "all", "message": True}, "advise", "sounds"),
        ("hold-up", {"signal": "hold-up", "state": "unset"}, "must mend", "told to nobody while unset"),
        ("tamper", {"signal": "tamper", "state": "set", "sounders": "all"}, "advise", "Tampering is told to nobody"),
        ("water", {"signal": "water", "state": "unset"}, "must mend", "Water is told to nobody while unset"),
        ("water", {"signal": "water", "state": "set", "sounders": "inside"}, "advise", "told to nobody while set"),
        ("instant", {"signal": "intruder", "state": "set"}, "must mend", "neither heard nor told"),
    ],
)  # fmt: skip
def test_each_signal_has_its_own_needs(
    behaviour: str, response: dict[str, Any], severity: str, words: str
) -> None:
    site = house(behaviour, **response)
    (found,) = findings_of(rule, site, CATALOGUE)
    assert (found.severity, found.subject, found.related) == (severity, "zone-1", ("thing",))
    assert words in found.message
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


@pytest.mark.parametrize("behaviour", ["fire", "hold-up", "tamper", "water", "instant"])
def test_the_usual_responses_serve_every_signal(behaviour: str) -> None:
    site = house(behaviour, signal="fault", state="set", message=True)
    assert findings_of(rule, site, CATALOGUE) == ()


def test_a_tamper_signal_may_stay_inside_while_somebody_is_in() -> None:
    assert (
        findings_of(rule, house("tamper", signal="tamper", state="unset", sounders="inside"), CATALOGUE) == ()
    )


def test_messages_need_somebody_to_get_them() -> None:
    site = fire_zone(told=())
    (found,) = findings_of(rule, site, CATALOGUE)
    assert (found.subject, found.severity) == ("programme", "must mend")
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()
    named = Response(signal="fire", state="set", sounders="all", message=True, told=("neighbour",))
    states = (named, *(named.model_copy(update={"state": state}) for state in ("unset", "part set")))
    assert findings_of(rule, fire_zone(*states, told=()), CATALOGUE) == ()


def test_a_signal_that_no_zone_gives_is_not_looked_at() -> None:
    assert findings_of(rule, house("instant", signal="hold-up", state="set", sounders="all"), CATALOGUE) == ()


def test_the_site_goes_before_the_usual() -> None:
    told = Response(signal="water", state="set", sounders="all")
    site = one_room(programme=Programme(responses=(told,)))
    assert response_to(site, "water", "set") is told
    assert response_to(site, "water", "unset").message
