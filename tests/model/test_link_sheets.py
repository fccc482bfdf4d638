"""What sheets say of links."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from wardwright.model.link_sheets import RadioSheet, TransmitterSheet


def test_what_a_sheet_leaves_out_of_its_radio_is_not_known() -> None:
    radio = RadioSheet()
    assert (radio.power_dbm, radio.sensitivity_dbm, radio.jamming_told_s) == (None, None, None)


def test_a_message_path_needs_a_way_out() -> None:
    with pytest.raises(ValidationError):
        TransmitterSheet(paths=())
