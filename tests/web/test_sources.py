"""The page's own types and units, checked by its own tools; the Node.js that the browser driver carries is enough."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import pytest

WEB = Path(__file__).resolve().parents[2] / "web"
TOOLS = {
    "types": ["node_modules/typescript/bin/tsc", "-p", "."],
    "units": ["node_modules/vitest/vitest.mjs", "run"],
}


@pytest.mark.parametrize("tool", sorted(TOOLS))
def test_the_pages_own_checks_pass(tool: str, page_built: None) -> None:
    del page_built
    if not (WEB / TOOLS[tool][0]).exists():
        pytest.skip("the tools of the page are not installed: python3 web/build.py --tools")
    done = subprocess.run([node(), *TOOLS[tool]], cwd=WEB, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr


def node() -> str:
    found = shutil.which("node")
    if found is not None:
        return found
    from playwright._impl._driver import compute_driver_executable  # noqa: PLC0415 - only where there is no other

    return str(compute_driver_executable()[0])
