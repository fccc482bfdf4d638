"""A cold `wardwright ask sample:terrace`, against the bare import of the packages under it.

Both are whole processes, run in turn; the smaller time of each counts. The modules of both are compiled before, as
Python itself does at a program's first start, into a folder of the benchmark's own: an environment may forbid it to
write beside the sources. What the process has loaded at its end, and the most memory it held, are looked at too.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from collections.abc import Mapping
from tempfile import TemporaryDirectory
from typing import Any

BASE = "import numpy, scipy.sparse.csgraph, shapely, pydantic"
ASK = "import sys; from wardwright.cli.main import main; sys.exit(main(['ask', 'sample:terrace']))"
LOADED = (
    "import contextlib, io, json, resource, sys; from wardwright.cli.main import main\n"
    "with contextlib.redirect_stdout(io.StringIO()) as text: status = main(['ask', 'sample:terrace', '--json'])\n"
    # On Linux ru_maxrss counts what the starting process held before; VmHWM is this program's own.
    "own = [line.split()[1] for line in open('/proc/self/status') if line.startswith('VmHWM')] "
    "if sys.platform == 'linux' else []\n"
    "peak = int(own[0]) if own else resource.getrusage(resource.RUSAGE_SELF).ru_maxrss\n"
    "print(json.dumps([status, len(json.loads(text.getvalue())['answers']), peak, sorted(sys.modules)]))"
)
NOT_WANTED = (
    "ifcopenshell",
    "uvicorn",
    "fastapi",
    "starlette",
    "http.server",
    "socketserver",
    "jinja2",
    "typst",
    "xlsxwriter",
    "trimesh",
)
BUDGET = 4.0
MOST_MB = 600.0
KB_IN_MB = 1024.0


def keeping_bytecode(folder: str) -> dict[str, str]:
    """The environment in which compiled modules are kept in a folder, whatever it says of them now."""
    kept = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    return kept | {"PYTHONPYCACHEPREFIX": folder}


def cold(program: str, environment: Mapping[str, str]) -> float:
    """How long a fresh interpreter needs for a program. [s]"""
    start = time.perf_counter()
    subprocess.run([sys.executable, "-c", program], check=True, stdout=subprocess.DEVNULL, env=environment)
    return time.perf_counter() - start


def loaded(environment: Mapping[str, str]) -> tuple[int, float, list[str]]:
    """How many answers a cold `ask` gives, its peak memory [MB], and which unwanted modules it has loaded."""
    done = subprocess.run(
        [sys.executable, "-c", LOADED], check=True, capture_output=True, text=True, env=environment
    )
    status, answers, peak, modules = json.loads(done.stdout)
    if status != 0:
        raise RuntimeError(f"ask ended with {status}: {done.stderr}")
    scale = (
        KB_IN_MB if sys.platform != "darwin" else KB_IN_MB**2
    )  # ru_maxrss is in kB on Linux, in bytes on macOS
    return answers, peak / scale, [name for name in NOT_WANTED if name in modules]


def run(repeats: int = 5) -> dict[str, Any]:
    """Time both in turn; figures, ratio and budget."""
    base, own = [], []
    with TemporaryDirectory() as folder:
        environment = keeping_bytecode(folder)
        answers, peak, unwanted = loaded(environment)  # compiles all
        for _ in range(repeats):
            base.append(cold(BASE, environment))
            own.append(cold(ASK, environment))
    ratio = min(own) / min(base)
    return {
        "name": "cold ask of the terrace, against the bare import of the packages under it",
        "figures": {
            "import_s": round(min(base), 2),
            "ask_s": round(min(own), 2),
            "answers": answers,
            "peak_memory_MB": round(peak),
            "loads_the_IFC_reader_or_a_server": ", ".join(unwanted) or "no",
        },
        "ratio": round(ratio, 2),
        "budget": f"at most {BUDGET:g} times, under {MOST_MB:g} MB, without the IFC reader or a server",
        "is_met": bool(ratio <= BUDGET and peak < MOST_MB and not unwanted),
    }


if __name__ == "__main__":
    print(json.dumps(run(), indent=1))
