"""The site document: JSON that people can read and write, to and from a `Site`."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from pydantic import ValidationError

from wardwright.errors import DocumentError
from wardwright.model.complaint import complaints
from wardwright.model.device import Device
from wardwright.model.json_text import plain_json
from wardwright.model.record import Record
from wardwright.model.site import SCHEMA_VERSION, Site
from wardwright.model.upgrades.table import UPGRADES, Step, upgraded
from wardwright.model.wording import and_more, shown

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
    data = plain_json(text, where=where)
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
    return _written(plain_site(site), indent=0) + "\n"


def plain_site(site: Site) -> dict[str, Any]:
    """A site as the plain data of its document: fields left at their default stay out."""
    data = site.model_dump(mode="json", exclude_unset=True)
    data = {"schema_version": SCHEMA_VERSION, **{k: v for k, v in data.items() if k != "schema_version"}}
    if site.devices:
        data["devices"] = [plain_record(device) for device in site.devices]
    return data


def plain_record(record: Record) -> dict[str, Any]:
    """One record of a site as it stands in the document."""
    plain = record.model_dump(mode="json", exclude_unset=True)
    if isinstance(record, Device):
        # The key that tells the mounts apart has a default in the records, but a document cannot do without it.
        plain["mount"] = {"on": record.mount.on, **plain["mount"]}
    return plain


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
