"""What follows a signal: the site's own responses over the usual ones."""

from __future__ import annotations

import pytest

from wardwright.model.programme import STANDARD_RESPONSES, Programme, Response
from wardwright.trials.responses import SIGNALS, STATES, response_table, response_to, response_words


def test_every_signal_has_a_row_in_every_state() -> None:
    rows = response_table(Programme())
    assert [(row.signal, row.state) for row in rows] == [(one, state) for one in SIGNALS for state in STATES]
    assert all(row.is_usual for row in rows)
    assert len(rows) == len(STANDARD_RESPONSES) == 18


def test_what_the_site_tells_stands_before_what_is_usual() -> None:
    own = Response(signal="tamper", state="unset", sounders="all", message=True, told=("keyholder",))
    programme = Programme(responses=(own,), told=("household", "receiving centre"))
    row = response_to(programme, "tamper", "unset")
    assert (row.sounders, row.message, row.told, row.is_usual) == ("all", True, ("keyholder",), False)
    # Who gets a message that names nobody is whom the programme tells.
    assert response_to(programme, "fire", "unset").told == ("household", "receiving centre")
    assert response_to(programme, "fault", "unset").told == ()


@pytest.mark.parametrize("state", STATES)
def test_a_hold_up_is_silent_and_told_in_every_state(state: str) -> None:
    row = next(row for row in response_table(Programme()) if (row.signal, row.state) == ("hold-up", state))
    assert (row.sounders, row.message) == ("none", True)


def test_in_words_states_that_answer_alike_are_told_together() -> None:
    words = dict(response_words(Programme()))
    assert words["fire"] == "all sounders, household told, in every state"
    assert words["water"].startswith("inside sounders, household told when unset or part set; ")
    assert set(words) == set(SIGNALS)


def test_of_two_for_the_same_the_last_counts() -> None:
    own = tuple(
        Response(signal="water", state="set", sounders=sounders, message=True) for sounders in ("none", "all")
    )
    row = response_to(Programme(responses=own), "water", "set")
    assert (row.sounders, row.is_usual) == ("all", False)
