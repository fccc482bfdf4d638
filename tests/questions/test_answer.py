import pytest
from pydantic import ValidationError

from wardwright.questions.answer import Answer, PartAnswer


def test_an_answer_is_frozen_and_compared_by_value() -> None:
    facts = {
        "question": 1, "subject": "door", "subject_id": "door", "measure": "time", "estimate": None,
        "reason": "nothing would notice", "verdict": "bad",
    }  # fmt: skip
    one, two = Answer.model_validate(facts), Answer.model_validate(facts)
    assert one == two
    assert one != two.model_copy(update={"parts": (PartAnswer(name="x", estimate=None),)})
    with pytest.raises(ValidationError, match="frozen"):
        one.reason = "other"  # type: ignore[misc] # that it cannot be done is the test
    with pytest.raises(ValidationError):
        Answer.model_validate(facts | {"verdict": "fine"})
