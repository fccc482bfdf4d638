"""What the structure tests read: the modules of the package, and their syntax."""

from __future__ import annotations

import ast
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "src" / "wardwright"
LAYERS = (
    "errors", "geometry", "model", "intake", "physics", "rules", "trials", "costing", "works", "questions",
    "documents", "store", "server", "cli",
)  # fmt: skip
"""In the order of the arrows; each imports only from those before it."""


@cache
def modules() -> tuple[Path, ...]:
    """Every Python file of the package, in order of path."""
    return tuple(sorted(PACKAGE.rglob("*.py")))


@cache
def syntax(path: Path) -> ast.Module:
    """The parsed file."""
    return ast.parse(path.read_text(encoding="utf-8"), filename=str(path))


def name_of(path: Path) -> str:
    """A file's path inside the package, as it is written in messages."""
    return path.relative_to(PACKAGE).as_posix()


def layer_of(path: Path) -> str:
    """The layer that a file belongs to; its own name for a file at the top."""
    first = path.relative_to(PACKAGE).parts[0]
    return first.removesuffix(".py")


def imported(path: Path) -> set[str]:
    """Dotted names of all that a file imports, wherever in it the import stands."""
    names: set[str] = set()
    for node in ast.walk(syntax(path)):
        if isinstance(node, ast.Import):
            names.update(alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module is not None:
            names.add(node.module)
            names.update(f"{node.module}.{alias.name}" for alias in node.names)
    return names
