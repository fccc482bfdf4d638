"""By which way they come: the tables of shares on houses with and without what they name."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, opening, two_rooms_and_hall, window
from wardwright.model.fabric import Space
from wardwright.model.place import Place
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.campaign.entries import entries_of, house_type
from wardwright.trials.ways_in import ways_in

ALL = CATALOGUE.model_copy(update={"entry_shares": load_catalogue().entry_shares})


def shares(site: Site) -> dict[str, float]:
    return dict(entries_of(site, ALL, ways_in(site, ALL)[0]).shares)


def in_country(country: str | None, **parts: object) -> Site:
    return two_rooms_and_hall(place=Place(country=country), **parts)


def test_without_a_country_each_opening_is_alike() -> None:
    assert shares(in_country(None)) == pytest.approx(
        dict.fromkeys(("front-door", "kitchen-window", "study-window"), 1 / 3)
    )


def test_an_unknown_country_is_as_none() -> None:
    assert shares(in_country("NZ")) == shares(in_country(None))


def test_british_shares_by_hand() -> None:
    """A front door (0.331) and two windows at the sides (0.146 together): 0.477 in all, the rest is not there."""
    found = shares(in_country("GB"))
    assert found["front-door"] == pytest.approx(0.331 / 0.477)
    assert found["kitchen-window"] == pytest.approx(0.073 / 0.477)
    assert found["study-window"] == found["kitchen-window"]


def test_american_shares_by_hand() -> None:
    """A front door 0.34, windows near the ground 0.23; no garage, no back door, no cellar."""
    found = shares(in_country("US"))
    assert found["front-door"] == pytest.approx(0.34 / 0.57)
    assert found["kitchen-window"] == pytest.approx(0.23 / 2 / 0.57)


def test_a_back_door_and_a_front_window() -> None:
    """What faces as the entry door does is at the front; a door on the other side is at the back."""
    more = (
        *two_rooms_and_hall().openings,
        opening("garden-door", "north", 2.0),
        window("front-window", "south", 2.0),
    )
    found = shares(in_country("GB", openings=more))
    whole = 0.331 + 0.359 + 0.134 + 0.146
    assert found["garden-door"] == pytest.approx(0.359 / whole)
    assert found["front-window"] == pytest.approx(0.134 / whole)
    assert sum(found.values()) == pytest.approx(1.0)


def test_without_an_entry_door_no_side_is_the_front() -> None:
    """The first row of a door takes it: nobody knows whether it is the front one."""
    bare = tuple(one.model_copy(update={"is_entry_door": False}) for one in two_rooms_and_hall().openings)
    found = entries_of(in_country("GB", openings=bare), ALL, ways_in(in_country("GB", openings=bare), ALL)[0])
    assert sum(found.shares.values()) == pytest.approx(1.0)
    assert all(share > 0.0 for share in found.shares.values())


def test_a_flat_is_come_into_from_a_shared_space() -> None:
    site = two_rooms_and_hall()
    assert house_type(site) == "house"
    stairs = Space(
        id="common", name="Common stairs", storey="ground", use="stairwell", belongs="shared",
        outline_m=((4.0, -3.3), (6.2, -3.3), (6.2, -0.3), (4.0, -0.3)),
    )  # fmt: skip
    flat = site.model_copy(update={"spaces": (*site.spaces, stairs)})
    assert house_type(flat) == "flat"


def test_the_order_of_openings_makes_no_difference() -> None:
    site = in_country("GB")
    turned = site.model_copy(update={"openings": tuple(reversed(site.openings))})
    assert shares(turned) == shares(site)


def test_without_any_table_each_opening_is_alike() -> None:
    site = in_country("GB")
    found = entries_of(site, CATALOGUE, ways_in(site, CATALOGUE)[0])
    assert found.rows == ()
    assert list(found.shares.values()) == pytest.approx([1 / 3] * 3)


def test_every_table_sums_to_one() -> None:
    """As its source gives it: a table that does not is a slip of the pen."""
    tables: dict[tuple[str | None, str | None], float] = {}
    for row in ALL.entry_shares:
        tables[row.country, row.house] = tables.get((row.country, row.house), 0.0) + row.share
    assert len(tables) == 5
    assert all(one == pytest.approx(1.0, abs=1e-9) for one in tables.values())
