"""The pages of a PDF as pictures, to be looked at where there is no reader of PDFs, such as in a browser's page."""

from __future__ import annotations

import struct
import threading
import zlib
from typing import NamedTuple

import numpy as np
import pypdfium2 as pdfium

from wardwright.errors import InputError

MM_PER_POINT = 25.4 / 72.0
WIDEST_PX = 2400
"""So wide a picture is made at most. [px]"""
_ONE_AT_A_TIME = threading.Lock()
# The library keeps state of its own.


class PageSize(NamedTuple):
    """One page."""

    width_mm: float
    height_mm: float


def page_sizes(pdf: bytes) -> tuple[PageSize, ...]:
    """How large each page of a PDF is. [mm]"""
    with _ONE_AT_A_TIME:
        document = pdfium.PdfDocument(pdf)
        try:
            return tuple(
                PageSize(round(width * MM_PER_POINT, 1), round(height * MM_PER_POINT, 1))
                for width, height in (document.get_page_size(i) for i in range(len(document)))
            )
        finally:
            document.close()


def page_picture(pdf: bytes, number: int, *, width_px: int) -> bytes:
    """One page as a picture.

    Parameters
    ----------
    pdf : bytes
        The paper.
    number : int
        Which page, from 1. [-]
    width_px : int
        How wide the picture is; it is never made wider than `WIDEST_PX`. [px]

    Returns
    -------
    bytes
        A PNG in three colours.

    Raises
    ------
    InputError
        If the paper has no such page, or the width is none.
    """
    if not width_px >= 1:
        raise InputError(
            "a picture has to be one picture element wide at least", where="width", cure="Ask for more"
        )
    with _ONE_AT_A_TIME:
        document = pdfium.PdfDocument(pdf)
        try:
            if not 1 <= number <= len(document):
                raise InputError(
                    f"the paper has {len(document)} pages",
                    where=f"page {number}",
                    cure="Ask for one of these",
                )
            page = document[number - 1]
            scale = min(width_px, WIDEST_PX) / page.get_width()
            drawn = page.render(scale=scale, rev_byteorder=True)
            colours = np.ascontiguousarray(drawn.to_numpy()[:, :, :3])
        finally:
            document.close()
    return _png(colours)


def _png(colours: np.ndarray[tuple[int, ...], np.dtype[np.uint8]]) -> bytes:
    """A picture of shape (height, width, 3) in the simplest form of its standard (ISO/IEC 15948)."""
    height, width, _ = colours.shape
    # Before each row stands which filter it has: none.
    rows = np.zeros((height, 1 + 3 * width), dtype=np.uint8)
    rows[:, 1:] = colours.reshape(height, -1)
    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    parts = ((b"IHDR", head), (b"IDAT", zlib.compress(rows.tobytes(), 6)), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(
        struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
        for name, data in parts
    )
