"""Every house of ../shared/data, each by its name and how it is brought in: none of them is edited by hand."""

from __future__ import annotations

import io
from pathlib import Path
from typing import NamedTuple

from common.plan_homes import Oddities, read_home
from wardwright.intake.report import IntakeReport
from wardwright.model.site import Site


class Brought(NamedTuple):
    """A house brought in."""

    site: Site
    report: IntakeReport | None
    """None of the homes that the tests' own converter turns."""
    oddities: Oddities | None = None


class GivenHouse(NamedTuple):
    """A house of the folder."""

    name: str
    file: str
    """Below ../shared/data."""
    premises: str | None = None

    def brought(self, path: Path) -> Brought:
        """Bring it in."""
        if path.suffix == ".json":
            home = read_home(path)
            return Brought(home.site, None, home.oddities)
        data = path.read_bytes()
        # Each library only where it is asked.
        if path.suffix == ".ifc":
            from wardwright.intake.ifc.reading import read_ifc  # noqa: PLC0415 - see above

            return Brought(*read_ifc(data, where=path.name, premises=self.premises))
        from wardwright.intake.dxf.reading import read_dxf  # noqa: PLC0415 - see above

        return Brought(*read_dxf(io.BytesIO(data), where=path.name))


HOMES = (
    *(f"1241_0{n}" for n in range(1, 5)), "1478_01", "1478_02", *(f"2494_0{n}" for n in range(1, 10)),
    *(f"332_0{n}" for n in range(1, 9)), *(f"3354_0{n}" for n in range(1, 4)), *(f"4836_0{n}" for n in range(1, 7)),
    *(f"4976_0{n}" for n in range(1, 5)), *(f"6951_0{n}" for n in range(1, 5)),
)  # fmt: skip
"""The homes of ../shared/data/plans, by the floor that each was cut from and its number there."""

HOUSES = (
    GivenHouse("AC20-FZK-Haus", "houses/AC20-FZK-Haus.ifc"),
    GivenHouse("Duplex", "houses/Duplex_A_20110907.ifc"),
    GivenHouse("Duplex, flat A", "houses/Duplex_A_20110907.ifc", "A"),
    GivenHouse("Duplex, flat B", "houses/Duplex_A_20110907.ifc", "B"),
    GivenHouse("SampleHouse4", "houses/SampleHouse4.ifc"),
    GivenHouse("floorplan.dxf", "houses/floorplan.dxf"),
    *(GivenHouse(f"home {name}", f"plans/homes/{name}.json") for name in HOMES),
)
