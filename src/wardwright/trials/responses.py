"""What follows each signal in each state of the alarm: the site's own responses over the usual ones."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple, get_args

from wardwright.model.programme import STANDARD_RESPONSES, Programme, Response, SetState, SignalKind

SIGNALS: tuple[SignalKind, ...] = get_args(SignalKind)
STATES: tuple[SetState, ...] = get_args(SetState)


class ResponseRow(NamedTuple):
    """What follows one signal in one state, with nothing left open."""

    signal: SignalKind
    state: SetState
    sounders: str
    """`none`, `inside` or `all`."""
    message: bool
    told: tuple[str, ...]
    """Who gets the message, by role; empty where none leaves."""
    is_usual: bool
    """Whether it is the usual one, which nobody has told otherwise."""


def response_table(programme: Programme) -> tuple[ResponseRow, ...]:
    """All signals in all states, one row each: for answers, the programming sheet and the user's guide.

    Parameters
    ----------
    programme : Programme
        Its own responses stand before the usual ones; of two for the same signal and state the last counts.

    Returns
    -------
    tuple of ResponseRow
        By signal, then from unset to set.

    Examples
    --------
    >>> quiet = Programme(responses=(Response(signal="tamper", state="set", sounders="none", message=True),))
    >>> [(row.state, row.sounders, row.told) for row in response_table(quiet) if row.signal == "tamper"]
    [('unset', 'inside', ()), ('part set', 'inside', ('household',)), ('set', 'none', ('household',))]
    """
    usual = {(one.signal, one.state): one for one in STANDARD_RESPONSES}
    own = {(one.signal, one.state): one for one in programme.responses}
    return tuple(
        _row(own.get((signal, state), usual[signal, state]), programme, is_usual=(signal, state) not in own)
        for signal in SIGNALS
        for state in STATES
    )


def response_to(programme: Programme, signal: SignalKind, state: SetState) -> ResponseRow:
    """What follows one signal in one state."""
    return next(row for row in response_table(programme) if (row.signal, row.state) == (signal, state))


def _row(one: Response, programme: Programme, *, is_usual: bool) -> ResponseRow:
    told = (one.told or programme.told) if one.message else ()
    return ResponseRow(one.signal, one.state, one.sounders, one.message, told, is_usual)


_SOUND = {"none": "silent", "inside": "inside sounders", "all": "all sounders"}


@lru_cache(maxsize=64)
def response_words(programme: Programme) -> tuple[tuple[SignalKind, str], ...]:
    """Each signal with what follows it, in one line: for notes and tables.

    Examples
    --------
    >>> dict(response_words(Programme()))["hold-up"]
    'silent, household told, in every state'
    >>> dict(response_words(Programme()))["fault"]
    'silent, nobody told when unset or part set; silent, household told when set'
    """
    found = []
    for signal in SIGNALS:
        groups: dict[str, list[str]] = {}
        for row in response_table(programme):
            if row.signal == signal:
                told = " and ".join(row.told) if row.told else "nobody"
                groups.setdefault(f"{_SOUND[row.sounders]}, {told} told", []).append(row.state)
        if len(groups) == 1:
            found.append((signal, f"{next(iter(groups))}, in every state"))
            continue
        parts = [f"{words} when {' or '.join(states)}" for words, states in groups.items()]
        found.append((signal, "; ".join(parts)))
    return tuple(found)
