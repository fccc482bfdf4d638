from __future__ import annotations

import subprocess
import sys

import pytest


@pytest.mark.skipif(sys.platform == "win32", reason="this system has no such limits")
def test_it_limits_its_own_memory_and_time() -> None:
    code = (
        "import resource; from wardwright.store.limited_child import _limit; _limit(900, 2.5);"
        "print(resource.getrlimit(resource.RLIMIT_AS)[0], resource.getrlimit(resource.RLIMIT_CPU)[0])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.split() == ["900000000", "4"]


@pytest.mark.skipif(sys.platform == "win32", reason="this system has no such limits")
def test_it_ends_by_itself_when_nobody_waits_for_it() -> None:
    code = "from wardwright.store.limited_child import _limit\n_limit(900, 0.0)\nwhile True: pass"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, timeout=60, check=False)
    assert done.returncode < 0
