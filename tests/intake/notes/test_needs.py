from __future__ import annotations

import pytest

from common.cottage import add, read
from wardwright.errors import NotesError


def test_a_finding_is_accepted_with_its_reason() -> None:
    needs = read(
        'accept CTL101 unit because "there is no drier place"\naccept mov103 because "always shut"'
    ).needs
    told = [(one.rule, one.subject, one.because) for one in needs.accepted]
    assert told == [("CTL101", "unit", "there is no drier place"), ("MOV103", None, "always shut")]
    assert needs.grade == 2
    assert needs.basis_of("accepted") == "told"


def test_the_grade_may_be_told_or_dropped() -> None:
    assert read("grade 3").needs.grade == 3
    assert add("grade none").needs.grade is None


def test_notes_that_say_nothing_of_needs_leave_them_as_they_were() -> None:
    base = add("grade 1")
    assert base.needs.grade == 1
    assert add("person mother").needs.basis_of("grade") == "default"


@pytest.mark.parametrize(
    ("line", "what"),
    [
        ('accept hall because "so"', "'HALL' is no rule's code"),
        ("accept CTL101 unit", "nothing says why it is accepted"),
        ("accept CTL101 unit because", "the line ends where the reason, in quotes should follow"),
        ('accept CTL101 because "no"', "because cannot be so"),
        ("grade 5", "grade"),
        ("grade 2.5", "grade"),
    ],
)
def test_what_cannot_be_read_is_said(line: str, what: str) -> None:
    with pytest.raises(NotesError, match=what):
        read(line)
