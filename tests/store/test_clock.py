from __future__ import annotations

from datetime import UTC, date, datetime, timedelta

import pytest

from wardwright.store.clock import FIXED, today


def test_the_environment_fixes_the_day(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(FIXED, "1795000000")
    assert today() == date(2026, 11, 18)


@pytest.mark.parametrize("nonsense", ["", "soon", "-1"])
def test_else_it_is_this_machines(monkeypatch: pytest.MonkeyPatch, nonsense: str) -> None:
    monkeypatch.setenv(FIXED, nonsense)
    assert abs(today() - datetime.now(tz=UTC).date()) <= timedelta(days=1)
