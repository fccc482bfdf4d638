import pytest
from pydantic import ValidationError

from common.broken import hut
from wardwright.model.fabric import Storey
from wardwright.model.site import SCHEMA_VERSION, Site


def test_each_thing_is_found_by_its_id_or_not_at_all() -> None:
    site = hut()
    for find, name in (
        (site.storey, "first"),
        (site.space, "hall"),
        (site.wall, "east"),
        (site.opening, "front-door"),
        (site.device, "unit"),
        (site.behaviour, "instant"),
    ):
        assert find(name).id == name
        with pytest.raises(KeyError, match="nothing"):
            find("nothing")


def test_a_site_never_changes() -> None:
    with pytest.raises(ValidationError, match="frozen"):
        hut().name = "other"  # type: ignore[misc] # that it cannot be done is the test


def test_equal_sites_have_equal_hashes() -> None:
    assert hut() == hut()
    assert hash(hut()) == hash(hut())
    assert hut(("name", "other")) != hut()


def test_a_site_has_the_trades_behaviours_and_parts_unless_told_otherwise() -> None:
    site = Site(name="hut", storeys=(Storey(id="ground", name="ground floor", elevation_m=0.0),))
    assert [b.id for b in site.behaviours] == [
        "instant",
        "entry-exit",
        "entry-route",
        "always-on",
        "log-only",
        "tamper",
        "hold-up",
        "fire",
        "water",
    ]
    assert [p.id for p in site.parts] == ["full", "night"]
    assert site.schema_version == SCHEMA_VERSION


def test_houses_that_know_their_own_bare_house_can_be_compared() -> None:
    """The bare house of a bare house is itself: comparing two such, equal but not the same, must come to an end."""
    one, other = (
        Site(name="hut", storeys=(Storey(id="ground", name="ground floor", elevation_m=0.0),))
        for _ in range(2)
    )
    for house in (one, other):
        house.__dict__["bare"] = house
    assert one == other
    assert hash(one) == hash(other)
    assert one != other.model_copy(update={"name": "shed"})
