"""JSON read strictly: what its ordinary reader lets pass is refused, with the place."""

from __future__ import annotations

import json
from typing import Any, NoReturn

from wardwright.errors import DocumentError
from wardwright.model.wording import shown

LARGEST_DOCUMENT_BYTES = 20_000_000
"""A site document longer than this is refused: a big house needs about half a megabyte. [bytes] (assumption)"""
DEEPEST = 24
"""Lists and objects within one another, at most; the schema itself needs seven. [-] (assumption)"""


def plain_json(text: str, *, where: str) -> dict[str, Any]:
    """A document as plain data, with what JSON's reader lets pass refused.

    Parameters
    ----------
    text : str
        JSON.
    where : str
        What it is called in messages.

    Returns
    -------
    dict
        The object that it is.

    Raises
    ------
    DocumentError
        If it is not JSON, is no object, is too long or too deep, writes a key twice or a value that is no number.
    """
    if len(text) > LARGEST_DOCUMENT_BYTES:
        raise DocumentError(
            f"the document is longer than {LARGEST_DOCUMENT_BYTES // 1_000_000} MB",
            where=where,
            cure="Give a site document; pictures and logs do not belong in it",
        )
    try:
        data = json.loads(
            text.removeprefix("\ufeff"),
            parse_constant=lambda word: _refuse_constant(word, where=where),
            object_pairs_hook=lambda pairs: _once_each(pairs, where=where),
        )
        too_deep = _is_deep(data)
    except RecursionError:
        data, too_deep = None, True
    except json.JSONDecodeError as fault:
        message = f"{fault.msg[0].lower()}{fault.msg[1:]}"
        raise DocumentError(
            f"this is not JSON: {message} at line {fault.lineno}, column {fault.colno}",
            where=where,
            cure="Mend that place",
        ) from None
    except ValueError as fault:
        if isinstance(fault, DocumentError):
            raise
        # The only other one json raises: a whole number of thousands of digits.
        raise DocumentError(
            "a number has thousands of digits", where=where, cure="Write an ordinary number"
        ) from None
    if too_deep:
        raise DocumentError(
            f"lists and objects stand more than {DEEPEST} deep within one another",
            where=where,
            cure="Give a site document; see the published schema",
        )
    if not isinstance(data, dict):
        raise DocumentError(
            f"a site document is an object in braces, but this is {shown(data)}",
            where=where,
            cure='Begin with {"schema_version": 1, "name": ...',
        )
    return data


def _refuse_constant(word: str, *, where: str) -> NoReturn:
    raise DocumentError(
        f"the value {word} is not a number",
        where=where,
        cure="Write an ordinary number, or leave the key out",
    )


def _once_each(pairs: list[tuple[str, Any]], *, where: str) -> dict[str, Any]:
    data = dict(pairs)
    if len(data) == len(pairs):
        return data
    names = [name for name, _ in pairs]
    twice = next(name for name in names if names.count(name) > 1)
    near = data.get("name") or data.get("id")
    place = f'{where}, "{near}"' if isinstance(near, str) else where
    raise DocumentError(f"key '{twice}' is written twice", where=place, cure="Take one of the two out")


def _is_deep(data: object) -> bool:
    level = [data]
    for _ in range(DEEPEST):
        level = [
            inner
            for one in level
            if isinstance(one, (dict, list))
            for inner in (one.values() if isinstance(one, dict) else one)
        ]
        if not level:
            return False
    return True
