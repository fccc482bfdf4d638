"""One word a thing, in the spelling of docs/glossary.md: no other word for it in a name or a text of the package."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from structure.source_tree import PACKAGE, ROOT, layer_of, modules, name_of, syntax

SYNONYMS = {
    "sensor": "movement detector, opening contact",
    "sensors": "movement detector, opening contact",
    "pir": "movement detector",
    "motion": "movement",
    "siren": "sounder",
    "sirens": "sounder",
    "bellbox": "sounder",
    "panel": "control unit",
    "panels": "control unit",
    "hub": "control unit",
    "fob": "keyfob",
    "fobs": "keyfob",
    "arm": "set",
    "armed": "set",
    "arming": "set",
    "disarm": "unset",
    "disarmed": "unset",
    "disarming": "unset",
    "burglar": "intruder",
    "burglars": "intruder",
}
"""A word and the glossary's own for it."""
BRITISH = {
    "color": "colour", "colors": "colour", "center": "centre", "centers": "centre", "centered": "centred",
    "gray": "grey", "behavior": "behaviour", "behaviors": "behaviour", "neighbor": "neighbour",
    "neighbors": "neighbour", "meter": "metre", "meters": "metre", "labeled": "labelled", "catalog": "catalogue",
    "story": "storey", "stories": "storey",
}  # fmt: skip
MAY_SAY: dict[str, tuple[str, ...]] = {
    # In geometry a panel is an upright wall-like surface; what makes or uses them says so. IFC calls a leaf so.
    "panel": ("geometry/", "physics/", "model/", "intake/ifc/", "intake/notes/trade_words.py"),
    "panels": ("geometry/", "physics/", "model/", "intake/ifc/"),
    # The rule lists words that are too vague in a zone's name; the reader of notes, words to lead people from.
    "sensor": ("rules/zone_names.py", "intake/notes/trade_words.py"),
    "pir": ("rules/zone_names.py", "intake/notes/trade_words.py"),
    "motion": ("rules/zone_names.py", "intake/notes/trade_words.py"),
    "siren": ("intake/notes/trade_words.py",),
    "hub": ("intake/notes/trade_words.py",),
    "fob": ("intake/notes/trade_words.py",),
}
"""Where a word has another meaning."""
CAMEL = re.compile(r"(?<=[a-z0-9])(?=[A-Z])")
PHRASES = re.compile(
    r"\b(zone types?|bell box(?:es)?|control panels?|alarm panels?|motion detectors?|door sensors?)\b"
)


def words_of(identifier: str) -> list[str]:
    return [word for word in CAMEL.sub("_", identifier).lower().split("_") if word]


def names_given(path: Path) -> Iterator[tuple[int, str]]:
    """Every name that a file gives to something, with its line."""
    for node in ast.walk(syntax(path)):
        match node:
            case ast.FunctionDef() | ast.ClassDef() | ast.AsyncFunctionDef():
                yield node.lineno, node.name
            case ast.arg():
                yield node.lineno, node.arg
            case ast.Name(ctx=ast.Store()):
                yield node.lineno, node.id
            case _:
                pass


def texts_in(path: Path) -> Iterator[tuple[int, str]]:
    """Every text that stands in a file, with its line."""
    for node in ast.walk(syntax(path)):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node.lineno, node.value


def may_say(word: str, name: str) -> bool:
    return name.startswith(MAY_SAY.get(word, ("\0",)))


def synonyms_in(text: str) -> list[str]:
    found = [word for word in re.findall(r"[a-z]+", text.lower()) if word in SYNONYMS]
    return found + PHRASES.findall(text.lower())


def data_files() -> list[Path]:
    return sorted(
        path for path in PACKAGE.rglob("*") if path.suffix in (".toml", ".json", ".notes", ".j2", ".html")
    )


@pytest.mark.parametrize("path", modules(), ids=name_of)
def test_names_are_the_glossarys(path: Path) -> None:
    name = name_of(path)
    wrong = [
        f"{name}:{line}: {identifier}: say {(SYNONYMS | BRITISH)[word]}"
        for line, identifier in names_given(path)
        for word in words_of(identifier)
        if word in SYNONYMS | BRITISH and not may_say(word, name)
    ]
    assert not wrong, "\n".join(wrong)


@pytest.mark.parametrize("path", modules(), ids=name_of)
def test_texts_use_the_glossarys_words(path: Path) -> None:
    name = name_of(path)
    wrong = [
        f"{name}:{line}: {word}: say {SYNONYMS.get(word, 'the word of the glossary')}"
        for line, text in texts_in(path)
        for word in synonyms_in(text)
        if not may_say(word, name)
    ]
    assert not wrong, "\n".join(wrong)


def test_data_uses_the_glossarys_words() -> None:
    wrong = [
        f"{name_of(path)}:{number}: {word}"
        for path in data_files()
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1)
        for word in synonyms_in(line)
        if not may_say(word, name_of(path)) and "title = " not in line
    ]
    assert not wrong, "\n".join(wrong)


def test_the_glossary_has_the_words_of_the_model() -> None:
    """Each record of the model, and each kind of device, is explained."""
    text = (ROOT / "docs" / "glossary.md").read_text(encoding="utf-8").lower()
    records = {
        node.name
        for path in modules()
        if layer_of(path) == "model" and path.parent == PACKAGE / "model"
        for node in syntax(path).body
        if isinstance(node, ast.ClassDef)
        and not node.name.startswith("_")
        and any(isinstance(base, ast.Name) and base.id in ("Record", "Marked", "Row") for base in node.bases)
    }
    assert len(records) > 25
    missing = [name for name in sorted(records) if not is_explained(" ".join(words_of(name)), text)]
    assert not missing, f"not in docs/glossary.md: {missing}"


def is_explained(word: str, glossary: str) -> bool:
    """Whether the words stand in the first column of a row, alone or among others, in one or in many."""
    cells = " ".join(line.split("|")[1] for line in glossary.splitlines() if line.startswith("|"))
    return re.search(rf"\b{re.escape(word)}s?\b", cells) is not None


@pytest.mark.parametrize(
    ("text", "count"), [("a door sensor", 2), ("armed", 1), ("a charm", 0), ("zone type", 1)]
)
def test_a_wrong_word_is_seen(text: str, count: int) -> None:
    assert len(synonyms_in(text)) == count


def test_no_allowance_is_left_over() -> None:
    assert set(MAY_SAY) <= set(SYNONYMS)
