"""What goes over the wire about long work, about what is handed in, and about what is kept beside a house."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.documents.content.changes_told import ToldChange
from wardwright.documents.content.round_told import ToldRound
from wardwright.documents.content.signed import DifferentAnswer
from wardwright.intake.report import IntakeReport, PremisesChoice
from wardwright.model.record import Record
from wardwright.server.messages import Fault

State = Literal["waiting", "running", "done", "stopped", "failed"]


class BroughtIn(Record):
    """A house that was brought in, or the question that must be answered first."""

    kind: Literal["brought-in"] = "brought-in"
    file: str
    """The job that was made; empty: none yet, since somebody must choose."""
    choices: tuple[PremisesChoice, ...]
    """Premises to choose from; empty where there is nothing to choose."""
    name: str
    counts: tuple[str, ...]
    """How much of each kind the house has, such as `2 storeys`."""
    report: IntakeReport | None
    """What its reader has to say; None where it was made of text."""
    noted: tuple[str, ...]
    """What does not quite fit together, and stops no answer."""
    worth_adding: tuple[str, ...]


class SignedLine(Record):
    """What somebody put their name to."""

    kind: Literal["signed"] = "signed"
    number: int
    revision: int
    at: str
    author: str
    what: str
    program: str
    answers: int
    """How many were signed. [-]"""
    findings: int
    is_same_house: bool
    """Whether the house is still as it was signed."""
    is_same_program: bool
    """Whether the same version of the program and the same rows of data are at work."""


class SinceSigned(Record):
    """Answers as they were signed, held against today's."""

    kind: Literal["since-signed"] = "since-signed"
    number: int
    same: int
    """How many answers and findings are as they were signed. [-]"""
    answers: tuple[DifferentAnswer, ...]
    findings: tuple[DifferentAnswer, ...]
    house: tuple[ToldChange, ...]
    """What is another about the house."""
    program: tuple[str, ...]
    """What is another about the program and its data."""
    tests: ToldRound
    """What must be tested again because of what is another about the house."""


class SentInPart(Record):
    """One part of what came of a campaign: texts, points, a table, a drawing."""

    heading: str
    text: tuple[str, ...]
    points: tuple[str, ...]
    headings: tuple[str, ...]
    """Of the table; empty: there is none."""
    rows: tuple[tuple[str, ...], ...]
    drawing: str
    """As SVG; empty: there is none."""


class SentIn(Record):
    """What seeded intruders did: for the fitter alone."""

    kind: Literal["sent-in"] = "sent-in"
    revision: int
    """Of the house that they were sent into."""
    trials: int
    parts: tuple[SentInPart, ...]
    lost: dict[str, str]
    """By storey: the ways on which the design loses, as SVG groups."""
    least: dict[str, str]
    """By storey: the least-detected paths, as SVG groups."""


Result = Annotated[BroughtIn | SignedLine | SinceSigned | SentIn, Field(discriminator="kind")]


class WorkNews(Record):
    """How a piece of long work stands."""

    kind: Literal["work"] = "work"
    id: str
    what: str
    job: str
    """The job that it is about; empty: none yet."""
    state: State
    step: str
    """What it is doing."""
    begun: int
    """How many steps were begun. [-]"""
    of: int
    """How many there are likely to be. [-]"""
    seconds: float
    """Since it was asked for. [s]"""
    is_stopping: bool
    """Whether it was told to stop, and has not yet."""
    fault: Fault | None
    result: Result | None


class HandedIn(Record):
    """A file that was handed in, held until a house is made of it."""

    id: str
    name: str
    size_bytes: int


class HandedInLimits(Record):
    """What may be handed in."""

    largest_by_ending: dict[str, int]
    """How long a file may be, by how its name ends. [bytes]"""
    largest_attachment: int
    """[bytes]"""
    units: tuple[str, ...]
    """What one unit of a drawing may be."""


class IntakeWish(Record):
    """Make a job of what was handed in."""

    file: str
    """Id of the file."""
    notes: str | None = None
    """Id of the notes beside it."""
    premises: str | None = None
    """None: nobody said, so that it is asked where there are several. Empty: the whole building."""
    unit: Literal["mm", "cm", "m", "inch", "foot"] | None = None


class AttachmentLine(Record):
    """Something attached to a job."""

    number: int
    name: str
    kind: str
    about: str
    """Key of what it is about, such as `devices/hall-movement`; empty: the job as a whole."""
    about_name: str
    """What people call that."""
    at: str
    author: str
    note: str
    size_bytes: int
    starred_lines: int
    removed_at: str
    """Empty: it is there."""
    removed_by: str


class AttachmentChange(Record):
    """Take an attachment away, or put it back."""

    what: Literal["removed", "put back"]
    author: Annotated[str, Field(min_length=1, max_length=60)]


class CampaignWish(Record):
    """Send seeded intruders in."""

    trials: Annotated[int, Field(ge=100, le=200_000)]


class SigningWish(Record):
    """Sign the answers of the revision that was seen."""

    revision: int
    author: Annotated[str, Field(max_length=200)]
    what: Annotated[str, Field(max_length=1000)] = ""
