from __future__ import annotations

import pytest

from common.ifc_house import Wish, written
from wardwright.intake.ifc.oddities import note_oddities
from wardwright.intake.ifc.reading import read_ifc
from wardwright.intake.report import ReportDraft
from wardwright.model.fabric import Space, Storey, Wall
from wardwright.model.site import Site


class Noted:
    """Stands for an open file: only what is noted counts here."""

    def __init__(self) -> None:
        self.draft = ReportDraft()


def facts_of(site: Site) -> tuple[str, ...]:
    house = Noted()
    note_oddities(house, site, rooms=(), floors=())  # type: ignore[arg-type]
    return house.draft.report(source="", form="", counts=()).oddities


def two_flats(shift_m: float) -> Site:
    """Flats A and B side by side on two storeys; upstairs the wall between them is moved."""
    storeys = tuple(Storey(id=f"level-{i}", name=f"Level {i}", elevation_m=3.0 * i) for i in (0, 1))
    walls, spaces = [], []
    for i, x in ((0, 5.0), (1, 5.0 + shift_m)):
        walls.append(Wall(id=f"between-{i}", storey=f"level-{i}", line_m=((x, 0), (x, 4)), thickness_m=0.2))
        for flat, x0, x1 in (("A", 0.0, x - 0.1), ("B", x + 0.1, 10.0)):
            ring = ((x0, 0.0), (x1, 0.0), (x1, 4.0), (x0, 4.0))
            spaces.append(
                Space(
                    id=f"{flat.lower()}-{i}",
                    name=f"Hall ({flat}{i}01)",
                    storey=f"level-{i}",
                    use="hall",
                    outline_m=ring,
                )
            )
    return Site(name="flats", storeys=storeys, walls=tuple(walls), spaces=tuple(spaces))


@pytest.mark.parametrize(("shift_m", "tail"), [(0.0, ""), (0.3, ", in differing places on each")])
def test_walls_between_flats_are_counted(shift_m: float, tail: str) -> None:
    assert facts_of(two_flats(shift_m)) == (
        f"between the flats A and B stand 1 wall on Level 0 (between-0) and 1 wall on Level 1 (between-1){tail}",
    )


def test_a_plain_house_is_not_odd() -> None:
    _, report = read_ifc(written(Wish()), where="t.ifc")
    assert [fact for fact in report.oddities if "flats" in fact or "cut" in fact or "told" in fact] == []


def test_names_that_say_nothing_are_listed() -> None:
    data = written().replace(b"'Kitchen',", b"'Zimmer X',")
    assert (
        "what Zimmer X (A02) is for cannot be told by its name" in read_ifc(data, where="t.ifc")[1].oddities
    )
