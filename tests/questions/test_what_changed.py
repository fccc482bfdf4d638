from __future__ import annotations

from common.houses import CATALOGUE, one_room
from wardwright.questions.what_changed import NUMBER, answers


def test_a_house_alone_has_nothing_to_be_compared_with_and_is_told_how() -> None:
    (found,) = answers(one_room(), CATALOGUE)
    assert (found.question, found.verdict, found.estimate) == (NUMBER, "unknown", None)
    assert found.reason is not None
    assert found.reason.startswith("not computable: nothing to compare with")
    assert "wardwright compare A B" in found.reason
