"""Each module can be imported alone: no import order is kept alive by chance."""

from __future__ import annotations

import json
import subprocess
import sys

from structure.source_tree import PACKAGE, modules

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


def test_every_module_imports_alone() -> None:
    names = [
        ".".join(("wardwright", *path.relative_to(PACKAGE).with_suffix("").parts))
        for path in modules()
        if path.name != "__main__.py"
    ]
    names = [name.removesuffix(".__init__") for name in names]
    done = subprocess.run(
        [sys.executable, "-c", PROGRAM], input=json.dumps(names), capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    faults = json.loads(done.stdout)
    assert not faults, "\n".join(f"{name}: {fault}" for name, fault in faults.items())
