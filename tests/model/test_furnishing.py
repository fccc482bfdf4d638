import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.model.fixture import Fixture
from wardwright.model.furnishing import swallowing
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
TERRACE = read_sample("terrace")


def test_a_room_holds_what_its_outline_and_height_say() -> None:
    found = swallowing(TERRACE, CATALOGUE, TERRACE.space("living"))
    assert found.volume_m3 == pytest.approx(2.7 * 4.6 * 2.4)
    assert found.surface_m2 == pytest.approx(2 * 2.7 * 4.6 + 2 * (2.7 + 4.6) * 2.4)


def test_a_bedroom_swallows_more_than_a_bare_hall_of_its_size() -> None:
    bed, hall = (
        swallowing(TERRACE, CATALOGUE, TERRACE.space("bedroom-1").model_copy(update={"use": use}))
        for use in ("bedroom", "hall")
    )
    assert all(a > b for a, b in zip(bed.area_m2[1:], hall.area_m2[1:], strict=True))


@given(st.sampled_from(["bed", "sofa", "curtain"]), st.floats(0.1, 4.0), st.floats(0.1, 2.0))
def test_an_added_thing_never_makes_a_room_swallow_less(kind: str, width: float, depth: float) -> None:
    thing = Fixture.model_validate(
        {
            "id": "more",
            "name": "More",
            "storey": "ground",
            "kind": kind,
            "centre_m": (3.2, 2.0),
            "size_m": (width, depth),
        }
    )
    more = TERRACE.model_copy(update={"fixtures": (*TERRACE.fixtures, thing)})
    before, after = (swallowing(site, CATALOGUE, site.space("living")).area_m2 for site in (TERRACE, more))
    assert all(b >= a for a, b in zip(before, after, strict=True))


def test_a_curtain_over_a_pane_swallows_more_than_the_glass() -> None:
    pane = TERRACE.opening("bedroom-1-window").model_copy(update={"covering": "curtain"})
    hung = TERRACE.model_copy(
        update={"openings": tuple(pane if o.id == pane.id else o for o in TERRACE.openings)}
    )
    bare, covered = (swallowing(site, CATALOGUE, site.space("bedroom-1")).area_m2 for site in (TERRACE, hung))
    assert covered[4] - bare[4] == pytest.approx(1.5 * 1.2 * (0.70 - 0.03))
