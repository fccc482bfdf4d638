from __future__ import annotations

import io
import sys
import time

import pytest

from wardwright.cli import progress as subject


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_nothing_is_said_where_nobody_watches(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(subject, "QUIET_S", 0.0)
    monkeypatch.setattr(sys, "stderr", io.StringIO())
    with subject.progress("asking"):
        time.sleep(0.02)
    assert sys.stderr.getvalue() == ""


def test_short_work_is_not_announced(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stderr", Terminal())
    with subject.progress("asking"):
        pass
    assert sys.stderr.getvalue() == ""


def work_until_announced() -> None:
    end = time.monotonic() + 5.0
    with subject.progress("asking the house"):
        while "asking the house ... 0 s" not in sys.stderr.getvalue():
            assert time.monotonic() < end
            time.sleep(0.01)
        raise KeyError


def test_long_work_is_announced_and_the_line_is_cleared(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(subject, "QUIET_S", 0.0)
    monkeypatch.setattr(sys, "stderr", Terminal())
    with pytest.raises(KeyError):
        work_until_announced()
    assert sys.stderr.getvalue().endswith(subject.CLEAR_LINE)
