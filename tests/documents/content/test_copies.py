from __future__ import annotations

from typing import get_args

from wardwright.documents.content.copies import COPIES
from wardwright.documents.content.paper import CopyClass


def test_each_class_has_a_folder_a_stamp_and_a_warning_of_its_own() -> None:
    assert tuple(COPIES) == get_args(CopyClass)
    for field in range(3):
        words = [copy[field] for copy in COPIES.values()]
        assert all(words)
        assert len(set(words)) == len(COPIES)
