import pytest
from pydantic import ValidationError

from wardwright.model.needs import Accepted, Needs


def test_grade_two_is_aimed_at_unless_dropped() -> None:
    assert Needs().grade == 2
    assert Needs().basis_of("grade") == "default"
    assert Needs(grade=None).grade is None


def test_a_finding_is_accepted_only_with_a_reason() -> None:
    assert Accepted(rule="CTL101", because="no other socket").subject is None
    for wrong in (
        {"rule": "CTL101"},
        {"rule": "CTL101", "because": ""},
        {"rule": "ctl", "because": "no reason"},
    ):
        with pytest.raises(ValidationError):
            Accepted.model_validate(wrong)
