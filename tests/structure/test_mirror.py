"""Tests mirror the tree, path for path."""

from __future__ import annotations

from structure.source_tree import PACKAGE, ROOT, modules, name_of

TOP = ("__init__.py", "__main__.py")


def mirror_of(name: str) -> str:
    folder, _, file = name.rpartition("/")
    return f"tests/{folder}/test_{file}" if folder else f"tests/test_{file}"


def test_every_module_has_its_mirror() -> None:
    names = [name_of(path) for path in modules() if path.name not in TOP]
    missing = [f"{name}: {mirror_of(name)}" for name in names if not (ROOT / mirror_of(name)).is_file()]
    assert not missing, "modules without a test of their own:\n" + "\n".join(missing)


def test_every_mirror_has_its_module() -> None:
    layers = sorted(path.name for path in PACKAGE.iterdir() if path.is_dir())
    strays = [
        test.relative_to(ROOT).as_posix()
        for layer in layers
        for test in sorted((ROOT / "tests" / layer).rglob("test_*.py"))
        if not is_mirror(test.relative_to(ROOT / "tests").as_posix())
    ]
    assert not strays, "tests whose module is gone:\n" + "\n".join(strays)


def is_mirror(name: str) -> bool:
    """Whether a test's path names a module, or a folder as a whole: tests/rules/test_rules.py."""
    folder, _, file = name.rpartition("/")
    subject = file.removeprefix("test_")
    whole = folder.rpartition("/")[2] + ".py"
    return (PACKAGE / folder / subject).is_file() or subject == whole
