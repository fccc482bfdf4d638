from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import pytest

from wardwright.errors import Stopped
from wardwright.store.children import ran

SAYS_ITS_NUMBER = "import os, sys, time; open(sys.argv[1], 'w').write(str(os.getpid())); time.sleep(60)"


def test_it_reads_what_it_is_given_and_says_what_it_says() -> None:
    with tempfile.TemporaryFile() as content:
        content.write(b"house")
        content.seek(0)
        code = "import sys; sys.stdout.write(sys.stdin.read()); sys.exit(3)"
        done = ran([sys.executable, "-c", code], content, seconds=20.0, environment=os.environ)
    assert (done.returncode, done.stdout) == (3, b"house")


def test_what_is_said_while_it_is_looked_after_is_not_lost() -> None:
    code = "import sys, time; [(print(i, flush=True), time.sleep(0.04)) for i in range(6)]"
    with tempfile.TemporaryFile() as content:
        done = ran([sys.executable, "-c", code], content, seconds=20.0, environment=os.environ)
    assert done.stdout.split() == [b"0", b"1", b"2", b"3", b"4", b"5"]


@pytest.mark.parametrize("how", ["stopped", "too long"])
def test_it_is_ended_when_it_is_wanted_no_more(tmp_path: Path, how: str) -> None:
    told = tmp_path / "number"

    def is_there() -> bool:
        return told.exists() and told.read_text() != ""

    start = time.monotonic()
    command = [sys.executable, "-c", SAYS_ITS_NUMBER, str(told)]
    with tempfile.TemporaryFile() as content:
        if how == "stopped":
            with pytest.raises(Stopped):
                ran(command, content, seconds=60.0, environment=os.environ, is_stopped=is_there)
        else:
            with pytest.raises(subprocess.TimeoutExpired):
                ran(command, content, seconds=1.0, environment=os.environ)
    assert time.monotonic() - start < 30.0
    if is_there():
        with pytest.raises(ProcessLookupError):
            os.kill(int(told.read_text()), 0)
