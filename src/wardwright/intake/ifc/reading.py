"""A house from an IFC file (2x3 or 4): the whole of it, or one flat."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

import ifcopenshell.util.element
import shapely

from wardwright.errors import InputError, IntakeError
from wardwright.intake.ifc.edges import open_edges_of
from wardwright.intake.ifc.file import IfcHouse
from wardwright.intake.ifc.furniture import fixtures_of
from wardwright.intake.ifc.oddities import note_oddities
from wardwright.intake.ifc.openings import openings_of
from wardwright.intake.ifc.panes import panes_of
from wardwright.intake.ifc.premises import choices
from wardwright.intake.ifc.ringed_rooms import rooms_from_rings
from wardwright.intake.ifc.rings import note_rings
from wardwright.intake.ifc.roofs import rooflights_of, sloped_storeys
from wardwright.intake.ifc.spaces import floors_of, refuse_other_unit, rooms_of, spaces_of
from wardwright.intake.ifc.stairs import stairs_of
from wardwright.intake.ifc.walls import walls_of
from wardwright.intake.plain_names import with_plain_names
from wardwright.intake.report import IntakeReport
from wardwright.model.place import Place
from wardwright.model.site import Site

# What a line that points nowhere, or at a thing of another class, ends in.
_BROKEN = (AssertionError, AttributeError, TypeError, ValueError, LookupError, RuntimeError, ArithmeticError)

_FILLED_IN = re.compile(
    r"(project|building|default)( (project|building|name|number))?$|undefined$|untitled$|unnamed$|unknown$",
    re.IGNORECASE,
)
"""Names that drawing programs fill in by themselves."""
_WHERE = ("latitude_deg", "longitude_deg")


def read_ifc(data: bytes, *, where: str, premises: str | None = None) -> tuple[Site, IntakeReport]:
    """Read a house from an IFC file.

    Parameters
    ----------
    data : bytes
        The file.
    where : str
        Its name, for messages.
    premises : str or None
        What is ours: names of spaces or zones, or how the names of our spaces begin, parted by commas.
        None: everything.

    Returns
    -------
    Site
        The house, each fact marked as measured or guessed.
    IntakeReport
        What was read, guessed and left out.

    Raises
    ------
    IntakeError
        If the file is broken, or holds no room, or `premises` picks none.
    """
    try:
        return _read(IfcHouse(data, where=where), premises)
    except InputError:
        raise
    except (*_BROKEN, shapely.errors.ShapelyError) as error:
        said = str(error).splitlines()[0][:160] if str(error) else "no reason given"
        raise IntakeError(
            f"something in it is not what its class says ({type(error).__name__}: {said})",
            where=where,
            cure="Export the building again; an edited or damaged file often has lines that point nowhere",
        ) from error


def _read(house: IfcHouse, premises: str | None) -> tuple[Site, IntakeReport]:
    if not house.of("IfcBuildingStorey"):
        raise IntakeError(
            "it holds no storey",
            where=house.where,
            cure="Export the whole building with its storeys, or write the house as notes",
        )
    rooms = rooms_of(house, premises) if house.of("IfcSpace") else rooms_from_rings(house, premises)
    refuse_other_unit(house, rooms)
    floors = floors_of(house, rooms)
    storeys, spaces = spaces_of(house, rooms, floors)
    built = walls_of(house, floors)
    walls = [b.wall for b in built]
    bare = Site(
        name=_name(house),
        place=_place(house),
        storeys=tuple(sloped_storeys(house, storeys, spaces)),
        spaces=tuple(spaces),
        walls=tuple(walls),
    )
    openings = [
        *openings_of(house, bare, built),
        *panes_of(house, bare, built),
        *rooflights_of(house, bare, floors),
    ]
    site = bare.model_copy(
        update={
            "openings": tuple(openings),
            "open_edges": tuple(open_edges_of(house, spaces, walls)),
            "stairs": tuple(stairs_of(house, bare, floors)),
            "fixtures": tuple(fixtures_of(house, bare, floors)),
        }
    )
    site = with_plain_names(site)
    note_rings(house, floors, spaces)
    note_oddities(house, site, rooms=rooms, floors=floors)
    _note_unread(house)
    report = house.draft.report(source=house.where, form=str(house.file.schema), counts=counts_of(site))
    if premises is None:
        report = report.model_copy(update={"premises": choices(house, house.of("IfcSpace"))})
    return site, report


def counts_of(site: Site) -> tuple[tuple[str, int], ...]:
    """How many of each kind a site holds."""
    kinds = ("storeys", "spaces", "walls", "openings", "open_edges", "stairs", "fixtures")
    ours = sum(space.belongs == "ours" for space in site.spaces)
    counts = [(kind.replace("_", " "), len(getattr(site, kind))) for kind in kinds]
    return (*counts[:2], ("spaces that are ours", ours), *counts[2:])


def _name(house: IfcHouse) -> str:
    """What the file calls the house; the file's own name where it holds only what a drawing program fills in."""
    project = house.of("IfcProject")[0]
    names = (project.LongName, *(b.Name for b in house.of("IfcBuilding")), project.Name)
    said = (str(name).strip() for name in names if name)
    stem = house.where.rpartition(".")[0] or house.where
    return next((name for name in said if name and not _FILLED_IN.match(name)), stem)


def _place(house: IfcHouse) -> Place:
    fields: dict[str, float] = {}
    for context in house.of("IfcGeometricRepresentationContext"):
        north = getattr(context, "TrueNorth", None)
        if (
            context.ContextType == "Model"
            and north is not None
            and not context.is_a("IfcGeometricRepresentationSubContext")
        ):
            dx, dy = north.DirectionRatios[:2]
            fields["north_deg"] = round(math.degrees(math.atan2(-dx, dy)), 3) + 0.0
    for site in house.of("IfcSite")[:1]:
        for name, stated in zip(_WHERE, (site.RefLatitude, site.RefLongitude), strict=True):
            if stated:
                fields[name] = round(degrees_of(stated), 6)
    if "north_deg" in fields:
        house.draft.read(f"true north {_lies(fields['north_deg'])} on the plan")
    where = [f"{name.removesuffix('_deg')} {fields[name]:.2f}" for name in _WHERE if name in fields]
    if where:
        house.draft.read(f"{' and '.join(where)}: check them, files often carry those of the drawing office")
    return Place.model_validate({**fields, "basis": dict.fromkeys(fields, "measured")})


def _lies(north_deg: float) -> str:
    turned = f"{abs(north_deg):g} degrees {'anti' if north_deg > 0 else ''}clockwise from up"
    return f"lies {turned}" if north_deg else "is up"


def degrees_of(parts: Sequence[int]) -> float:
    """Degrees from degrees, minutes, seconds and millionths of a second.

    Examples
    --------
    >>> degrees_of((49, 6, 0)), degrees_of((-87, -30, 0, 0))
    (49.1, -87.5)
    """
    scales = (1.0, 60.0, 3600.0, 3600.0e6)
    return sum(part / scale for part, scale in zip(parts, scales, strict=False))


def _note_unread(house: IfcHouse) -> None:
    """Name the kinds of built thing that no part of the site is made from."""
    read = (
        "IfcWall", "IfcCurtainWall", "IfcDoor", "IfcWindow", "IfcSlab", "IfcRoof", "IfcStair", "IfcStairFlight",
        "IfcFurnishingElement", "IfcFlowTerminal", "IfcEnergyConversionDevice", "IfcFeatureElement", "IfcRailing",
    )  # fmt: skip
    parts = {
        part.id() for wall in house.of("IfcCurtainWall") for part in ifcopenshell.util.element.get_parts(wall)
    }
    for entity in house.of("IfcElement"):
        if entity.id() not in parts and not any(entity.is_a(name) for name in read):
            house.draft.leave_out(_in_words(entity.is_a()), "not read", f"#{entity.id()}")


def _in_words(name: str) -> str:
    """`IfcVirtualElement` as `virtual element`."""
    return re.sub(r"(?<!^)([A-Z])", r" \1", name.removeprefix("Ifc")).lower()
