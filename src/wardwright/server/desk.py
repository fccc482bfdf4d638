"""A job that is open on the server: its file, what was last worked out of it, and who looks at it."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable, Sequence
from functools import lru_cache
from typing import NamedTuple, TypeVar

from wardwright.documents.content.board import (
    BoardAnswer,
    BoardFinding,
    board_answers,
    board_findings,
    chosen_of,
    key_of,
)
from wardwright.documents.content.comparison import comparison
from wardwright.documents.content.screen import house_drawing, overlay, strip_of
from wardwright.documents.drawing.devices import device_tags
from wardwright.documents.writers.svg import fragment_svg, inline_svg
from wardwright.errors import InputError
from wardwright.model.catalogue import Catalogue
from wardwright.model.changes import Change, differences
from wardwright.model.document import plain_record
from wardwright.model.edits import Operation, edited
from wardwright.model.fixture import Outlet
from wardwright.model.record import Record
from wardwright.model.site import Site
from wardwright.model.validation import sound
from wardwright.questions.answer import Answer
from wardwright.questions.changes_since import changes_since
from wardwright.questions.compared import State
from wardwright.questions.table import ask, ask_in_hand, worst_first
from wardwright.rules.finding import Finding
from wardwright.rules.table import check, check_in_hand, that_wait
from wardwright.server.last_signed import LastSigned
from wardwright.server.messages import Board, Changed, Compared, WalkLine
from wardwright.store.jobs.job import Job
from wardwright.trials.campaign.results import CampaignReport

Found = TypeVar("Found")


class Seen(NamedTuple):
    """What one page was sent last, so that only what is another is sent again."""

    answers: dict[str, BoardAnswer]
    findings: tuple[BoardFinding, ...] | None
    asked: tuple[Answer, ...] = ()
    """The answers to all questions when all were last asked."""
    checked: tuple[Finding, ...] = ()
    """The findings of all rules when all were last run."""


class Desk:
    """An open job. Answers are worked out by one thread at a time: the engines remember for all."""

    def __init__(self, job: Job, catalogue: Catalogue) -> None:
        self.job = job
        self.catalogue = catalogue
        self.listeners: set[Callable[[int], None]] = set()
        self.sent_in: tuple[int, CampaignReport] | None = None
        """What came of the last campaign of seeded intruders, and the revision of the house that they came to."""
        self._lock = threading.Lock()
        self._last_signed = LastSigned(job, catalogue)

    def checked(self, site: Site) -> Site:
        """The site, if it holds together."""
        return sound(site, where="the house", catalogue=self.catalogue)

    def worked_out(self, work: Callable[[], Found]) -> Found:
        """What comes of some work on the house, done while nobody else works anything out."""
        with self._lock:
            return work()

    def answers_to(self, number: int, site: Site) -> tuple[Answer, ...]:
        """The answers to one question, of any state of the house; nobody else waits longer than that takes."""
        with self._lock:
            return ask(site, self.catalogue, (number,))

    def findings_of(self, site: Site) -> tuple[Finding, ...]:
        """The findings of any state of the house."""
        with self._lock:
            return check(site, self.catalogue)

    def houses(self, site: Site) -> dict[str, str]:
        """The house of each storey, without devices, as SVG groups."""
        return _houses(site.bare, site.outlets, self.catalogue)

    def changed(self, before: int, after: int) -> tuple[Changed, ...]:
        """The records that differ between two revisions, as they are in the later one."""
        return tuple(plain(one) for one in differences(self.job.site(before), self.job.site(after)))

    def comparison(self, before: int) -> Compared:
        """What became of the house, its answers and its findings since a revision."""
        after = self.job.newest
        old, new = self.state(before), self.state(after)
        with self._lock:
            found = changes_since(old, new, self.catalogue)
        told = comparison(old, new, self.catalogue, found=found)
        return Compared(before=before, after=after, comparison=told)

    def state(self, revision: int | None = None) -> State:
        """The house at a revision, or as it is now, with all that is said of it."""
        site = self.job.site(revision)
        with self._lock:
            return self._asked(site)

    def board(
        self,
        seen: Seen,
        *,
        show: str | None,
        trial: tuple[int, tuple[Operation, ...]] | None = None,
        is_in_hand: bool = False,
    ) -> tuple[Board, Seen]:
        """Work out what a page is to show.

        Parameters
        ----------
        seen : Seen
            What it was sent last.
        show : str or None
            Key of the answer that it shows.
        trial : tuple of int and operations, optional
            What is tried on the newest site, and the number of the trial.
        is_in_hand : bool, default False
            Whether what is tried goes on moving: then only what follows the hand is asked, once all was asked before.

        Returns
        -------
        Board, Seen
            What to send, and what the page then has.
        """
        with self._lock:
            revision = self.job.newest
            number = None if trial is None else trial[0]
            start = time.perf_counter()
            try:
                kept = self.job.site(revision)
                site = kept if trial is None else self.checked(edited(kept, trial[1]))
                if is_in_hand and seen.asked:
                    asked, waiting, findings = self._in_hand(site, kept, seen)
                else:
                    _, asked, findings = self._asked(site)
                    waiting = ()
            except InputError as fault:
                return _without(revision, number, f"{fault.what}. {fault.cure}."), seen
            worked_out = time.perf_counter()
            answers = worst_first((*asked, *waiting))
            told = {one.key: one for one in board_answers(site, self.catalogue, asked)}
            told |= {key: seen.answers[key] for key in map(key_of, waiting)}
            found = board_findings(site, self.catalogue, findings)
            over = overlay(site, self.catalogue, answers, key=show, over=kept)
            strip = strip_of(answers, self.catalogue, key=show)
            board = Board(
                revision=revision,
                number=number,
                order=tuple(key_of(one) for one in answers),
                answers=tuple(one for key, one in told.items() if seen.answers.get(key) != one),
                waiting=tuple(key_of(one) for one in waiting),
                findings=None if found == seen.findings else found,
                tags=tags_of(site, self.catalogue),
                overlays={name: fragment_svg(drawing) for name, drawing in over.items()},
                strip="" if strip is None else inline_svg(strip, drawn=set()),
                walk=walk_of(answers, key=show),
                engine_ms=round((worked_out - start) * 1e3, 2),
                drawing_ms=round((time.perf_counter() - worked_out) * 1e3, 2),
                fault="",
            )
            if waiting:
                return board, seen._replace(answers=told, findings=found)
            return board, Seen(told, found, answers, findings)

    def _asked(self, site: Site) -> State:
        """All that is said of a state of the house, held against what was signed last."""
        told = State(site, ask(site, self.catalogue), check(site, self.catalogue))
        return told._replace(answers=self._last_signed.answered(told))

    def _in_hand(
        self, site: Site, kept: Site, seen: Seen
    ) -> tuple[tuple[Answer, ...], tuple[Answer, ...], tuple[Finding, ...]]:
        """The answers to what follows the hand, those from before that wait, and findings of both sorts."""
        has_moved = site.bare != kept.bare
        asked = ask_in_hand(site, self.catalogue, has_house_moved=has_moved)
        numbers = {one.question for one in asked}
        waiting = tuple(one for one in seen.asked if one.question not in numbers)
        codes = that_wait(has_house_moved=has_moved)
        before = [one for one in seen.checked if one.code in codes]
        found = check_in_hand(site, self.catalogue, has_house_moved=has_moved)
        return asked, waiting, tuple(sorted((*found, *before), key=lambda one: one.code))


@lru_cache(maxsize=16)
def _houses(bare: Site, outlets: tuple[Outlet, ...], catalogue: Catalogue) -> dict[str, str]:
    """Remembered by the house alone: an edit of a device draws none of it anew."""
    site = bare.model_copy(update={"outlets": outlets})
    return {storey.id: fragment_svg(house_drawing(site, catalogue, storey.id)) for storey in site.storeys}


def _without(revision: int, number: int | None, fault: str) -> Board:
    return Board(
        revision=revision,
        number=number,
        order=(),
        answers=(),
        waiting=(),
        findings=None,
        tags={},
        overlays={},
        strip="",
        walk=(),
        engine_ms=0.0,
        drawing_ms=0.0,
        fault=fault,
    )


def walk_of(answers: Sequence[Answer], *, key: str | None) -> tuple[WalkLine, ...]:
    """The walk of one answer, stretch by stretch."""
    chosen = chosen_of(answers, key)
    sketches = () if chosen is None else chosen.sketches
    return tuple(
        WalkLine(storey=one.storey, points=one.points, times_s=one.times_s)
        for one in sketches
        if one.role == "walk" and len(one.times_s) == len(one.points) > 1
    )


def tags_of(site: Site, catalogue: Catalogue) -> dict[str, str]:
    """The letters of every device on the plan."""
    return {name: tag.text for name, tag in device_tags(site, catalogue).items()}


def plain(change: Change) -> Changed:
    """One change as it goes over the wire."""
    record = change.after
    if isinstance(record, Record):
        record = plain_record(record)
    return Changed(key=change.key, record=record)
