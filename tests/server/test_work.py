from __future__ import annotations

import threading
import time
from collections.abc import Callable, Iterator
from typing import Any

import pytest

from wardwright.errors import JobError
from wardwright.server.work import AT_ONCE, KEPT, Work, Works
from wardwright.server.work_messages import BroughtIn

RESULT = BroughtIn(file="a.job", choices=(), name="a", counts=(), report=None, noted=(), worth_adding=())


@pytest.fixture
def works() -> Iterator[Works]:
    made = Works()
    yield made
    made.close()


def until(what: Callable[[], Any]) -> None:
    end = time.monotonic() + 10.0
    while not what():
        assert time.monotonic() < end, "timed out"
        time.sleep(0.005)


def test_each_step_is_told_and_the_result_comes_last(works: Works) -> None:
    go_on, said = threading.Event(), []

    def do(work: Work) -> BroughtIn:
        work.listeners.add(lambda: said.append((work.news().state, work.news().step)))
        work.step("one")
        go_on.wait(10.0)
        work.step("two")
        return RESULT

    work = works.begin("something", do, job="a.job", steps=2)
    until(lambda: work.news().step == "one")
    assert works.under_way() == (work,)
    news = work.news()
    assert (news.state, news.begun, news.of, news.job, news.result) == ("running", 1, 2, "a.job", None)
    go_on.set()
    until(lambda: work.has_ended)
    assert said == [("running", "one"), ("running", "two"), ("done", "two")]
    assert work.news().result == RESULT
    assert works.under_way() == ()
    assert works.work(work.id) is work


def test_it_is_stopped_between_two_steps_and_its_second_is_never_done(works: Works) -> None:
    go_on, done = threading.Event(), []

    def do(work: Work) -> BroughtIn:
        work.step("one")
        go_on.wait(10.0)
        work.step("two")
        done.append("two")
        return RESULT

    work = works.begin("something", do)
    until(lambda: work.news().step == "one")
    work.stop()
    assert work.news().is_stopping
    go_on.set()
    until(lambda: work.has_ended)
    assert (work.news().state, work.news().result, done) == ("stopped", None, [])
    assert not work.news().is_stopping


def test_what_waits_is_stopped_before_it_begins(works: Works) -> None:
    go_on, done = threading.Event(), []

    def slow(work: Work) -> BroughtIn:
        work.step("slow")
        go_on.wait(10.0)
        return RESULT

    def quick(_: Work) -> BroughtIn:
        done.append("quick")
        return RESULT

    for _ in range(AT_ONCE):
        works.begin("slow", slow)
    waits = works.begin("quick", quick)
    assert waits.news().state == "waiting"
    waits.stop()
    go_on.set()
    until(lambda: waits.has_ended)
    assert (waits.news().state, done) == ("stopped", [])


def test_a_fault_is_one_clear_message(works: Works) -> None:
    def do(_: Work) -> BroughtIn:
        raise JobError("it is full", where="disk", cure="Make room")

    work = works.begin("something", do)
    until(lambda: work.has_ended)
    fault = work.news().fault
    assert work.news().state == "failed"
    assert fault is not None
    assert (fault.what, fault.where, fault.cure) == ("it is full", "disk", "Make room")


def test_a_fault_of_our_own_is_said_and_reported(works: Works, caplog: pytest.LogCaptureFixture) -> None:
    def do(_: Work) -> BroughtIn:
        raise ZeroDivisionError

    work = works.begin("something", do)
    until(lambda: work.has_ended)
    fault = work.news().fault
    assert fault is not None
    assert "ZeroDivisionError" in fault.what
    assert "ZeroDivisionError" in caplog.text


def test_what_is_not_there_is_said_and_old_ends_are_forgotten(works: Works) -> None:
    with pytest.raises(JobError, match="no such work"):
        works.work("nothing")
    first = works.begin("something", lambda _: RESULT)
    until(lambda: first.has_ended)
    for _ in range(KEPT + 1):
        last = works.begin("something", lambda _: RESULT)
        until(lambda last=last: last.has_ended)
    with pytest.raises(JobError, match="no such work"):
        works.work(first.id)


def test_closing_stops_all_and_waits_for_it() -> None:
    works = Works()

    def do(work: Work) -> BroughtIn:
        for number in range(10_000):
            work.step(str(number))
            time.sleep(0.005)
        return RESULT

    work = works.begin("something", do)
    until(lambda: work.news().step)
    works.close()
    assert work.news().state == "stopped"
