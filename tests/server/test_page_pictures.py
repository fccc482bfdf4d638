from __future__ import annotations

import struct
import zlib

import numpy as np
import pytest

from common.fitted import DAY, fitted
from wardwright.documents.content.forms.label_sheet import label_sheet
from wardwright.documents.writers.pdf import write_pdf
from wardwright.errors import InputError
from wardwright.server.page_pictures import WIDEST_PX, page_picture, page_sizes
from wardwright.store.catalogue import load_catalogue
from wardwright.store.fonts import font_folder

PDF = write_pdf(label_sheet(fitted(), load_catalogue(), drawn_up=DAY), font_folder=font_folder())


def unpacked(png: bytes) -> np.ndarray:  # type: ignore[type-arg]
    """The colours of a PNG without filters, shape (height, width, 3), its check sums held against its content."""
    assert png[:8] == b"\x89PNG\r\n\x1a\n"
    at, data, size = 8, b"", (0, 0)
    while at < len(png):
        (length,) = struct.unpack(">I", png[at : at + 4])
        name, content = png[at + 4 : at + 8], png[at + 8 : at + 8 + length]
        assert struct.unpack(">I", png[at + 8 + length : at + 12 + length])[0] == zlib.crc32(name + content)
        if name == b"IHDR":
            size = struct.unpack(">II", content[:8])
        if name == b"IDAT":
            data += content
        at += 12 + length
    rows = np.frombuffer(zlib.decompress(data), dtype=np.uint8).reshape(size[1], 1 + 3 * size[0])
    assert not rows[:, 0].any()
    return rows[:, 1:].reshape(size[1], size[0], 3)


def test_a_page_is_as_large_as_its_paper() -> None:
    assert [(round(one.width_mm), round(one.height_mm)) for one in page_sizes(PDF)][:1] == [(210, 297)]


def test_a_picture_is_as_wide_as_asked_and_shows_ink_on_paper() -> None:
    colours = unpacked(page_picture(PDF, 1, width_px=420))
    assert colours.shape == pytest.approx((594, 420, 3), abs=1)
    share = (colours.min(axis=2) < 128).mean()
    assert 0.002 < share < 0.5
    assert (colours[0] == 255).all()  # the edge of the paper


def test_a_picture_is_never_wider_than_the_widest() -> None:
    png = page_picture(PDF, 1, width_px=100_000)
    assert struct.unpack(">I", png[16:20])[0] <= WIDEST_PX + 1


@pytest.mark.parametrize(("number", "width"), [(0, 400), (len(page_sizes(PDF)) + 1, 400), (1, 0)])
def test_a_page_or_a_width_that_is_not_there_is_refused(number: int, width: int) -> None:
    with pytest.raises(InputError):
        page_picture(PDF, number, width_px=width)
