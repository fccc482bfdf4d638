"""Each module can be imported alone: no import order is kept alive by chance."""

from __future__ import annotations

import ast
import json
import os
import subprocess
import sys
from pathlib import Path

from structure.source_tree import PACKAGE, modules, syntax

# Between two imports everything of the package is forgotten, so that each finds what a fresh interpreter
# would; the packages underneath stay, which makes a hundred imports quick.
PROGRAM = """
import importlib, json, sys, traceback
faults = {}
for name in json.load(sys.stdin):
    for known in [m for m in sys.modules if m == "wardwright" or m.startswith("wardwright.")]:
        del sys.modules[known]
    try:
        importlib.import_module(name)
    except BaseException:
        faults[name] = traceback.format_exc(limit=-2)
json.dump(faults, sys.stdout)
"""


IS_PROVING = os.environ.get("WARDWRIGHT_PROVE") == "1"
SHARE = 1 if IS_PROVING else 12
"""Every how-manyth module is really imported alone: all when proving. Cycles, the cause of such faults, are always
looked for in all."""


def dotted(path: Path) -> str:
    name = ".".join(("wardwright", *path.relative_to(PACKAGE).with_suffix("").parts))
    return name.removesuffix(".__init__")


NAMES = {dotted(path): path for path in modules() if path.name != "__main__.py"}


def needed_at_import(path: Path) -> set[str]:
    """Modules of the package that a file imports while it is itself imported."""
    found: set[str] = set()
    waiting: list[ast.stmt] = list(syntax(path).body)
    while waiting:
        node = waiting.pop()
        if isinstance(node, ast.If) and "TYPE_CHECKING" in ast.unparse(node.test):
            continue
        if isinstance(node, ast.Import):
            found.update(alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module is not None:
            whole = [f"{node.module}.{alias.name}" for alias in node.names]
            found.update(name if name in NAMES else node.module for name in whole)
        elif isinstance(node, (ast.If, ast.Try, ast.With)):
            waiting.extend(inner for inner in ast.iter_child_nodes(node) if isinstance(inner, ast.stmt))
    return found & NAMES.keys()


def test_no_module_needs_itself() -> None:
    """Imports make no circle, so that each module finds what it needs, whichever comes first."""
    needs = {name: needed_at_import(path) for name, path in NAMES.items()}
    while done := {name for name, needed in needs.items() if not needed}:
        needs = {name: needed - done for name, needed in needs.items() if name not in done}
    assert not needs, f"these import one another in a circle, or what does: {sorted(needs)}"


def test_modules_import_alone() -> None:
    names = sorted(NAMES)[::SHARE]
    done = subprocess.run(
        [sys.executable, "-c", PROGRAM], input=json.dumps(names), capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    faults = json.loads(done.stdout)
    assert not faults, "\n".join(f"{name}: {fault}" for name, fault in faults.items())
