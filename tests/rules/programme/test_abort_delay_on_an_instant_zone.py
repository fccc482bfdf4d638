"""PRG104: nobody comes in by an instant zone."""

from __future__ import annotations

from common.houses import CATALOGUE
from common.rule_houses.programme import WAITING, waiting
from wardwright.model.programme import Programme
from wardwright.rules.programme.abort_delay_on_an_instant_zone import abort_delay_on_an_instant_zone as rule
from wardwright.rules.registry import findings_of


def test_the_delay_is_the_number_and_the_trades_instant_the_mend() -> None:
    (found,) = findings_of(rule, waiting(25.0), CATALOGUE)
    assert found.estimate is not None
    assert (found.estimate.value, found.limit, found.severity) == (25.0, 0.0, "advise")
    assert (found.subject, found.related) == ("zone-1", ("fan",))
    assert found.mends[0].values == (("behaviour", "instant"),)


def test_without_a_delay_nothing_waits() -> None:
    assert findings_of(rule, waiting(0.0), CATALOGUE) == ()


def test_a_delay_that_nobody_told_is_not_none() -> None:
    (found,) = findings_of(rule, waiting(25.0).model_copy(update={"programme": Programme()}), CATALOGUE)
    assert (found.severity, found.message) == ("not run", "nobody told the abort delay")


def test_where_no_behaviour_is_better_there_is_no_mend() -> None:
    only = waiting(25.0).model_copy(update={"behaviours": (WAITING,)})
    (found,) = findings_of(rule, only, CATALOGUE)
    assert found.mends == ()
    assert found.cure == "Take the wait for the abort delay out of the behaviour waiting"
