"""What the user wants of the alarm, and which findings they live with."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from wardwright.model.camera_rows import CameraEdition
from wardwright.model.record import Id, Marked


class Accepted(Marked):
    """A finding that the user has seen and lives with: it is listed apart, with the reason."""

    rule: Annotated[str, Field(pattern=r"^[A-Z]{3}[1-9][0-9]{2}$")]
    """The rule's code."""
    subject: Id | None = None
    """The thing it is about; None: everything that the rule finds."""
    because: Annotated[str, Field(min_length=3, max_length=300)]


class Needs(Marked):
    """What the user wants of the alarm. A default need may be dropped: give None."""

    grade: Annotated[int, Field(ge=1, le=4)] | None = 2
    """The security grade aimed at; None: no grade is aimed at."""
    check_in_by_grade: bool = True
    """Whether radio devices are to check in as often as the grade asks."""
    camera_edition: CameraEdition = "2014"
    """The edition of IEC 62676-4 whose task words cameras are held to."""
    accepted: tuple[Accepted, ...] = ()
