"""The site document: JSON that people can read and write, to and from a `Site`."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any, NoReturn

from pydantic import ValidationError

from wardwright.errors import DocumentError
from wardwright.model.complaint import complaints
from wardwright.model.site import SCHEMA_VERSION, Site
from wardwright.model.upgrades.table import UPGRADES, Step, upgraded
from wardwright.model.wording import and_more, shown

LARGEST_DOCUMENT_BYTES = 20_000_000
"""A site document longer than this is refused: a big house needs about half a megabyte. [bytes] (assumption)"""
DEEPEST = 24
"""Lists and objects within one another, at most; the schema itself needs seven. [-] (assumption)"""
LINE_LENGTH = 110
"""A list or object that fits is written on one line. [letters]"""


def read_document(text: str, *, where: str, steps: Mapping[int, Step] = UPGRADES) -> Site:
    """Read a site document.

    Parameters
    ----------
    text : str
        The document.
    where : str
        What it is called in messages, such as its path.
    steps : mapping of int to callable, optional
        The steps that upgrade older documents.

    Returns
    -------
    Site
        What it says. Whether its parts fit together is for `validation.problems` to say.

    Raises
    ------
    DocumentError
        If it is not JSON, not of a known version, or a key or value cannot be used.
    """
    data = _plain(text, where=where)
    version = _version(data, where=where)
    if version < SCHEMA_VERSION:
        newer = upgraded(data, found=version, newest=SCHEMA_VERSION, steps=steps)
        if newer is None:
            raise DocumentError(
                f"'schema_version' is {version}, and nothing upgrades that version",
                where=where,
                cure=f"Write a document of version {SCHEMA_VERSION}; see the published schema",
            )
        data = newer
    try:
        # From JSON text, in strict mode: "0.8" is no number, true is no number, 0.8 is no whole number.
        return Site.model_validate_json(json.dumps(data), strict=True)
    except ValidationError as fault:
        found = complaints(fault, raw=data, root=Site)
        first = found[0]
        place = where if first.where == "the document" else f"{where}, {first.where}"
        raise DocumentError(first.what + and_more(len(found) - 1), where=place, cure=first.cure) from None


def write_document(site: Site) -> str:
    """Write a site as its document.

    Parameters
    ----------
    site : Site
        The site.

    Returns
    -------
    str
        JSON, always the same for equal sites with the same fields set; fields left at their default stay out, so
        that they stay defaults.

    Examples
    --------
    >>> from wardwright.model.fabric import Storey
    >>> house = Site(name="hut", storeys=(Storey(id="ground", name="ground floor", elevation_m=0.0),))
    >>> print(write_document(house), end="")
    {
      "schema_version": 1,
      "name": "hut",
      "storeys": [{"id": "ground", "name": "ground floor", "elevation_m": 0.0}]
    }
    """
    data = site.model_dump(mode="json", exclude_unset=True)
    data = {"schema_version": SCHEMA_VERSION, **{k: v for k, v in data.items() if k != "schema_version"}}
    for device, plain in zip(site.devices, data.get("devices", ()), strict=True):
        # The key that tells the mounts apart has a default in the records, but a document cannot do without it.
        plain["mount"] = {"on": device.mount.on, **plain["mount"]}
    return _written(data, indent=0) + "\n"


def json_schema() -> dict[str, Any]:
    """The published schema of the site document (JSON Schema, draft 2020-12)."""
    schema = _without_titles(Site.model_json_schema(mode="validation"))
    # What reading asks for beyond the records: a version, and the key that tells the mounts apart.
    schema["required"] = ["schema_version", *schema["required"]]
    for record in schema["$defs"].values():
        if "on" in record["properties"]:
            record["required"] = ["on", *record["required"]]
        record["properties"].get("basis", {}).pop("default", None)
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Wardwright site document",
        **schema,
    }


def _without_titles(schema: Any) -> Any:  # noqa: ANN401 - any JSON
    """The schema without the titles made up from the keys, which say nothing new."""
    if isinstance(schema, list):
        return [_without_titles(part) for part in schema]
    if not isinstance(schema, dict):
        return schema
    return {
        key: _without_titles(part)
        for key, part in schema.items()
        if not (key == "title" and isinstance(part, str))
    }


def _plain(text: str, *, where: str) -> dict[str, Any]:
    """The document as plain data, with what JSON's reader lets pass refused."""
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


def _version(data: dict[str, Any], *, where: str) -> int:
    cure = f'Write "schema_version": {SCHEMA_VERSION}'
    if "schema_version" not in data:
        raise DocumentError("key 'schema_version' is missing", where=where, cure=cure)
    version = data["schema_version"]
    if not isinstance(version, int) or isinstance(version, bool) or version < 0:
        raise DocumentError(
            f"'schema_version' should be a whole number, but is {shown(version)}", where=where, cure=cure
        )
    if version > SCHEMA_VERSION:
        raise DocumentError(
            f"'schema_version' is {version}, but this program reads up to version {SCHEMA_VERSION}",
            where=where,
            cure="Use a newer Wardwright for this document",
        )
    return version


def _written(value: object, *, indent: int) -> str:
    """JSON whose lists and objects stand on one line where they fit, so that an edit changes few lines."""
    flat = json.dumps(value, ensure_ascii=False, allow_nan=False)
    if (
        not isinstance(value, (dict, list))
        or not value
        or (indent > 0 and len(flat) + 2 * indent <= LINE_LENGTH)
    ):
        return flat
    inner = "  " * (indent + 1)
    if isinstance(value, dict):
        lines = [
            f"{json.dumps(k, ensure_ascii=False)}: {_written(v, indent=indent + 1)}" for k, v in value.items()
        ]
        opening, closing = "{", "}"
    else:
        lines = [_written(v, indent=indent + 1) for v in value]
        opening, closing = "[", "]"
    return opening + "\n" + ",\n".join(inner + line for line in lines) + "\n" + "  " * indent + closing
