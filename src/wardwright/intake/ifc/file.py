"""An IFC file opened: its unit, its placements brought near the origin, its solids, its ids."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from typing import Any, NamedTuple, TypeAlias

import ifcopenshell
import ifcopenshell.geom
import ifcopenshell.util.element
import ifcopenshell.util.placement
import ifcopenshell.util.unit
import numpy as np

from wardwright.errors import IntakeError
from wardwright.intake.ifc.shapes import FloatArray, Solid
from wardwright.intake.report import ReportDraft
from wardwright.model.record import Point2

Entity: TypeAlias = Any
"""One entity of an IFC file: its attributes are those of its class, which only the file knows."""

FAR_OFF_M = 1000.0
"""A house farther than this from the file's zero is moved to it. [m] (assumption)"""

_SPELT = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "ß": "ss", "æ": "ae", "ø": "o", "å": "a"})


class Shift(NamedTuple):
    """What is taken off every coordinate of the file. [m]"""

    x: float
    y: float
    z: float


class IfcHouse:
    """One open IFC file and what is noted while it is read."""

    def __init__(self, data: bytes, *, where: str) -> None:
        self.where = where
        self.file = _opened(data, where)
        self.unit_m = float(ifcopenshell.util.unit.calculate_unit_scale(self.file))
        self.draft = ReportDraft()
        self._ids: set[str] = set()
        self._solids: dict[tuple[int, bool], Solid | None] = {}
        self._settings = {holes: _settings(holes=holes) for holes in (True, False)}
        self.shift = Shift(0.0, 0.0, 0.0)
        self.shift = self._found_shift()

    def of(self, *classes: str) -> list[Entity]:
        """All entities of some classes and their children, in the file's order, each once."""
        found = {e.id(): e for name in classes for e in self._of_one(name)}
        return [found[key] for key in sorted(found)]

    def _of_one(self, name: str) -> list[Entity]:
        try:
            return list(self.file.by_type(name))
        except RuntimeError:  # this version of the schema has no such class
            return []

    def solid(self, entity: Entity, *, holes: bool = False) -> Solid | None:
        """The solid of an entity [m]; its own holes cut out or not; None where it has none."""
        key = (entity.id(), holes)
        if key not in self._solids:
            self._solids[key] = self._made(entity, holes=holes)
        return self._solids[key]

    def _made(self, entity: Entity, *, holes: bool) -> Solid | None:
        if getattr(entity, "Representation", None) is None:
            return None
        try:
            shape: Any = ifcopenshell.geom.create_shape(self._settings[holes], entity)
        except RuntimeError:
            self.draft.leave_out("shape", "could not be built", f"{entity.is_a()} #{entity.id()}")
            return None
        local = np.asarray(shape.geometry.verts, dtype=np.float64).reshape(-1, 3)
        faces = np.asarray(shape.geometry.faces, dtype=np.int64).reshape(-1, 3)
        if len(faces) == 0:
            return None
        matrix = np.asarray(shape.transformation.matrix, dtype=np.float64).reshape(4, 4, order="F")
        points = local @ matrix[:3, :3].T + (matrix[:3, 3] - np.array(self.shift))
        return Solid(points, faces)

    def frame(self, entity: Entity) -> FloatArray:
        """The placement of an entity as a 4 by 4 matrix, near the origin. [m]"""
        placement = getattr(entity, "ObjectPlacement", None)
        matrix = np.eye(4) if placement is None else self._placed(entity, placement)
        matrix[:3, 3] = matrix[:3, 3] * self.unit_m - np.array(self.shift)
        return matrix

    def _placed(self, entity: Entity, placement: Entity) -> FloatArray:
        try:
            return np.array(ifcopenshell.util.placement.get_local_placement(placement), dtype=np.float64)
        except (AssertionError, AttributeError, RecursionError, TypeError, ValueError) as error:
            raise IntakeError(
                "its placement is broken",
                where=f"{self.where}, #{entity.id()} {called(entity)}",
                cure="Export the building again; an edited or damaged file often has lines that point nowhere",
            ) from error

    def axes(self, entity: Entity) -> tuple[Point2, Point2]:
        """The directions of an entity's own x and y axes on the plan. [-]"""
        matrix = self.frame(entity)
        return (float(matrix[0, 0]), float(matrix[1, 0])), (float(matrix[0, 1]), float(matrix[1, 1]))

    def new_id(self, name: str, kind: str) -> str:
        """An id made from a name, used by nothing else yet."""
        stem = slug(name) or kind
        made, count = stem, 1
        while made in self._ids:
            count += 1
            made = f"{stem}-{count}"
        self._ids.add(made)
        return made

    def _found_shift(self) -> Shift:
        buildings = self.of("IfcBuilding")
        zero = float(self.frame(buildings[0])[2, 3]) if buildings else 0.0
        places = [self.frame(e)[:2, 3] for e in self.of("IfcSpace", "IfcWall", "IfcSlab")]
        if not places:
            return Shift(0.0, 0.0, zero)
        middle = np.median(np.array(places), axis=0)
        if float(np.hypot(*middle)) <= FAR_OFF_M:
            return Shift(0.0, 0.0, zero)
        x, y = (float(v) for v in np.floor(middle))
        self.draft.read(f"moved near the origin: {x:.0f} m taken off x and {y:.0f} m off y")
        return Shift(x, y, zero)


def _opened(data: bytes, where: str) -> ifcopenshell.file:
    head = data[:2000].lstrip()
    if head.startswith(b"PK"):
        raise IntakeError(
            "it is a packed file, not IFC text", where=where, cure="Unpack it and give the .ifc file inside"
        )
    if not head.startswith(b"ISO-10303-21"):
        raise IntakeError(
            "it is not an IFC file: it does not begin with ISO-10303-21",
            where=where,
            cure="Export the building as IFC (the .ifc text form)",
        )
    if b"END-ISO-10303-21" not in data[-4096:]:
        raise IntakeError(
            "the file ends before its last line, END-ISO-10303-21",
            where=where,
            cure="Fetch or export the file again: it was cut short",
        )
    try:
        opened = ifcopenshell.file.from_string(data.decode("latin-1"))
        projects = opened.by_type("IfcProject")
    except Exception as error:  # the library raises several kinds of its own
        raise IntakeError(
            f"it cannot be read as IFC ({str(error).splitlines()[0] if str(error) else 'no reason given'})",
            where=where,
            cure="Export the building again as IFC 2x3 or IFC4",
        ) from error
    if not projects:
        raise IntakeError(
            "it holds no IfcProject", where=where, cure="Export the whole building, not a part or a library"
        )
    return opened


def _settings(*, holes: bool) -> ifcopenshell.geom.settings:
    settings = ifcopenshell.geom.settings()  # type: ignore[no-untyped-call]  # the library leaves it untyped
    settings.set("disable-opening-subtractions", not holes)
    return settings


def slug(name: str) -> str:
    """Small letters, digits and hyphens from a name.

    Examples
    --------
    >>> slug("6 Küche"), slug("Basic Wall:Party Wall - CMU")
    ('6-kueche', 'basic-wall-party-wall-cmu')
    """
    plain = unicodedata.normalize("NFKD", name.lower().translate(_SPELT))
    return re.sub(r"[^a-z0-9]+", "-", plain.encode("ascii", "ignore").decode()).strip("-")[:60].strip("-")


def called(entity: Entity) -> str:
    """What a report calls an entity: its name, of `family:type:number` the family and the number.

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> called(SimpleNamespace(Name="M_Sofa:1830mm:1830mm:167283"))
    'Sofa 167283'
    """
    parts = [part.strip() for part in (entity.Name or "").removeprefix("M_").split(":")]
    if len(parts) > 1:
        return f"{parts[0]} {parts[-1]}"
    return parts[0] or f"{entity.is_a()} #{entity.id()}"


def type_of(entity: Entity) -> Entity | None:
    """The type that an entity is an occurrence of."""
    return ifcopenshell.util.element.get_type(entity)


def container_of(entity: Entity) -> Entity | None:
    """The storey or space that an entity is listed in, directly or through what it is part of."""
    return ifcopenshell.util.element.get_container(entity)


def stated(entity: Entity, pset: str, name: str) -> object:
    """One property of a property set; None where it is not stated."""
    value: object = ifcopenshell.util.element.get_pset(entity, pset, name)
    return value


def layers_of(entity: Entity) -> Iterator[tuple[str, float]]:
    """Names and thicknesses of an entity's materials; the thickness in the file's unit, 0 where unknown."""
    material: Any = ifcopenshell.util.element.get_material(entity, should_skip_usage=True)
    if material is None:
        return
    if material.is_a("IfcMaterialLayerSet"):
        for layer in material.MaterialLayers:
            if layer.Material is not None:
                yield (layer.Material.Name or "", float(layer.LayerThickness))
    elif material.is_a("IfcMaterialList"):
        for each in material.Materials:
            yield (each.Name or "", 0.0)
    elif material.is_a("IfcMaterial"):
        yield (material.Name or "", 0.0)
