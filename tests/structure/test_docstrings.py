"""In geometry and physics every argument is named, and has its unit from one list."""

from __future__ import annotations

import ast
import inspect
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from structure.source_tree import layer_of, modules, name_of, syntax

UNITS = {
    "m", "s", "m/s", "deg", "rad", "m2", "m3", "m-2", "K", "deg C", "-", "%", "Hz", "s-1", "dB", "dB/m", "kg", "min",
    "MHz", "F/m", "S/m", "A", "Ah", "h", "a", "a-1", "d-1", "px", "px/m",
}  # fmt: skip
LEVEL = re.compile(r"dBA? re .+")
HEADING = re.compile(r"^(\w[\w ]*)\n-{3,}$", re.MULTILINE)
UNIT = re.compile(r"(?<![\w\])\[])\[([A-Za-z0-9/ .²^%-]+|-)\](?!_)")
NUMBERS = re.compile(r"\b(float|array_like|ndarray|FloatArray)\b")
NO_NUMBERS = re.compile(r"\b(bool|int|str)\b")
FILES = tuple(path for path in modules() if layer_of(path) in ("geometry", "physics"))


def public_functions(tree: ast.Module) -> Iterator[ast.FunctionDef]:
    for node in tree.body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            yield node


def sections(text: str) -> dict[str, str]:
    """Heading and body of each numpydoc section."""
    clean = inspect.cleandoc(text)
    found = list(HEADING.finditer(clean))
    ends = [one.start() for one in found[1:]] + [len(clean)]
    return {one.group(1): clean[one.end() : end] for one, end in zip(found, ends, strict=True)}


def entries(body: str) -> Iterator[tuple[str, str, str]]:
    """Name, type and description of each entry of a section."""
    parts = re.split(r"^(?=\S)", body, flags=re.MULTILINE)
    for part in parts:
        head, _, text = part.partition("\n")
        names, _, kind = head.partition(" : ")
        for name in names.split(","):
            if name.strip():
                yield name.strip().lstrip("*"), kind.strip(), text


def is_unit(word: str) -> bool:
    return word in UNITS or bool(LEVEL.fullmatch(word))


def units_in(text: str) -> list[str]:
    return [word for word in UNIT.findall(text) if word.strip("0123456789. ") != ""]


def faults_of(function: ast.FunctionDef) -> Iterator[str]:
    text = ast.get_docstring(function) or ""
    found = sections(text)
    listed = list(entries(found.get("Parameters", "")))
    inputs = function.args
    arguments = [a.arg for a in (*inputs.posonlyargs, *inputs.args, *inputs.kwonlyargs)]
    arguments += [a.arg for a in (inputs.vararg, inputs.kwarg) if a is not None]
    names = [name for name, _, _ in listed]
    yield from (f"argument '{name}' is not documented" for name in arguments if name not in names)
    yield from (f"'{name}' is documented, but is no argument" for name in names if name not in arguments)
    results = list(entries(found.get("Returns", "")))
    for name, kind, words in (*listed, *results):
        body = f"{kind}\n{words}" if (name, kind, words) in listed else f"{name} {kind}\n{words}"
        is_number = NUMBERS.search(kind or name) and not NO_NUMBERS.search(kind or name)
        if is_number and not any(map(is_unit, units_in(body))):
            yield f"'{name}' has no unit"
        yield from (
            f"'{name}': unit [{one}] is not on the list" for one in units_in(body) if not is_unit(one)
        )


@pytest.mark.parametrize("path", FILES, ids=name_of)
def test_every_argument_is_named_with_its_unit(path: Path) -> None:
    faults = [
        f"{function.name}: {fault}"
        for function in public_functions(syntax(path))
        for fault in faults_of(function)
    ]
    assert not faults, f"{name_of(path)}:\n" + "\n".join(faults)


@pytest.mark.parametrize(
    ("docstring", "said"),
    [
        ("reach : float\n    How far. [m]", None),
        ("reach : float\n    How far. [metres]", "unit [metres] is not on the list"),
        ("reach : float\n    How far.", "'reach' has no unit"),
        (
            "reach : float\n    How far. [m]\nghost : float\n    Gone. [m]",
            "'ghost' is documented, but is no argument",
        ),
        ("other : float\n    How far. [m]", "argument 'reach' is not documented"),
        ("reach : array_like, shape (n, 2)\n    See [1]_. [dB re 1 pW]", None),
    ],
)
def test_a_fault_of_a_docstring_is_seen(docstring: str, said: str | None) -> None:
    body = f"Look.\n\nParameters\n----------\n{docstring}"
    indented = body.replace("\n", "\n    ")
    tree = ast.parse(f'def look(reach):\n    """{indented}\n    """\n')
    faults = [fault for function in public_functions(tree) for fault in faults_of(function)]
    assert any(said in fault for fault in faults) if said else faults == []
