"""A firm's own file (TOML), and the logo beside it."""

from __future__ import annotations

import json
import tomllib
from collections.abc import Iterator, Mapping
from decimal import Decimal
from importlib.resources import as_file, files
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from wardwright.costing.firm import Firm
from wardwright.documents.content.paper import Logo
from wardwright.errors import OfficeError
from wardwright.model.complaint import complaints
from wardwright.model.wording import and_more, masked
from wardwright.store.texts import read_text, write_text

LARGEST_FIRM_BYTES = 1_000_000
LARGEST_LOGO_BYTES = 2_000_000
"""Longer files are refused. [bytes] (assumption)"""
PICTURES = (".png", ".jpg", ".jpeg", ".svg")


def read_firm(path: Path) -> Firm:
    """Read a firm's own file.

    Parameters
    ----------
    path : Path
        Where it is.

    Returns
    -------
    Firm
        What it says; amounts exactly as written.

    Raises
    ------
    OfficeError
        If it cannot be read, has an unknown key, names a logo that is not beside it, or holds somebody's code.
    """
    where = str(path)
    text = read_text(
        path,
        "firm's file",
        fault=OfficeError,
        largest_bytes=LARGEST_FIRM_BYTES,
        cure="Give name, address, rates and terms only",
    )
    try:
        raw = tomllib.loads(text, parse_float=Decimal)
    except tomllib.TOMLDecodeError as fault:
        what = f"this is not TOML: {str(fault)[0].lower()}{str(fault)[1:]}"
        raise OfficeError(what, where=where, cure="Mend that line; docs/firm.md has a whole file") from None
    except RecursionError:
        raise OfficeError(
            "the file is nested too deeply", where=where, cure="Give plain keys and tables"
        ) from None
    firm = firm_from(raw, where=where)
    if firm.logo:
        logo_of(path, firm)
    return firm


def firm_from(raw: object, *, where: str) -> Firm:
    """Read a firm from plain data, such as a form has it.

    Parameters
    ----------
    raw : object
        Mappings, lists, text, numbers; amounts as decimals or as their text.
    where : str
        What it is called.

    Returns
    -------
    Firm
        What it says.

    Raises
    ------
    OfficeError
        If it has an unknown key, lacks one or holds what cannot be, or holds somebody's code.
    """
    text = json.dumps(_with_minutes(raw), default=str, ensure_ascii=False)
    if masked(text) != text:
        raise OfficeError(
            "it holds what looks like somebody's code",
            where=where,
            cure="Take it out: codes and keys are never stored",
        )
    try:
        # As JSON text, in strict mode, as device sheets are; a decimal travels as its own text.
        return Firm.model_validate_json(text, strict=True)
    except ValidationError as fault:
        found = complaints(fault, raw=raw, root=Firm)
        first = found[0]
        place = f"{where}, {first.where}" if first.where else where
        raise OfficeError(first.what + and_more(len(found) - 1), where=place, cure=first.cure) from None


def _with_minutes(raw: object) -> object:
    """The same with the one number that is no amount as a number: a file has it as a decimal."""
    rates = raw.get("rates") if isinstance(raw, Mapping) else None
    if not isinstance(raw, Mapping) or not isinstance(rates, Mapping):
        return raw
    minutes = rates.get("travel_min")
    plain = float(minutes) if isinstance(minutes, Decimal) else minutes
    return {**raw, "rates": {**rates, "travel_min": plain}} if "travel_min" in rates else raw


def write_firm(path: Path, firm: Firm) -> None:
    """Write a firm's own file, whole or not at all; `read_firm` gives the same firm again.

    Parameters
    ----------
    path : Path
        Where to.
    firm : Firm
        What it says; what stands at its default is left out.

    Raises
    ------
    OfficeError
        If it cannot be written.
    """
    data = firm.model_dump(exclude_defaults=True)
    write_text(path, "\n".join(_toml(data)).lstrip("\n") + "\n", fault=OfficeError)


def _toml(data: Mapping[str, Any], place: str = "") -> Iterator[str]:
    """The lines of a table: its own values first, then the tables in it."""
    inner = {name: value for name, value in data.items() if _is_table(value)}
    yield from (f"{name} = {_value(value)}" for name, value in data.items() if name not in inner)
    for name, value in inner.items():
        whole = f"{place}{name}"
        for one in value if isinstance(value, tuple) else (value,):
            yield from ("", f"[[{whole}]]" if isinstance(value, tuple) else f"[{whole}]")
            yield from _toml(one, f"{whole}.")


def _is_table(value: object) -> bool:
    return isinstance(value, Mapping) or (
        isinstance(value, tuple) and bool(value) and isinstance(value[0], Mapping)
    )


def _value(value: object) -> str:
    match value:
        case str():
            # Of JSON's letters one alone is none in this format.
            return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007F")
        case tuple():
            return f"[{', '.join(_value(one) for one in value)}]"
        case Decimal():
            return f"{value:f}"
        case _:
            return str(value)


def logo_of(path: Path, firm: Firm) -> bytes:
    """The picture of a firm's logo.

    Parameters
    ----------
    path : Path
        The firm's file.
    firm : Firm
        Names the picture; empty: there is none.

    Returns
    -------
    bytes
        The picture; nothing where there is none.

    Raises
    ------
    OfficeError
        If it is not beside the file, is no picture by its ending, or is too large.
    """
    if not firm.logo:
        return b""
    where = f"{path}, logo"
    name = Path(firm.logo)
    if len(name.parts) != 1 or name.suffix.lower() not in PICTURES:
        raise OfficeError(
            f"'{firm.logo}' is no picture beside this file",
            where=where,
            cure="Put a PNG, JPEG or SVG into the same folder and give its name alone",
        )
    picture = path.parent / name
    try:
        if picture.stat().st_size > LARGEST_LOGO_BYTES:
            raise OfficeError("the picture is larger than 2 MB", where=where, cure="Give a smaller one")
        return picture.read_bytes()
    except OSError as trouble:
        raise OfficeError(
            f"the picture '{firm.logo}' cannot be read ({trouble.strerror})",
            where=where,
            cure="Put it beside the firm's file, or take 'logo' out",
        ) from None


def logo_beside(path: Path, firm: Firm) -> Logo | None:
    """A firm's logo for its papers; None where it has none. As `logo_of`."""
    return Logo(firm.logo, logo_of(path, firm), f"Logo of {firm.name}") if firm.logo else None


def sample_firm(name: str) -> Firm:
    """Read one of the invented firms that come with the program.

    Parameters
    ----------
    name : str
        Without its ending, such as ``example-alarms``.

    Returns
    -------
    Firm
        It.

    Raises
    ------
    OfficeError
        If there is none of that name.
    """
    folder = files("wardwright") / "samples" / "firms"
    known = sorted(one.name.removesuffix(".toml") for one in folder.iterdir() if one.name.endswith(".toml"))
    if name not in known:
        raise OfficeError(
            f"there is no sample firm '{name}'", where="samples", cure=f"Use one of {', '.join(known)}"
        )
    with as_file(folder / f"{name}.toml") as path:
        return read_firm(path)
