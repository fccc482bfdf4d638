"""A small house written as an IFC file by the tests themselves, in any unit, place, turn and order.

Ground floor: a hall (front door in the south wall, stairs along the west wall) and a kitchen (window in the east
wall), a door between them. Upper floor: one bedroom, with a well over the stairs. All in metres before scaling.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import Any

import ifcopenshell
import ifcopenshell.guid

Vector = tuple[float, float, float]


@dataclass(frozen=True)
class Wish:
    """What is to differ from the plain house."""

    schema: str = "IFC4"
    unit_m: float = 1.0
    turn_deg: float = 0.0
    offset: Vector = (0.0, 0.0, 0.0)
    upper_first: bool = False
    with_spaces: bool = True
    true_north: tuple[float, float] | None = None
    gable: bool = False
    operation: str = "SINGLE_SWING_LEFT"
    extra_walls: tuple[tuple[str, int, tuple[float, ...]], ...] = ()
    """Name, storey 0 or 1, and x0 y0 z0 x1 y1 z1 above that storey's floor."""
    panels: tuple[tuple[str, float, float], ...] | None = None
    """With it the upper north wall is a curtain wall: a panel's name and its x0 and x1, from floor to 2.4 m."""


UPPER_M = 2.7
TREADS = 14


@dataclass
class _Writer:
    wish: Wish
    file: Any = field(init=False)
    body: Any = field(init=False)
    storeys: list[Any] = field(init=False)

    def __post_init__(self) -> None:
        self.file = ifcopenshell.file(schema=self.wish.schema)
        origin = self.axes((0.0, 0.0, 0.0))
        north = self.wish.true_north
        context = self.file.create_entity(
            "IfcGeometricRepresentationContext",
            ContextType="Model",
            CoordinateSpaceDimension=3,
            Precision=1e-5,
            WorldCoordinateSystem=origin,
            TrueNorth=None if north is None else self.file.create_entity("IfcDirection", north),
        )
        prefix = "MILLI" if self.wish.unit_m == 0.001 else None
        length = self.file.create_entity("IfcSIUnit", UnitType="LENGTHUNIT", Prefix=prefix, Name="METRE")
        angle = self.file.create_entity("IfcSIUnit", UnitType="PLANEANGLEUNIT", Name="RADIAN")
        units = self.file.create_entity("IfcUnitAssignment", Units=[length, angle])
        self.body = context
        project = self.root(
            "IfcProject",
            Name="p",
            LongName="Test house",
            RepresentationContexts=[context],
            UnitsInContext=units,
        )
        turn = math.radians(self.wish.turn_deg)
        frame = self.axes(self.wish.offset, x=(math.cos(turn), math.sin(turn), 0.0))
        placed = self.file.create_entity("IfcLocalPlacement", RelativePlacement=frame)
        building = self.root("IfcBuilding", Name="b", ObjectPlacement=placed, CompositionType="ELEMENT")
        self.whole(project, [building])
        heights = (("Ground", 0.0), ("Upper", UPPER_M))
        self.storeys = [
            self.root(
                "IfcBuildingStorey",
                Name=name,
                ObjectPlacement=self.placed((0.0, 0.0, z), parent=placed),
                CompositionType="ELEMENT",
                Elevation=z / self.wish.unit_m,
            )
            for name, z in heights
        ]
        self.whole(building, self.storeys[::-1] if self.wish.upper_first else self.storeys)

    def root(self, kind: str, **fields: Any) -> Any:
        return self.file.create_entity(kind, GlobalId=ifcopenshell.guid.new(), **fields)

    def whole(self, parent: Any, parts: list[Any]) -> None:
        self.root("IfcRelAggregates", RelatingObject=parent, RelatedObjects=parts)

    def point(self, place: tuple[float, ...]) -> Any:
        scaled = tuple(float(v / self.wish.unit_m) for v in place)
        return self.file.create_entity("IfcCartesianPoint", scaled)

    def axes(self, place: Vector, *, x: Vector = (1.0, 0.0, 0.0)) -> Any:
        return self.file.create_entity(
            "IfcAxis2Placement3D",
            Location=self.point(place),
            Axis=self.file.create_entity("IfcDirection", (0.0, 0.0, 1.0)),
            RefDirection=self.file.create_entity("IfcDirection", x),
        )

    def placed(self, place: Vector, *, parent: Any, x: Vector = (1.0, 0.0, 0.0)) -> Any:
        return self.file.create_entity(
            "IfcLocalPlacement", PlacementRelTo=parent, RelativePlacement=self.axes(place, x=x)
        )

    def prism(self, corners: list[tuple[float, float]], *, low: float, height: float) -> Any:
        points = [self.point(c) for c in (*corners, corners[0])]
        outline = self.file.create_entity("IfcPolyline", Points=points)
        profile = self.file.create_entity(
            "IfcArbitraryClosedProfileDef", ProfileType="AREA", OuterCurve=outline
        )
        return self.file.create_entity(
            "IfcExtrudedAreaSolid",
            SweptArea=profile,
            Position=self.axes((0.0, 0.0, low)),
            ExtrudedDirection=self.file.create_entity("IfcDirection", (0.0, 0.0, 1.0)),
            Depth=height / self.wish.unit_m,
        )

    def shape(self, solids: list[Any]) -> Any:
        body = self.file.create_entity(
            "IfcShapeRepresentation",
            ContextOfItems=self.body,
            RepresentationIdentifier="Body",
            RepresentationType="SweptSolid",
            Items=solids,
        )
        return self.file.create_entity("IfcProductDefinitionShape", Representations=[body])

    def thing(self, kind: str, storey: int, box: tuple[float, ...], **fields: Any) -> Any:
        """A box x0 y0 z0 x1 y1 z1 above a storey's floor, placed at its own first corner."""
        x0, y0, z0, x1, y1, z1 = box
        corners = [(0.0, 0.0), (x1 - x0, 0.0), (x1 - x0, y1 - y0), (0.0, y1 - y0)]
        return self.root(
            kind,
            ObjectPlacement=self.placed((x0, y0, z0), parent=self.storeys[storey].ObjectPlacement),
            Representation=self.shape([self.prism(corners, low=0.0, height=z1 - z0)]),
            **fields,
        )

    def contain(self, storey: int, things: list[Any]) -> None:
        self.root(
            "IfcRelContainedInSpatialStructure",
            RelatedElements=things,
            RelatingStructure=self.storeys[storey],
        )

    def hole(self, host: Any, storey: int, box: tuple[float, ...], filling: Any | None = None) -> None:
        void = self.thing("IfcOpeningElement", storey, box, Name="hole")
        self.root("IfcRelVoidsElement", RelatingBuildingElement=host, RelatedOpeningElement=void)
        if filling is not None:
            self.root("IfcRelFillsElement", RelatingOpeningElement=void, RelatedBuildingElement=filling)

    def door(self, name: str, storey: int, place: Vector, *, x: Vector, width: float, operation: str) -> Any:
        """A door whose own x axis runs along its width and whose y axis is the way it opens."""
        leaf = self.prism([(0.0, 0.0), (width, 0.0), (width, 0.05), (0.0, 0.05)], low=0.0, height=2.0)
        door = self.root(
            "IfcDoor",
            Name=name,
            ObjectPlacement=self.placed(place, parent=self.storeys[storey].ObjectPlacement, x=x),
            Representation=self.shape([leaf]),
            OverallHeight=2.0 / self.wish.unit_m,
            OverallWidth=width / self.wish.unit_m,
        )
        if self.wish.schema == "IFC4":
            door.OperationType = operation
        else:
            style = self.root(
                "IfcDoorStyle",
                Name=name,
                OperationType=operation,
                ConstructionType="NOTDEFINED",
                ParameterTakesPrecedence=False,
                Sizeable=False,
            )
            self.root("IfcRelDefinesByType", RelatedObjects=[door], RelatingType=style)
        return door

    def made_of(self, things: list[Any], material: str) -> None:
        made = self.file.create_entity("IfcMaterial", Name=material)
        self.root("IfcRelAssociatesMaterial", RelatedObjects=things, RelatingMaterial=made)


def _walls(w: _Writer) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for storey, top in ((0, UPPER_M), (1, 2.4)):
        boxes = {
            f"south {storey}": (0.0, 0.0, 0.0, 6.0, 0.3, top),
            f"north {storey}": (0.0, 3.7, 0.0, 6.0, 4.0, top),
            f"west {storey}": (0.0, 0.3, 0.0, 0.3, 3.7, top),
            f"east {storey}": (5.7, 0.3, 0.0, 6.0, 3.7, top),
        }
        if storey == 1 and w.wish.panels is not None:
            _curtain_wall(w, boxes.pop("north 1"))
        made = {name: w.thing("IfcWallStandardCase", storey, box, Name=name) for name, box in boxes.items()}
        w.contain(storey, list(made.values()))
        w.made_of(list(made.values()), "Brick, common")
        found |= made
    inner = w.thing("IfcWall", 0, (3.5, 0.3, 0.0, 3.6, 3.7, 2.5), Name="inner")
    w.contain(0, [inner])
    w.made_of([inner], "Plasterboard on studs")
    for name, storey, box in w.wish.extra_walls:
        w.contain(storey, [w.thing("IfcWall", storey, box, Name=name)])
    return found | {"inner": inner}


def _curtain_wall(w: _Writer, box: tuple[float, ...]) -> None:
    x0, _, _, x1, y1, _ = box
    wall = w.root(
        "IfcCurtainWall",
        Name="glass front",
        ObjectPlacement=w.placed((0.0, 0.0, 0.0), parent=w.storeys[1].ObjectPlacement),
    )
    frame = [
        w.thing("IfcMember", 1, (x0, y1 - 0.1, z, x1, y1 - 0.05, z + 0.05), Name="frame") for z in (0.0, 2.35)
    ]
    plates = [
        w.thing("IfcPlate", 1, (a, y1 - 0.1, 0.0, b, y1 - 0.08, 2.4), Name=name)
        for name, a, b in w.wish.panels or ()
    ]
    w.whole(wall, [*frame, *plates])
    w.contain(1, [wall])


def _openings(w: _Writer, walls: dict[str, Any]) -> None:
    front = w.door(
        "Front door", 0, (2.9, 0.3, 0.0), x=(-1.0, 0.0, 0.0), width=0.9, operation="SINGLE_SWING_RIGHT"
    )
    w.hole(walls["south 0"], 0, (2.0, -0.1, 0.0, 2.9, 0.4, 2.0), front)
    inside = w.door(
        "Kitchen door", 0, (3.5, 2.0, 0.0), x=(0.0, 1.0, 0.0), width=0.8, operation=w.wish.operation
    )
    w.hole(walls["inner"], 0, (3.4, 2.0, 0.0, 3.7, 2.8, 2.0), inside)
    for storey, name in ((0, "Kitchen window"), (1, "Bedroom window")):
        window = w.thing("IfcWindow", storey, (5.8, 1.4, 0.9, 5.85, 2.6, 2.1), Name=name)
        w.hole(walls[f"east {storey}"], storey, (5.6, 1.4, 0.9, 6.1, 2.6, 2.1), window)
        w.contain(storey, [window])
    w.contain(0, [front, inside])


def _spaces(w: _Writer) -> None:
    boxes = (
        ("A01", "Hall", 0, (0.3, 0.3, 0.0, 3.5, 3.7, 2.5)),
        ("A02", "Kitchen", 0, (3.6, 0.3, 0.0, 5.7, 3.7, 2.5)),
        ("B11", "Bedroom", 1, (0.3, 0.3, 0.0, 5.7, 3.7, 2.4)),
    )
    for code, name, storey, box in boxes:
        space = w.thing("IfcSpace", storey, box, Name=code, LongName=name, CompositionType="ELEMENT")
        w.whole(w.storeys[storey], [space])


def _stairs_and_floor(w: _Writer) -> None:
    treads = [
        w.prism(
            [(0.35, 0.6 + 0.2 * i), (1.15, 0.6 + 0.2 * i), (1.15, 0.8 + 0.2 * i), (0.35, 0.8 + 0.2 * i)],
            low=UPPER_M / (TREADS + 1) * (i + 1) - 0.04,
            height=0.04,
        )
        for i in range(TREADS)
    ]
    stair = w.root(
        "IfcStair",
        Name="stairs",
        ObjectPlacement=w.placed((0.0, 0.0, 0.0), parent=w.storeys[0].ObjectPlacement),
        Representation=w.shape(treads),
        **({"ShapeType": "STRAIGHT_RUN_STAIR"} if w.wish.schema == "IFC2X3" else {}),
    )
    floor = w.thing("IfcSlab", 1, (0.0, 0.0, -0.2, 6.0, 4.0, 0.0), Name="floor", PredefinedType="FLOOR")
    w.hole(floor, 1, (0.3, 1.0, -0.3, 1.2, 3.4, 0.1))
    sofa = w.thing("IfcFurnishingElement", 0, (2.4, 2.9, 0.0, 3.4, 3.6, 0.8), Name="Sofa")
    w.contain(0, [stair, sofa])
    w.contain(1, [floor])


def _gable(w: _Writer) -> None:
    """Two roof planes over the upper floor, from 1.2 m at the eaves to 2.2 m at the ridge along x."""
    for low_y, high_y in ((0.0, 2.0), (4.0, 2.0)):
        below = [(low_y, 1.2), (high_y, 2.2), (high_y, 2.4), (low_y, 1.4)]
        outline = w.file.create_entity("IfcPolyline", Points=[w.point(c) for c in (*below, below[0])])
        profile = w.file.create_entity("IfcArbitraryClosedProfileDef", ProfileType="AREA", OuterCurve=outline)
        # The profile's x is the house's y, its y is up: the axis along the house's x.
        frame = w.file.create_entity(
            "IfcAxis2Placement3D",
            Location=w.point((0.0, 0.0, 0.0)),
            Axis=w.file.create_entity("IfcDirection", (1.0, 0.0, 0.0)),
            RefDirection=w.file.create_entity("IfcDirection", (0.0, 1.0, 0.0)),
        )
        solid = w.file.create_entity(
            "IfcExtrudedAreaSolid",
            SweptArea=profile,
            Position=frame,
            ExtrudedDirection=w.file.create_entity("IfcDirection", (0.0, 0.0, 1.0)),
            Depth=6.0 / w.wish.unit_m,
        )
        roof = w.root(
            "IfcSlab",
            Name="roof",
            PredefinedType="ROOF",
            ObjectPlacement=w.placed((0.0, 0.0, 0.0), parent=w.storeys[1].ObjectPlacement),
            Representation=w.shape([solid]),
        )
        w.contain(1, [roof])


def written(wish: Wish = Wish()) -> bytes:
    """The house as the bytes of an IFC file."""
    w = _Writer(wish)
    walls = _walls(w)
    _openings(w, walls)
    if wish.with_spaces:
        _spaces(w)
    _stairs_and_floor(w)
    if wish.gable:
        _gable(w)
    return str(w.file.to_string()).encode("ascii")
