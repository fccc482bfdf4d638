"""Long work: done beside the server's loop, watched step by step, and stopped between two of its steps."""

from __future__ import annotations

import logging
import threading
import time
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from uuid import uuid4

from wardwright.errors import InputError, JobError, Stopped
from wardwright.server.messages import Fault
from wardwright.server.work_messages import Result, State, WorkNews

LOG = logging.getLogger(__name__)
AT_ONCE = 2
"""How many pieces are done at a time; the others wait. [-]"""
KEPT = 50
"""Of how many that have ended it is known how. [-]"""
ENDED: tuple[State, ...] = ("done", "stopped", "failed")
UNEXPECTED = "something went wrong in the program itself"


class Work:
    """One piece of long work: what it is doing, how far it is, and how it ended.

    It is also what the work itself tells its steps to; these methods may be called from any thread.
    """

    def __init__(self, what: str, *, job: str, steps: int) -> None:
        self.id = uuid4().hex
        self.what = what
        self.job = job
        self.of = steps
        self.listeners: set[Callable[[], None]] = set()
        self._wanted = True
        self._state: State = "waiting"
        self._step = ""
        self._begun = 0
        self._since = self._until = time.monotonic()
        self._fault: Fault | None = None
        self._result: Result | None = None
        self._lock = threading.Lock()

    @property
    def has_ended(self) -> bool:
        """Whether nothing more comes."""
        return self._state in ENDED

    def is_stopped(self) -> bool:
        """Whether somebody wants no more of it."""
        return not self._wanted

    def step(self, doing: str) -> None:
        """Say what is done next; Stopped if somebody wants no more of it."""
        if self.is_stopped():
            raise Stopped("it was stopped")
        with self._lock:
            self._state, self._step = "running", doing
            self._begun += 1
        self._tell()

    def stop(self) -> None:
        """Want no more of it: it ends before its next step, and a child process that it waits for at once."""
        self._wanted = False
        self._tell()

    def end(self, state: State, *, fault: Fault | None = None, result: Result | None = None) -> None:
        """Say how it ended."""
        with self._lock:
            self._state, self._fault, self._result = state, fault, result
            self._until = time.monotonic()
        self._tell()

    def news(self) -> WorkNews:
        """How it stands."""
        with self._lock:
            until = self._until if self.has_ended else time.monotonic()
            return WorkNews(
                id=self.id,
                what=self.what,
                job=self.job,
                state=self._state,
                step=self._step,
                begun=self._begun,
                of=max(self.of, self._begun),
                seconds=round(until - self._since, 1),
                is_stopping=self.is_stopped() and not self.has_ended,
                fault=self._fault,
                result=self._result,
            )

    def _tell(self) -> None:
        for tell in tuple(self.listeners):
            tell()


class Works:
    """All long work of the server."""

    def __init__(self) -> None:
        self._pool = ThreadPoolExecutor(max_workers=AT_ONCE, thread_name_prefix="work")
        self._works: dict[str, Work] = {}
        self._lock = threading.Lock()

    def begin(self, what: str, do: Callable[[Work], Result], *, job: str = "", steps: int = 1) -> Work:
        """Have something done as soon as there is a hand free.

        Parameters
        ----------
        what : str
            What it is, for people.
        do : callable
            Does it; told of its steps is the `Work` that it is given.
        job : str, default ""
            The job that it is about.
        steps : int, default 1
            How many steps it is likely to have.

        Returns
        -------
        Work
            Waiting, or under way.
        """
        work = Work(what, job=job, steps=steps)
        with self._lock:
            ended = [one.id for one in self._works.values() if one.has_ended]
            for old in ended[: max(0, len(ended) - KEPT)]:
                del self._works[old]
            self._works[work.id] = work
        self._pool.submit(_done, work, do)
        return work

    def work(self, ident: str) -> Work:
        """The work of an id; JobError if there is none."""
        with self._lock:
            if ident not in self._works:
                raise JobError(
                    "there is no such work: the program was started again since, or it ended long ago",
                    where="work",
                    cure="Look at the list of jobs, and begin it again if it is not there",
                )
            return self._works[ident]

    def under_way(self) -> tuple[Work, ...]:
        """What has not ended, oldest first."""
        with self._lock:
            return tuple(one for one in self._works.values() if not one.has_ended)

    def close(self) -> None:
        """Stop all, and wait until it has."""
        for work in self.under_way():
            work.stop()
        self._pool.shutdown(wait=True, cancel_futures=True)


def _done(work: Work, do: Callable[[Work], Result]) -> None:
    try:
        if work.is_stopped():
            raise Stopped("it was stopped")  # noqa: TRY301 - as if it had been between two steps
        result = do(work)
    except Stopped:
        work.end("stopped")
    except InputError as fault:
        work.end("failed", fault=Fault(what=fault.what, where=fault.where, cure=fault.cure))
    except Exception as fault:
        # Whoever waits for it must hear of it; the fault itself goes to the server's own report.
        LOG.exception("%s", work.what)
        name = f"{UNEXPECTED} ({type(fault).__name__})"
        work.end("failed", fault=Fault(what=name, where=work.what, cure="Nothing was kept; please report it"))
    else:
        work.end("done", result=result)
