"""The three classes of copy: whom each is for, what it is called, and what it must not hold."""

from __future__ import annotations

from typing import NamedTuple

from wardwright.documents.content.paper import CopyClass
from wardwright.documents.content.wording import COPY_CLASS, COPY_WARNING


class CopyWords(NamedTuple):
    """How one class of copy is told."""

    folder: str
    """The name of its folder."""
    stamp: str
    warning: str


COPIES: dict[CopyClass, CopyWords] = {
    "fitter": CopyWords("fitter", COPY_CLASS, COPY_WARNING),
    "client": CopyWords(
        "client-confidential",
        "Client\u2019s copy, confidential",
        "This says what is protected and what is not. Keep it under lock, and give it to nobody.",
    ),
    "open": CopyWords(
        "open",
        "For the customer\u2019s files",
        "This may lie with the papers of the house: it tells no times, no gaps and not where the control unit is.",
    ),
}
"""The fitter's holds all. The client's tells unprotected rooms and openings in words, never times, ways, shapes or
the control unit's place. The open one tells none of these."""
