from __future__ import annotations

import pytest

from wardwright.model.limits import Limit
from wardwright.rules.held_to import severity_by


@pytest.mark.parametrize(
    ("facts", "severity"),
    [
        ({"mark": "published"}, "advise"),
        ({"mark": "common practice"}, "advise"),
        ({"mark": "from memory"}, "check with the standard"),
        ({"mark": "published", "is_disputed": True}, "check with the standard"),
    ],
)
def test_what_is_remembered_or_disputed_is_to_be_checked(facts: dict[str, object], severity: str) -> None:
    limit = Limit.model_validate({"id": "l", "name": "l", "value": 1.0, "unit": "m", "source": "own"} | facts)
    assert severity_by(limit) == severity
