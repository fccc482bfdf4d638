"""The sample houses of the package."""

from __future__ import annotations

from importlib.resources import files

from wardwright.errors import DocumentError
from wardwright.model.document import read_document
from wardwright.model.site import Site
from wardwright.model.wording import suggestion


def sample_names() -> tuple[str, ...]:
    """Names of the sample houses, in the order of the alphabet."""
    folder = files("wardwright") / "samples"
    if not folder.is_dir():
        return ()
    return tuple(sorted(f.name.removesuffix(".json") for f in folder.iterdir() if f.name.endswith(".json")))


def read_sample(name: str) -> Site:
    """Read a sample house.

    Parameters
    ----------
    name : str
        One of `sample_names()`.

    Returns
    -------
    Site
        The house.

    Raises
    ------
    DocumentError
        If there is none of that name.
    """
    known = sample_names()
    if name not in known:
        near = suggestion(name, known)
        hint = f"; did you mean '{near}'" if near else ""
        raise DocumentError(
            f"there is no sample '{name}'{hint}", where="samples", cure="Use one of " + ", ".join(known)
        )
    text = (files("wardwright") / "samples" / f"{name}.json").read_text(encoding="utf-8")
    return read_document(text, where=f"samples/{name}.json")


def sample_notes(name: str) -> str:
    """Read the notes that a sample house was made from.

    Parameters
    ----------
    name : str
        One of `sample_names()`.

    Returns
    -------
    str
        The notes.
    """
    return (files("wardwright") / "samples" / f"{name}.notes").read_text(encoding="utf-8")
