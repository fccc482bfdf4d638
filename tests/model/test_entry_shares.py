"""Rows of entry shares: what they may say, and that each says how weak it is."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from wardwright.model.entry_shares import EntryShare
from wardwright.store.catalogue import load_catalogue

ROWS = load_catalogue().entry_shares


def test_a_share_is_some_of_all() -> None:
    told = {"id": "x", "name": "x", "source": "own", "mark": "assumption"}
    assert EntryShare.model_validate(told | {"share": 1.0}).country is None
    for share in (0.0, 1.2, -0.1):
        with pytest.raises(ValidationError):
            EntryShare.model_validate(told | {"share": share})
    with pytest.raises(ValidationError):
        EntryShare.model_validate(told | {"share": 0.5, "country": "Britain"})


def test_every_row_is_marked_and_no_source_is_called_read() -> None:
    sources = {one.id: one for one in load_catalogue().sources}
    assert {row.mark for row in ROWS} <= {"published", "derived", "common practice", "assumption"}
    for row in ROWS:
        if row.source != "own":
            assert "not" in sources[row.source].seen
