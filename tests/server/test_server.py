"""The server as a program of its own, killed at seeded moments of long work: every job is whole, or not there."""

from __future__ import annotations

import json
import os
import random
import time
import urllib.request
from pathlib import Path
from typing import Any

from common.ifc_house import written
from common.served import Served
from wardwright.store.jobs.files import ENDING
from wardwright.store.jobs.opening import new_job, open_job
from wardwright.store.jobs.signatures import signed
from wardwright.store.samples import read_sample

KILLS = 60 if os.environ.get("WARDWRIGHT_PROVE") == "1" else 3
SEED = 29


def sent(served: Served, path: str, body: bytes) -> Any:
    request = urllib.request.Request(  # noqa: S310 - this machine's own server
        f"{served.url}api/{path}", data=body, headers={"content-type": "application/json"}
    )
    with urllib.request.urlopen(request, timeout=20) as answer:  # noqa: S310
        return json.load(answer)


def moments(longest_s: float, count: int) -> list[float]:
    """When to kill: spread over all of it, so that no part of it is left out."""
    draw = random.Random(SEED)  # noqa: S311 - moments for a test, not a secret
    return [longest_s * (number + draw.random()) / count for number in range(count)]


def taken_s(served: Served, work: dict[str, Any]) -> float:
    """How long a piece of work takes to its end. [s]"""
    start = time.monotonic()
    while (said := sent_get(served, work["id"]))["state"] in ("waiting", "running"):
        time.sleep(0.005)
        assert time.monotonic() - start < 60.0
    assert said["state"] == "done", said
    return time.monotonic() - start


def sent_get(served: Served, ident: str) -> Any:
    with urllib.request.urlopen(f"{served.url}api/works/{ident}", timeout=20) as answer:  # noqa: S310
        return json.load(answer)


def intake(served: Served) -> dict[str, Any]:
    file = sent(served, "files?name=mill.ifc", written())
    work: dict[str, Any] = sent(served, "intake", json.dumps({"file": file["id"], "premises": ""}).encode())
    return work


def signing(served: Served) -> dict[str, Any]:
    wish = {"revision": 1, "author": "Fitter"}
    work: dict[str, Any] = sent(served, "jobs/terrace.job/signed", json.dumps(wish).encode())
    return work


def test_killed_while_a_house_is_brought_in_every_job_is_whole_or_not_there(tmp_path: Path) -> None:
    new_job(tmp_path / "terrace.job", read_sample("terrace"), author="fitter").close()
    served = Served(tmp_path)
    longest = taken_s(served, intake(served))
    served.kill()
    made = 1
    for wait_s in moments(longest, KILLS):
        served.start()
        intake(served)
        time.sleep(wait_s)
        served.kill()
        jobs = sorted(tmp_path.glob(f"*{ENDING}"))
        assert len(jobs) - 1 in (made, made + 1)
        made = len(jobs) - 1
        for path in jobs:
            with open_job(path) as job:
                assert job.site(job.newest).spaces
        # No more may be left than a job's own journal, and the draft of one, under a name that no list shows.
        known = {f"{one.name}{more}" for one in jobs for more in ("", "-journal")}
        others = {one.name for one in tmp_path.iterdir()} - known
        assert all(name.startswith(".mill") and ".part" in name for name in others), others


def test_killed_while_answers_are_signed_the_job_is_whole_and_they_are_all_there_or_none(
    tmp_path: Path,
) -> None:
    path = tmp_path / "terrace.job"
    new_job(path, read_sample("terrace"), author="fitter").close()
    served = Served(tmp_path)
    longest = taken_s(served, signing(served))
    served.kill()
    with open_job(path) as job:
        (whole,) = signed(job)
    for wait_s in moments(longest, KILLS):
        served.start()
        signing(served)
        time.sleep(wait_s)
        served.kill()
        with open_job(path) as job:
            assert {one.answers for one in map(comparable, signed(job))} == {comparable(whole).answers}


def comparable(one: Any) -> Any:
    return one._replace(answers=json.dumps(one.answers, sort_keys=True))
