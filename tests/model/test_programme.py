from typing import get_args

import pytest

from wardwright.model.programme import (
    STANDARD_BEHAVIOURS,
    STANDARD_RESPONSES,
    Programme,
    SetState,
    SignalKind,
    Zone,
)


def test_only_entry_exit_starts_the_entry_time() -> None:
    assert [b.id for b in STANDARD_BEHAVIOURS if b.starts_entry] == ["entry-exit"]
    assert {b.id for b in STANDARD_BEHAVIOURS if b.allowed_after_entry} == {"entry-exit", "entry-route"}
    assert [b.id for b in STANDARD_BEHAVIOURS if not b.alarms] == ["log-only"]
    assert [b.id for b in STANDARD_BEHAVIOURS if b.is_always_active] == [
        "always-on", "tamper", "hold-up", "fire", "water"
    ]  # fmt: skip


def test_every_signal_has_one_usual_response_in_each_state() -> None:
    named = [(one.signal, one.state) for one in STANDARD_RESPONSES]
    assert len(named) == len(set(named)) == len(get_args(SignalKind)) * len(get_args(SetState))


def test_a_hold_up_makes_no_noise_and_a_fire_always_does() -> None:
    for one in STANDARD_RESPONSES:
        if one.signal == "hold-up":
            assert (one.sounders, one.message) == ("none", True)
        if one.signal == "fire":
            assert (one.sounders, one.message) == ("all", True)


def test_times_are_not_negative_and_at_most_an_hour() -> None:
    for seconds in (-1.0, 3601.0):
        with pytest.raises(ValueError, match="entry_time_s"):
            Programme(entry_time_s=seconds)


def test_a_zone_is_active_when_all_is_set_unless_told_otherwise() -> None:
    zone = Zone(id="z", number=1, name="hall", devices=("d",), behaviour="instant")
    assert zone.parts == ("full",)
    assert zone.basis_of("parts") == "default"
