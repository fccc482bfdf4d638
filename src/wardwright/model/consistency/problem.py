"""One thing that does not fit, and what every check looks things up in."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal, NamedTuple

import shapely

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.fabric import Space, Stair, Storey, Wall
from wardwright.model.opening import Opening
from wardwright.model.record import Record
from wardwright.model.site import Site
from wardwright.model.wording import label, suggestion

Weight = Literal["stops", "noted"]
"""`stops`: no answer can be trusted before it is mended. `noted`: an imperfection that answers stand."""


class Problem(NamedTuple):
    """One thing in a site that does not fit."""

    what: str
    """The fault, without a full stop."""
    where: str
    """The place in words, such as `openings[3] "kitchen window" (window-2)`."""
    cure: str
    """What to do, without a full stop."""
    weight: Weight = "stops"
    subject: str = ""
    """Id of the thing it is about; empty for the whole site."""


class Register(NamedTuple):
    """Everything of a site by its id."""

    site: Site
    catalogue: Catalogue | None
    storeys: dict[str, Storey]
    spaces: dict[str, Space]
    walls: dict[str, Wall]
    openings: dict[str, Opening]
    stairs: dict[str, Stair]
    devices: dict[str, Device]
    sheets: dict[str, DeviceSheet]

    def sheet_of(self, device: Device) -> DeviceSheet | None:
        """The sheet of a device; None where it or the catalogue is missing."""
        return self.sheets.get(device.sheet)


def register(site: Site, catalogue: Catalogue | None) -> Register:
    """Everything of a site by its id; of two with one id, the first."""
    return Register(
        site=site,
        catalogue=catalogue,
        storeys={s.id: s for s in reversed(site.storeys)},
        spaces={s.id: s for s in reversed(site.spaces)},
        walls={w.id: w for w in reversed(site.walls)},
        openings={o.id: o for o in reversed(site.openings)},
        stairs={s.id: s for s in reversed(site.stairs)},
        devices={d.id: d for d in reversed(site.devices)},
        sheets={} if catalogue is None else {s.id: s for s in reversed(catalogue.sheets)},
    )


class Place(NamedTuple):
    """One entry of one of a site's lists."""

    list_name: str
    position: int
    entry: Record

    @property
    def ident(self) -> str:
        """The entry's id."""
        return str(getattr(self.entry, "id", ""))

    def problem(self, what: str, cure: str, *, weight: Weight = "stops") -> Problem:
        """A problem of this entry."""
        return Problem(what, label(self.list_name, self.position, self.entry), cure, weight, self.ident)

    def dangling(self, key: str, *, kind: str, wanted: str, known: object) -> Problem:
        """A problem: a key names something that is not there."""
        names = [str(name) for name in known] if isinstance(known, (dict, tuple, list, set)) else []
        near = suggestion(wanted, names)
        hint = f"; did you mean '{near}'" if near else ""
        return self.problem(
            f"'{key}' names the {kind} '{wanted}', which does not exist{hint}",
            f"Add that {kind}, or write the id of one that exists",
        )


@lru_cache(maxsize=4096)
def polygon(space: Space) -> shapely.Polygon:
    """A space's outline as an area. [m2]"""
    return shapely.Polygon(space.outline_m)


def nearest_space(book: Register, storey: str, point: tuple[float, float]) -> tuple[Space | None, float]:
    """The space of a storey that is nearest to a point, and how far it is [m]; (None, inf) without any."""
    place = shapely.Point(point)
    found = [(float(polygon(s).distance(place)), s) for s in book.site.spaces if s.storey == storey]
    if not found:
        return None, float("inf")
    distance, space = min(found, key=lambda pair: pair[0])
    return space, distance
