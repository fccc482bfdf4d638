"""The arrows that the import contracts do not see."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

from structure.source_tree import LAYERS, PACKAGE, imported, layer_of, modules, name_of, syntax

SILENT = tuple(path for path in modules() if layer_of(path) in LAYERS[: LAYERS.index("store")])
"""Modules left of `store`: they touch nothing outside."""
FORBIDDEN_NAMES = {"open", "print", "input", "breakpoint", "__import__", "exec", "eval"}
FORBIDDEN_MODULES = {
    "os", "io", "sys", "time", "pathlib", "tempfile", "shutil", "subprocess", "socket", "glob", "logging", "random",
    "secrets", "urllib", "http", "importlib", "multiprocessing", "threading", "resource",
}  # fmt: skip
IN_MEMORY = {("io", "BytesIO")}
"""Names of such modules that touch nothing outside: a writer may want a place in memory to write to."""
FORBIDDEN_ATTRIBUTES = {
    "now", "today", "utcnow", "environ", "getenv", "read_text", "write_text", "read_bytes", "write_bytes", "getcwd",
    "urandom", "fromfile", "tofile", "loadtxt", "savetxt", "genfromtxt", "memmap",
}  # fmt: skip


def test_layers_are_all_named() -> None:
    folders = {path.name for path in PACKAGE.iterdir() if path.is_dir() and (path / "__init__.py").is_file()}
    assert folders | {"errors"} == set(LAYERS)


@pytest.mark.parametrize("path", SILENT, ids=name_of)
def test_left_of_store_nothing_touches_the_world(path: Path) -> None:
    faults = [f"line {line}: {what}" for line, what in touches(syntax(path))]
    assert not faults, f"{name_of(path)} is left of `store`: " + "; ".join(faults)


def touches(tree: ast.Module) -> list[tuple[int, str]]:
    found: list[tuple[int, str]] = []
    for node in ast.walk(tree):
        if isinstance(node, ast.Name) and node.id in FORBIDDEN_NAMES:
            found.append((node.lineno, node.id))
        elif isinstance(node, ast.Attribute) and node.attr in FORBIDDEN_ATTRIBUTES:
            found.append((node.lineno, f".{node.attr}"))
        elif isinstance(node, ast.Import):
            names = [alias.name for alias in node.names if alias.name.split(".")[0] in FORBIDDEN_MODULES]
            found.extend((node.lineno, f"import {name}") for name in names)
        elif isinstance(node, ast.ImportFrom) and (node.module or "").split(".")[0] in FORBIDDEN_MODULES:
            names = [alias.name for alias in node.names if (node.module, alias.name) not in IN_MEMORY]
            found.extend((node.lineno, f"from {node.module} import ...") for _ in names[:1])
    return found


@pytest.mark.parametrize(
    "line",
    [
        "open('a')", "print(1)", "import os", "from time import time", "datetime.now()", "from pathlib import Path",
        "p.read_text()", "from io import open, BytesIO", "np.random.default_rng(); np.loadtxt('a')",
    ],
)  # fmt: skip
def test_a_line_that_touches_the_world_is_seen(line: str) -> None:
    assert touches(ast.parse(line))


def test_in_physics_only_from_site_knows_the_model() -> None:
    faults = [
        f"{name_of(path)}: {name}"
        for path in modules()
        if layer_of(path) == "physics" and path.name != "from_site.py"
        for name in sorted(imported(path))
        if name.startswith("wardwright.model")
    ]
    assert not faults


def test_geometry_knows_no_house() -> None:
    faults = [
        f"{name_of(path)}: {name}"
        for path in modules()
        if layer_of(path) == "geometry"
        for name in sorted(imported(path))
        if name.startswith("wardwright.")
        and not name.startswith(("wardwright.geometry", "wardwright.errors"))
    ]
    assert not faults


def test_random_draws_are_always_seeded() -> None:
    """`numpy.random` is used through a generator made from a seed, never through its own global state."""
    faults = []
    for path in modules():
        for node in ast.walk(syntax(path)):
            is_random = isinstance(node, ast.Attribute) and ast.unparse(node.value) == "np.random"
            if is_random and node.attr not in ("Generator", "default_rng", "SeedSequence", "Philox", "PCG64"):
                faults.append(f"{name_of(path)}, line {node.lineno}: {ast.unparse(node)}")
            if (
                isinstance(node, ast.Call)
                and ast.unparse(node.func).endswith("default_rng")
                and not node.args
            ):
                faults.append(f"{name_of(path)}, line {node.lineno}: default_rng() without a seed")
    assert not faults
