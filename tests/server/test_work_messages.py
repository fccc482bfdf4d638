from __future__ import annotations

import pytest
from pydantic import ValidationError

from wardwright.server.work_messages import AttachmentChange, IntakeWish, SigningWish


@pytest.mark.parametrize(
    ("kind", "said"),
    [
        (IntakeWish, {"file": "a", "unit": "furlong"}),
        (IntakeWish, {"file": "a", "more": 1}),
        (AttachmentChange, {"what": "burnt", "author": "me"}),
        (AttachmentChange, {"what": "removed", "author": ""}),
        (SigningWish, {"author": "me"}),
    ],
)
def test_a_wish_that_makes_no_sense_is_refused(kind: type[IntakeWish], said: dict[str, object]) -> None:
    with pytest.raises(ValidationError):
        kind.model_validate(said)
