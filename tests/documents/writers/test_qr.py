from __future__ import annotations

import re

from wardwright.documents.writers.qr import qr_svg


def test_the_same_text_gives_the_same_picture_with_its_rim() -> None:
    qr_svg.cache_clear()
    first = qr_svg("MD1 Küche")
    qr_svg.cache_clear()
    assert qr_svg("MD1 Küche") == first
    width = re.search(r'width="(\d+)"', first)
    assert width is not None
    assert (int(width[1]) - 8 - 17) % 4 == 0, "whole squares of a version, and four of rim on each side"


def test_the_text_itself_is_not_written_in_the_picture() -> None:
    assert "Hall" not in qr_svg("MD1 Hall")
