from __future__ import annotations

from wardwright.intake.ifc.sides import sides_through
from wardwright.model.fabric import Space, Storey, Wall
from wardwright.model.opening import Opening
from wardwright.model.placement import sides_of_opening
from wardwright.model.site import Site


def house(lining: float) -> tuple[Site, Opening]:
    walls = [Wall(id="outer", storey="g", line_m=((0, 0), (4, 0)), thickness_m=0.2)]
    if lining:
        walls.append(
            Wall(
                id="lining",
                storey="g",
                line_m=((0, 0.1 + lining / 2), (4, 0.1 + lining / 2)),
                thickness_m=lining,
            )
        )
    y = 0.1 + max(lining, 0.4)
    room = Space(id="room", name="room", storey="g", outline_m=((0, y), (4, y), (4, 4), (0, 4)))
    door = Opening(id="door", name="door", kind="door", wall="outer", offset_m=2, width_m=0.9)
    site = Site(
        name="t", storeys=(Storey(id="g", name="g", elevation_m=0),), spaces=(room,), walls=tuple(walls)
    )
    return site, door


def test_a_room_is_found_through_a_lining() -> None:
    site, door = house(0.4)
    assert sides_of_opening(site, door) == (None, None)
    assert sides_through(site, door) == ("room", None)


def test_a_gap_that_nothing_fills_is_not_crossed() -> None:
    site, door = house(0.0)
    assert sides_through(site, door) == (None, None)
