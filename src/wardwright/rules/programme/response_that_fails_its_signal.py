"""PRG106: what follows a signal does not serve it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal, NamedTuple

from wardwright.model.catalogue import Catalogue
from wardwright.model.programme import STANDARD_RESPONSES, Response, SetState, SignalKind
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend, Severity
from wardwright.rules.programme_times import SUBJECT, behaviours_used
from wardwright.rules.registry import rule

STATES: tuple[SetState, ...] = ("unset", "part set", "set")
NOBODY_IN: tuple[SetState, ...] = ("set",)


class _Need(NamedTuple):
    """One thing that a signal needs of what follows it."""

    states: tuple[SetState, ...]
    is_met: Literal["sounds", "is silent", "is told", "sounds or is told"]
    fault: str
    severity: Severity


_NEEDS: dict[SignalKind, tuple[_Need, ...]] = {
    "fire": (
        _Need(STATES, "sounds", "fire sounds nothing while {state}", "advise"),
        _Need(NOBODY_IN, "is told", "fire is told to nobody while {state}", "advise"),
    ),
    "hold-up": (
        _Need(STATES, "is silent", "a hold-up sounds while {state}, before whoever threatens", "advise"),
        _Need(STATES, "is told", "a hold-up is told to nobody while {state}", "must mend"),
    ),
    "tamper": (_Need(NOBODY_IN, "is told", "tampering is told to nobody while {state}", "advise"),),
    "water": (
        _Need(STATES, "sounds or is told", "water is told to nobody while {state}", "must mend"),
        _Need(NOBODY_IN, "is told", "water is told to nobody while {state}", "advise"),
    ),
    "intruder": (
        _Need(
            NOBODY_IN, "sounds or is told", "an intruder is neither heard nor told while {state}", "must mend"
        ),
    ),
}  # fmt: skip
"""What each signal needs, gravest first where two could be broken at once. (common practice)"""

_GOOD: dict[SignalKind, tuple[str, str, bool]] = {
    "fire": ("any", "all", True),
    "hold-up": ("any", "none", True),
    "tamper": ("set", "all", True),
    "water": ("any", "inside", True),
    "intruder": ("set", "all", True),
}
"""The states, sounders and message that serve each signal: what the mend sets."""


@rule(
    code="PRG106",
    name="response-that-fails-its-signal",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def response_that_fails_its_signal(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Signals whose sounders or messages do not serve them: fire in silence, a hold-up aloud, water told to nobody.

    What it checks
        For each signal that a zone gives, what follows in each state of the alarm: fire sounds always and is told
        when nobody is in; a hold-up is told and makes no noise; tampering of the set system is told; water is heard
        or told; an intruder is heard or told. And whether there is anybody to tell.
    Why it matters
        A detector whose signal reaches nobody is worse than none: people rely on it. A hold-up that sounds can turn a
        threat into violence.
    How to put it right
        Change what follows the signal as the finding says, and name by role who gets the messages.
    What it cannot know
        Whether who is told will read the message, come or can; what a receiving centre does by itself; whether
        this household wants a loud hold-up after all.

    Parameters
    ----------
    site : Site
        The house, its zones and its programme.
    catalogue : Catalogue
        Not used.

    Yields
    ------
    Finding
        One for each signal that is not served, about the first zone that gives it: `must mend` where nobody at all
        would know, else `advise`; one about the programme where messages leave and nobody is named.

    Raises
    ------
    NotComputable
        If there is no zone.
    """
    del catalogue
    this = response_that_fails_its_signal
    first: dict[SignalKind, str] = {}
    sources: dict[SignalKind, tuple[str, ...]] = {}
    for zone, behaviour in behaviours_used(site):
        if behaviour.alarms and not zone.is_on_soak:
            first.setdefault(behaviour.signal, zone.id)
            sources[behaviour.signal] = (*sources.get(behaviour.signal, ()), *zone.devices)
    for signal, subject in first.items():
        broken = [need for need in _NEEDS.get(signal, ()) if _states_unmet(site, signal, need)]
        if not broken:
            continue
        worst = min(broken, key=lambda need: need.severity != "must mend")
        states, sounders, message = _GOOD[signal]
        yield this.finding(
            subject,
            "; ".join(
                need.fault.format(state=" or ".join(_states_unmet(site, signal, need))) for need in broken
            ).capitalize(),
            cure=f"For the signal {signal}, {_words(sounders)} and {'send' if message else 'hold back'} a message",
            severity=worst.severity,
            mends=(
                Mend(
                    action="change-programme",
                    subject=SUBJECT,
                    values=(
                        ("signal", signal),
                        ("state", states),
                        ("sounders", sounders),
                        ("message", message),
                    ),
                ),
            ),
            related=sources[signal],
        )
    untold = [
        one
        for signal in first
        for state in STATES
        if _is_untold(site, one := response_to(site, signal, state))
    ]
    if untold:
        signals = " and ".join(sorted({one.signal for one in untold}))
        yield this.finding(
            SUBJECT,
            f"Messages of {signals} leave, and nobody is named who gets them",
            cure="Name by role who gets the messages",
            severity="must mend",
            mends=(Mend(action="change-programme", subject=SUBJECT, values=(("told", "household"),)),),
        )


def response_to(site: Site, signal: SignalKind, state: SetState) -> Response:
    """What follows a signal in one state: as the site says, else the usual."""
    return next(
        one
        for one in (*reversed(site.programme.responses), *STANDARD_RESPONSES)
        if (one.signal, one.state) == (signal, state)
    )


def _is_untold(site: Site, response: Response) -> bool:
    return response.message and not response.told and not site.programme.told


def _states_unmet(site: Site, signal: SignalKind, need: _Need) -> tuple[SetState, ...]:
    return tuple(state for state in need.states if not _is_met(response_to(site, signal, state), need))


def _is_met(response: Response, need: _Need) -> bool:
    sounds = response.sounders != "none"
    return {
        "sounds": sounds,
        "is silent": not sounds,
        "is told": response.message,
        "sounds or is told": sounds or response.message,
    }[need.is_met]


def _words(sounders: str) -> str:
    return {"none": "sound nothing", "inside": "sound inside"}.get(sounders, "sound all sounders")
