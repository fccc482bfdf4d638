from __future__ import annotations

from pathlib import Path

import pytest

from wardwright.errors import Stopped
from wardwright.server.desk import Desk
from wardwright.server.signing import STEPS, told_of
from wardwright.server.work import Work
from wardwright.store.catalogue import load_catalogue
from wardwright.store.jobs.opening import new_job
from wardwright.store.samples import read_sample


def test_a_house_is_asked_a_question_a_step_and_can_be_left_between_two(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", read_sample("terrace"), author="me") as job:
        desk = Desk(job, load_catalogue())
        work = Work("asking", job="a.job", steps=STEPS)
        said: list[str] = []
        work.listeners.add(lambda: said.append(work.news().step))
        told = told_of(desk, job.site(), work, of="the house")
        assert len(told.answers) > 10
        assert len(said) == STEPS
        assert said[0] == "asking the house question 1"
        work.stop()
        with pytest.raises(Stopped):
            told_of(desk, job.site(), work, of="the house")
        assert len(said) == STEPS + 1  # told that it is to stop, and of no step more
