"""Question 20 in the app: today's house held against what was signed last, as it was kept."""

from __future__ import annotations

from wardwright import __version__
from wardwright.model.catalogue import Catalogue
from wardwright.questions.answer import Answer, about_the_site
from wardwright.questions.as_signed import read_answers, read_findings
from wardwright.questions.changes_since import answer_since
from wardwright.questions.compared import State
from wardwright.questions.table import worst_first
from wardwright.questions.what_changed import MEASURE, NUMBER
from wardwright.store.jobs.job import Job
from wardwright.store.jobs.signatures import digest_of, newest_signed, signed_at

NOT_SIGNED = "nothing was signed yet; what is signed under Hand over, later states are held against"
OTHER_PROGRAM = "it was signed by another program or on other rows of data: compare it under Hand over"


class LastSigned:
    """What was signed last of a job; read once, since signing adds and changes nothing."""

    def __init__(self, job: Job, catalogue: Catalogue) -> None:
        self._job = job
        self._catalogue = catalogue
        self._number: int | None = None
        self._state: State | str = NOT_SIGNED
        self._since = ""

    def answered(self, state: State) -> tuple[Answer, ...]:
        """The answers of a state of the house, question 20 held against what was signed last; worst first."""
        others = tuple(one for one in state.answers if one.question != NUMBER)
        if len(others) == len(state.answers):
            return state.answers
        before = self._before()
        if isinstance(before, str):
            found = about_the_site(NUMBER, MEASURE, site=state.site, reason=before)
        else:
            found = answer_since(before, state, self._catalogue, since=self._since)
        return worst_first((*others, found))

    def _before(self) -> State | str:
        newest = newest_signed(self._job)
        if newest is not None and newest != self._number:
            one = signed_at(self._job, newest)
            answers, findings = read_answers(one.answers), read_findings(one.findings)
            is_ours = (one.program, one.catalogue) == (__version__, digest_of(self._catalogue))
            self._state = (
                State(
                    self._job.site(one.revision),
                    tuple(each for each in answers.values() if each is not None),
                    tuple(each for each in findings.values() if each is not None),
                )
                if is_ours
                else OTHER_PROGRAM
            )
            self._number, self._since = newest, f"revision {one.revision}, as signed"
        return self._state
