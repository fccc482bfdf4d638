from __future__ import annotations

import subprocess
import sys

import pytest
from pydantic import ValidationError

from structure.source_tree import ROOT
from wardwright.server.messages import Try


def test_the_pages_types_are_not_stale() -> None:
    command = [sys.executable, str(ROOT / "scripts" / "generate-client"), "--check"]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def test_a_message_with_an_unknown_key_is_refused() -> None:
    with pytest.raises(ValidationError):
        Try.model_validate({"kind": "try", "number": 1, "operations": [], "more": 1})
