"""A good small house, and what is said of it when some of its facts are changed."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from wardwright.model.document import read_document
from wardwright.model.site import Site
from wardwright.model.validation import Problem, problems
from wardwright.store.catalogue import load_catalogue

GOOD = Path(__file__).resolve().parents[1] / "bad_inputs" / "good.json"


def hut(*edits: tuple[str, Any]) -> Site:
    """The good house after some edits.

    Each edit is a path and a value: `openings/kitchen-window/sill_m` names an entry by its id; `walls/+` adds an
    entry; the value `...` takes the key out.
    """
    data = json.loads(GOOD.read_text(encoding="utf-8"))
    for path, value in edits:
        *steps, last = path.split("/")
        here: Any = data
        for step in steps:
            if isinstance(here, list):
                here = next(entry for entry in here if entry["id"] == step)
            else:
                here = here.setdefault(step, [] if last == "+" and step == steps[-1] else {})
        if last == "+":
            here.append(value)
        elif value is ...:
            del here[last]
        else:
            here[last] = value
    return read_document(json.dumps(data), where="hut")


def found(*edits: tuple[str, Any]) -> tuple[Problem, ...]:
    """All problems of the good house after some edits."""
    return problems(hut(*edits), load_catalogue())


def only(*edits: tuple[str, Any]) -> tuple[str, str, str]:
    """Weight, subject and fault of the one problem of the good house after some edits."""
    problem, *others = found(*edits)
    assert others == [], "more than one fault: " + "; ".join(p.what for p in (problem, *others))
    assert problem.cure
    assert not problem.cure.endswith(".")
    return problem.weight, problem.subject, problem.what
