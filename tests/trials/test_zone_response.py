"""The state machine, and the six cases of the worked terrace."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from accuracy.rows import Row
from common.signals import in_turn
from wardwright.model.programme import STANDARD_BEHAVIOURS, Behaviour, Programme
from wardwright.trials.zone_response import Signal, respond, response_once, response_times

KNOWN = {b.id: b for b in STANDARD_BEHAVIOURS}
RADIO_S, MESSAGE_S, BREAK_S = 1.0, 10.0, 10.0

# The worked terrace: who detects when, when the intruder stands at the unit, then sounder, broken, message.
# Source: the trade's worked example, walking legs 2.5 m/s, stairs half, 1 s a door, 5 s to climb in (assumption).
WORKED = {
    "A kitchen window, instant contact": (((0.0, "instant"),), 30, 0, 9.0, (1.0, 19.0, 11.0)),
    "A+ the same, abort delay for every zone": (((0.0, "delayed"),), 30, 30, 9.0, (1.0, 19.0, 41.0)),
    "B glass pushed in, hall movement first": (((7.8, "instant"),), 30, 0, 9.0, (8.8, 19.0, 18.8)),
    "C front door forced, unit in the hall": (((0.0, "entry-exit"),), 30, 0, 1.6, (31.0, 11.6, 41.0)),
    "C+ 45 s entry, 30 s abort delay": (((0.0, "entry-exit"),), 45, 30, 1.6, (46.0, 11.6, 86.0)),
    "D unit upstairs, instant landing": (
        ((0.0, "entry-exit"), (5.2, "instant")), 30, 0, 9.2, (6.2, 19.2, 16.2),
    ),
}  # fmt: skip


def accuracy_rows() -> Iterator[Row]:
    """The rows for docs/accuracy.md: each case of the table, played by the state machine."""
    source = "a worked table of six break-ins into a two-storey terrace, made before this program"
    why = "sums of whole figures: only rounding is left"
    for case, (detections, entry, abort, _, (sounder, _, message)) in WORKED.items():
        answer = respond(signals_of(detections), Programme(entry_time_s=entry, abort_delay_s=abort))
        yield Row(f"{case}: sounder [s]", source, sounder, answer.alarm_s, 1e-9, why, "assumption")
        left = answer.message_due_s + MESSAGE_S
        yield Row(f"{case}: message left [s]", source, message, left, 1e-9, why, "assumption")
    yield from _orderings(source)


def _orderings(source: str) -> Iterator[Row]:
    """What the table is there to show, as the lead of the sounder over the arrival at the control unit."""
    lead = {}
    for case, (detections, entry, abort, at_unit, _) in WORKED.items():
        answer = respond(signals_of(detections), Programme(entry_time_s=entry, abort_delay_s=abort))
        lead[case[:2].strip()] = at_unit - answer.alarm_s
    why = "an ordering: only the sign counts"
    yield Row(
        "unit elsewhere behind an instant detector (D): lead of the sounder gained over C [s]", source, 0.0,
        lead["D"] - lead["C"], 0.0, why, "assumption", "at least",
    )  # fmt: skip
    yield Row(
        "more entry time and an abort delay (C+): lead of the sounder gained over C [s]", source, 0.0,
        lead["C+"] - lead["C"], 0.0, why, "assumption", "at most",
    )  # fmt: skip


def signals_of(detections: Any) -> list[Signal]:
    """What reaches the control unit of what is noticed."""
    behaviours = KNOWN | {"delayed": Behaviour(id="delayed", name="delayed", delays_message=True)}
    return [Signal(time + RADIO_S, behaviours[name]) for time, name in detections]


@pytest.mark.parametrize("case", WORKED)
def test_worked_terrace_exactly(case: str) -> None:
    detections, entry, abort, at_unit, (sounder, broken, message) = WORKED[case]
    answer = respond(signals_of(detections), Programme(entry_time_s=entry, abort_delay_s=abort))
    assert answer.alarm_s == pytest.approx(sounder, abs=1e-12)
    assert answer.message_due_s + MESSAGE_S == pytest.approx(message, abs=1e-12)
    assert at_unit + BREAK_S == pytest.approx(broken, abs=1e-12)


ANY = st.builds(
    Behaviour,
    id=st.just("any"),
    name=st.just("any"),
    starts_entry=st.booleans(),
    allowed_after_entry=st.booleans(),
    alarms=st.booleans(),
    delays_message=st.booleans(),
)


@given(st.lists(st.tuples(st.integers(0, 4), ANY), max_size=6), st.integers(0, 3), st.integers(0, 3))
def test_signals_of_one_moment_in_their_turn_are_as_the_closed_form_takes_them(
    drawn: list[tuple[int, Behaviour]], entry: int, abort: int
) -> None:
    times, behaviours = [float(time) for time, _ in drawn], [behaviour for _, behaviour in drawn]
    programme = Programme(entry_time_s=entry, abort_delay_s=abort)
    one = respond(in_turn(times, behaviours), programme)
    alarm, due = response_times(np.array(times).reshape(-1, 1), behaviours, programme)
    assert alarm[0] == one.alarm_s
    assert due[0] == one.message_due_s
    assert response_once(times, behaviours, programme) == (one.alarm_s, one.message_due_s)


@given(
    st.lists(st.tuples(st.integers(0, 10_000), ANY), max_size=6, unique_by=lambda pair: pair[0]),
    st.integers(0, 60),
    st.integers(0, 60),
)
def test_closed_form_equals_the_machine(drawn: list[tuple[int, Behaviour]], entry: int, abort: int) -> None:
    # Quarter seconds off the whole keep signals from falling on the very end of an entry time.
    signals = [Signal(t / 100 + 0.001, b, str(i)) for i, (t, b) in enumerate(drawn)]
    programme = Programme(entry_time_s=entry + 0.5, abort_delay_s=abort)
    one = respond(signals, programme)
    times = np.array([[s.time_s] for s in signals]).reshape(len(signals), 1)
    alarm, due = response_times(times, [s.behaviour for s in signals], programme)
    assert alarm[0] == one.alarm_s
    assert due[0] == one.message_due_s
    plain = response_once(times[:, 0].tolist(), [s.behaviour for s in signals], programme)
    assert plain == (one.alarm_s, one.message_due_s)


def test_logged_only_rings_nothing() -> None:
    answer = respond([Signal(1.0, KNOWN["log-only"], "x")], Programme())
    assert answer.alarm_s == float("inf")
    assert [line.what for line in answer.timeline] == ["logged"]


def test_route_zone_rings_when_no_entry_has_started() -> None:
    assert respond([Signal(2.0, KNOWN["entry-route"])], Programme()).alarm_s == 2.0


def test_leaving_the_route_during_the_entry_time_rings_at_once() -> None:
    signals = [Signal(0.0, KNOWN["entry-exit"], "door"), Signal(4.0, KNOWN["instant"], "study")]
    answer = respond(signals, Programme(entry_time_s=30.0))
    assert answer.alarm_s == 4.0
    assert [line.what for line in answer.timeline] == ["entry time starts", "alarm"]
