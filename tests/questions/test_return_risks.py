"""What may bring fitters back: findings and answers, each counted once."""

from __future__ import annotations

from common.priced_room import priced_room
from wardwright.costing.return_visits import BEGINS
from wardwright.questions.return_risks import BY_ANSWER, TOO_SHORT, return_risks
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample, sample_names

CATALOGUE = load_catalogue()


def test_every_row_is_there() -> None:
    known = {row.id for row in CATALOGUE.figures}
    assert set(BY_ANSWER.values()) <= known
    assert all(one.startswith(BEGINS) for one in BY_ANSWER.values())


def test_an_entry_time_that_is_too_short_is_a_risk_and_a_longer_one_is_not() -> None:
    site = read_sample("terrace")

    def figures(entry_time_s: float) -> set[str]:
        programme = site.programme.model_copy(
            update={"entry_time_s": entry_time_s, "exit_time_s": max(45.0, 2 * entry_time_s)}
        )
        tried = site.model_copy(update={"programme": programme})
        return {one.figure for one in return_risks(tried, CATALOGUE)}

    assert TOO_SHORT in figures(5.0)
    assert TOO_SHORT not in figures(45.0)


def test_no_subject_is_counted_twice_for_one_reason() -> None:
    for name in sample_names():
        found = [(one.subject, one.figure) for one in return_risks(read_sample(name), CATALOGUE)]
        assert len(found) == len(set(found))


def test_a_room_without_a_fault_has_no_risk() -> None:
    assert return_risks(priced_room(), CATALOGUE) == ()
