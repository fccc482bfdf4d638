from __future__ import annotations

import pytest
from pydantic import ValidationError

from wardwright.server.office_messages import OfficeSaid
from wardwright.store.firms import sample_firm


def test_amounts_travel_as_their_own_text() -> None:
    said = OfficeSaid(firm=sample_firm("example-alarms"), prices=None, fault=None).model_dump(mode="json")
    assert said["firm"]["rates"]["labour_per_hour"] == "48.00"
    assert OfficeSaid.model_validate_json(OfficeSaid.model_validate(said).model_dump_json()).firm is not None


def test_a_message_with_an_unknown_key_is_refused() -> None:
    with pytest.raises(ValidationError):
        OfficeSaid.model_validate({"firm": None, "prices": None, "fault": None, "more": 1})
