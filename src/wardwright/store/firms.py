"""A firm's own file (TOML), and the logo beside it."""

from __future__ import annotations

import json
import tomllib
from decimal import Decimal
from importlib.resources import as_file, files
from pathlib import Path

from pydantic import ValidationError

from wardwright.costing.firm import Firm
from wardwright.errors import OfficeError
from wardwright.model.complaint import complaints
from wardwright.model.wording import and_more, masked
from wardwright.store.texts import read_text

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
    if masked(text) != text:
        raise OfficeError(
            "the file holds what looks like somebody's code",
            where=where,
            cure="Take it out: codes and keys are never stored",
        )
    try:
        # As JSON text, in strict mode, as device sheets are; a decimal travels as its own text.
        firm = Firm.model_validate_json(json.dumps(raw, default=str), strict=True)
    except ValidationError as fault:
        found = complaints(fault, raw=raw, root=Firm)
        first = found[0]
        raise OfficeError(
            first.what + and_more(len(found) - 1), where=f"{where}, {first.where}", cure=first.cure
        ) from None
    if firm.logo:
        logo_of(path, firm)
    return firm


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
