"""What goes over the wire: the form of every request and answer, from which the page's types are made."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import Field

from wardwright.documents.content.battery_days import BatteryDay
from wardwright.documents.content.board import BoardAnswer, BoardFinding, BoardQuestion
from wardwright.documents.content.care_list import CareList
from wardwright.documents.content.comparison import Comparison
from wardwright.documents.content.fitting_stages import FitStage
from wardwright.documents.content.proving_stops import ProveRound
from wardwright.documents.content.screen import ScreenStorey
from wardwright.model.edits import Operation
from wardwright.model.record import Record
from wardwright.works.site_result import Outcome, Step


class JobLine(Record):
    """A job in the list of jobs."""

    file: str
    name: str
    """What the house is called; empty where the job cannot be opened."""
    revision: int
    fault: str
    """Why it cannot be opened; empty where it can."""


class NewJob(Record):
    """A job to be made."""

    file: str
    sample: str | None = None
    document: dict[str, Any] | None = None


class Opened(Record):
    """An open job as the page begins with it."""

    file: str
    revision: int
    site: dict[str, Any]
    """The site document."""
    storeys: tuple[ScreenStorey, ...]
    houses: dict[str, str]
    """By storey: the house without its devices, as SVG groups."""
    tags: dict[str, str]
    """By device: its letters on the plan."""
    stylesheet: str
    """The inks of every drawing."""
    questions: tuple[BoardQuestion, ...]


class Changed(Record):
    """One record that is another now."""

    key: str
    record: Any | None
    """None: it is gone."""


class Taken(Record):
    """An edit that was taken, or had been before."""

    revision: int
    changed: tuple[Changed, ...]


class Refused(Record):
    """An edit that was not taken, because somebody else changed the same things since."""

    revision: int
    keys: tuple[str, ...]
    by: tuple[str, ...]
    changed: tuple[Changed, ...]
    """All that is another since the revision that the edit stood on."""


class UndoWish(Record):
    """Take back the author's last edit."""

    id: str
    author: str
    base: int
    """The revision that was seen: what changed since comes back."""


class HistoryLine(Record):
    """One revision in the list of revisions."""

    number: int
    author: str
    at: str
    what: str
    undoes: int | None


class Compared(Record):
    """Two revisions set against each other."""

    before: int
    after: int
    comparison: Comparison


class LaterSteps(Record):
    """What the steps after the design are about."""

    revision: int
    fit: tuple[FitStage, ...]
    prove: ProveRound | None
    """None: there is no device to test."""
    care: CareList
    batteries: tuple[BatteryDay, ...]


class Drawn(Record):
    """What a test draws on the plan."""

    revision: int
    storeys: dict[str, str]
    """By storey, as SVG groups."""


class GivesWay(Record):
    """How far one device may be fixed from its place, tried on the model."""

    device: str
    revision: int
    ways: tuple[str, ...]
    """A sentence for each way; empty: it is bound to its place."""


class ResultWish(Record):
    """Write down that a device is fitted, or what came of a test."""

    id: Annotated[str, Field(min_length=1, max_length=80)]
    """Names it: sent again it changes nothing."""
    step: Step
    key: Annotated[str, Field(min_length=1, max_length=300)]
    """Id of the device, or what the test is known by."""
    outcome: Outcome
    revision: int
    """Of the house that was seen."""
    author: Annotated[str, Field(max_length=200)]
    reading: Annotated[str, Field(max_length=1000)] = ""
    remark: Annotated[str, Field(max_length=2000)] = ""
    seen: int = 0
    """Number of what was seen to be written down of it last; 0: nothing was."""


class Fault(Record):
    """A request that cannot be granted, in plain words."""

    what: str
    where: str
    cure: str


class Show(Record):
    """From the page: which answer it shows now; none: where anybody is noticed."""

    kind: Literal["show"] = "show"
    key: str | None


class Try(Record):
    """From the page: what would the answers be with this done? Nothing is kept; the latest wins."""

    kind: Literal["try"] = "try"
    number: int
    operations: tuple[Operation, ...]


class WalkLine(Record):
    """A stretch of a walk on one storey, with its clock."""

    storey: str
    points: tuple[tuple[float, float], ...]
    """On the plan. [m]"""
    times_s: tuple[float, ...]
    """When it is there, in the likely case. [s]"""


class Board(Record):
    """To the page: what stands beside the plan and over it. Only answers that are others than sent last are in it."""

    kind: Literal["board"] = "board"
    revision: int
    number: int | None
    """Of the trial that it answers; None: it is of the house as kept."""
    order: tuple[str, ...]
    """Keys of all answers, worst first."""
    answers: tuple[BoardAnswer, ...]
    waiting: tuple[str, ...]
    """Keys of the answers from before: their questions are asked again once what is tried stands still."""
    findings: tuple[BoardFinding, ...] | None
    """None: as sent last."""
    tags: dict[str, str]
    """By device: its letters on the plan."""
    overlays: dict[str, str]
    """By storey: what lies over the house, as SVG groups."""
    strip: str
    """The strip of time of the answer that is shown, as SVG; empty: it has none."""
    walk: tuple[WalkLine, ...]
    """The walk of the answer that is shown, for playing; empty: it has none."""
    engine_ms: float
    """How long the answers took to work out. [ms]"""
    drawing_ms: float
    """How long they took to put into words and ink. [ms]"""
    fault: str
    """Why a trial cannot be answered; empty where it can."""


class News(Record):
    """To the page: somebody's edit was kept."""

    kind: Literal["news"] = "news"
    revision: int
    author: str
    what: str
    changed: tuple[Changed, ...]
    storeys: tuple[ScreenStorey, ...]
    """How they lie on the screen now."""
    houses: dict[str, str]
    """By storey: the house drawn anew, where it changed."""


class PaperPage(Record):
    """One page of a paper, before a picture of it is asked for."""

    width_mm: float
    height_mm: float
