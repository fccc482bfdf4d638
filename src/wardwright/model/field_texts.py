"""What the docstrings under the fields of a record say, for the published schema.

Read from the source only when a schema is made: pydantic would read it for each record as it is defined, and so at
every start of the program.
"""

from __future__ import annotations

import ast
import inspect
from functools import cache
from textwrap import dedent
from typing import Any

from pydantic import BaseModel


@cache
def field_texts(record: type[Any]) -> dict[str, str]:
    """The text under each field of a record and of what it is made from, by field."""
    texts: dict[str, str] = {}
    for kind in reversed(record.__mro__):
        if issubclass(kind, BaseModel) and kind is not BaseModel:
            texts |= _own_texts(kind)
    return texts


def _own_texts(record: type[Any]) -> dict[str, str]:
    (made,) = ast.parse(dedent(inspect.getsource(record))).body
    if not isinstance(made, ast.ClassDef):
        return {}
    texts = {}
    for field, after in zip(made.body, made.body[1:], strict=False):
        match field, after:
            case (
                ast.AnnAssign(target=ast.Name(id=name)),
                ast.Expr(value=ast.Constant(value=str(text))),
            ):
                texts[name] = inspect.cleandoc(text)
            case _:
                pass
    return texts
