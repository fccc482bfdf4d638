from __future__ import annotations

from wardwright.model.programme import STANDARD_RESPONSES, Programme, Response
from wardwright.trials.responses import response_table


def test_what_is_not_told_follows_the_usual() -> None:
    rows = response_table(Programme())
    assert len(rows) == len(STANDARD_RESPONSES)
    assert all(row.is_usual for row in rows)


def test_of_two_for_the_same_the_last_counts() -> None:
    own = tuple(
        Response(signal="water", state="set", sounders=sounders, message=True) for sounders in ("none", "all")
    )
    row = next(r for r in response_table(Programme(responses=own)) if (r.signal, r.state) == ("water", "set"))
    assert (row.sounders, row.is_usual) == ("all", False)
