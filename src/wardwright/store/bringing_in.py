"""A house made of what was handed in: a building file, a drawing, notes or a site document, with notes beside it."""

from __future__ import annotations

from pathlib import PurePath
from typing import NamedTuple, Protocol

from wardwright.errors import IntakeError
from wardwright.intake.notes.reading import read_notes
from wardwright.intake.report import IntakeReport
from wardwright.model.catalogue import Catalogue
from wardwright.model.document import read_document
from wardwright.model.json_text import LARGEST_DOCUMENT_BYTES
from wardwright.model.site import Site
from wardwright.model.validation import problems, sound
from wardwright.questions.worth_adding import worth_adding
from wardwright.store.given_files import GivenFile
from wardwright.store.limited import LARGEST_FILE_BYTES, read_dxf_limited, read_ifc_limited
from wardwright.store.texts import LARGEST_NOTES_BYTES

LARGEST_BY_ENDING = {
    ".ifc": LARGEST_FILE_BYTES,
    ".dxf": LARGEST_FILE_BYTES,
    ".json": LARGEST_DOCUMENT_BYTES,
    ".notes": LARGEST_NOTES_BYTES,
    ".txt": LARGEST_NOTES_BYTES,
}
"""What a house is made of, by how the file's name ends, and how long it may be. [bytes]"""
NOTES_ENDINGS = (".notes", ".txt")
IN_NOTES = "Export the building as IFC or its plan as DXF, or describe the house in notes"
LONGEST_NAME = 200
"""Letters of a file's name. [-] (assumption)"""


class Steps(Protocol):
    """Somebody who watches long work, and may want no more of it."""

    def step(self, doing: str) -> None:
        """Say what is done next; raises Stopped if nobody wants it any more."""

    def is_stopped(self) -> bool:
        """Whether nobody wants it any more."""


class Wish(NamedTuple):
    """What a house is to be made of."""

    file: GivenFile
    notes: GivenFile | None = None
    premises: str | None = None
    """Which of the building's premises is ours; None: all of it."""
    unit: str | None = None
    """What one unit of a drawing is; None: it is found out."""


class House(NamedTuple):
    """A house that was brought in."""

    site: Site
    report: IntakeReport | None
    """None: it was made of text, where nothing is guessed in silence."""
    noted: tuple[str, ...]
    """What does not quite fit together, and stops no answer."""
    worth_adding: tuple[str, ...]


def largest_of(name: str) -> int:
    """How long a file of a name may be; IntakeError if it is nothing that a house is made of.

    Examples
    --------
    >>> largest_of("Mill House.IFC")
    500000000
    """
    ending = PurePath(name).suffix.lower()
    if ending not in LARGEST_BY_ENDING or len(name) > LONGEST_NAME:
        raise IntakeError(
            f"a {ending or 'file without an ending'} is neither a building file (.ifc), a drawing (.dxf), "
            "notes (.notes, .txt) nor a site document (.json)",
            where=name[:LONGEST_NAME],
            cure=IN_NOTES,
        )
    return LARGEST_BY_ENDING[ending]


def bring_in(wish: Wish, catalogue: Catalogue, steps: Steps) -> House:
    """Make a house of what was handed in.

    Parameters
    ----------
    wish : Wish
        The files, and what was said of them.
    catalogue : Catalogue
        The rows that they may name.
    steps : Steps
        Is told of each step, and asked between them.

    Returns
    -------
    House
        Its parts fit together.

    Raises
    ------
    InputError
        If a file cannot be used.
    Stopped
        If nobody wanted it any more.
    """
    _refuse_idle(wish)
    steps.step(f"reading {wish.file.name}")
    site, report = _read(wish, catalogue, steps)
    if wish.notes is not None:
        steps.step(f"adding {wish.notes.name}")
        text = wish.notes.text("file of notes", largest_bytes=LARGEST_NOTES_BYTES)
        site = read_notes(text, where=wish.notes.name, base=site, catalogue=catalogue)
    steps.step("looking whether it fits together")
    site = sound(site, where=wish.file.name, catalogue=catalogue)
    noted = tuple(f"{one.where}: {one.what}. {one.cure}." for one in problems(site, catalogue))
    steps.step("looking for what is worth adding")
    return House(site, report, noted, worth_adding(site, catalogue))


def _refuse_idle(wish: Wish) -> None:
    """Refuse what says nothing of a file of this form."""
    if wish.premises is not None and wish.file.ending != ".ifc":
        raise IntakeError(
            "premises can be picked in a building file only",
            where=wish.file.name,
            cure="Leave them out, and say in the notes which spaces are ours",
        )
    if wish.unit is not None and wish.file.ending != ".dxf":
        raise IntakeError(
            "a unit can be told of a drawing only",
            where=wish.file.name,
            cure="Leave it out: a building file and notes say their units themselves",
        )
    if wish.notes is not None and wish.notes.ending not in NOTES_ENDINGS:
        raise IntakeError(
            "these are no notes", where=wish.notes.name, cure="Give notes as text, .notes or .txt"
        )


def _read(wish: Wish, catalogue: Catalogue, steps: Steps) -> tuple[Site, IntakeReport | None]:
    file = wish.file
    if file.ending == ".ifc":
        return read_ifc_limited(file, wish.premises, is_stopped=steps.is_stopped)
    if file.ending == ".dxf":
        return read_dxf_limited(file, wish.unit, is_stopped=steps.is_stopped)
    if file.ending == ".json":
        text = file.text("site document", largest_bytes=LARGEST_DOCUMENT_BYTES)
        return read_document(text, where=file.name), None
    text = file.text("file of notes", largest_bytes=LARGEST_NOTES_BYTES)
    return read_notes(text, where=file.name, catalogue=catalogue), None


def contents_of(site: Site) -> tuple[str, ...]:
    """How much of each kind a site holds, kinds that it has none of left out.

    Examples
    --------
    >>> from wardwright.store.samples import read_sample
    >>> contents_of(read_sample("one-room"))[:2]
    ('1 storey', '1 space')
    """
    kinds = (
        (site.storeys, "storey", "storeys"), (site.spaces, "space", "spaces"), (site.walls, "wall", "walls"),
        (site.openings, "opening", "openings"), (site.stairs, "stair", "stairs"),
        (site.fixtures, "fixture", "fixtures"), (site.people, "person", "people"), (site.pets, "pet", "pets"),
        (site.devices, "device", "devices"),
    )  # fmt: skip
    return tuple(f"{len(found)} {one if len(found) == 1 else many}" for found, one, many in kinds if found)
