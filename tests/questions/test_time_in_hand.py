import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from common.worked_terrace import UNDER_STAIRS, ear_in_kitchen, shock_on, with_watch, worked_terrace
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.questions.time_in_hand import deciding, hand_estimate, least_hand, likely_hand, time_in_hand
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.likely_race import LikelyRace
from wardwright.trials.race import Race, race
from wardwright.trials.ways_in import ways_in

CATALOGUE = load_catalogue()


def run(contacts: dict[str, str]) -> Race:
    site = worked_terrace(contacts=contacts)
    way = ways_in(site, CATALOGUE)[0][0]
    return race(site, CATALOGUE, way=way, goal=Spot(UNDER_STAIRS.storey, *UNDER_STAIRS.at_m))


def test_the_least_is_the_lesser_of_both_in_every_row() -> None:
    one = run({"front-door": "entry-exit"})
    hand = time_in_hand(one, CATALOGUE)
    assert (least_hand(one, CATALOGUE) <= hand["message"]).all()
    assert (least_hand(one, CATALOGUE) <= hand["sounder"]).all()
    assert np.isfinite(least_hand(one, CATALOGUE)).all()


def test_what_is_in_hand_is_summed_up_over_the_draws() -> None:
    one = run({"front-door": "entry-exit"})
    hand = least_hand(one, CATALOGUE)
    found = hand_estimate(one, CATALOGUE)
    drawn = hand[1 + 2 * len(one.cases.inputs) :]
    assert found.value == float(hand[0])
    assert found.low == pytest.approx(min(float(np.percentile(drawn, 5)), found.value))
    assert found.drivers


def test_an_equal_hand_is_decided_at_the_low_end_not_by_rounding() -> None:
    one = run({"front-door": "entry-exit"})
    hand = time_in_hand(one, CATALOGUE)
    low = {need: float(np.percentile(values, 5)) for need, values in hand.items()}
    assert deciding(one, CATALOGUE) == min(low, key=lambda need: low[need])


def test_what_never_comes_is_late_by_a_stay() -> None:
    one = run({})
    assert (least_hand(one, CATALOGUE) == -CATALOGUE.figure("stay").value).all()


def test_the_likely_hand_is_the_first_of_the_least() -> None:
    for contacts in ({"front-door": "entry-exit"}, {}):
        one = run(contacts)
        sounder = None if one.sounder is None else float(one.sounder[0])
        likely = LikelyRace(sounder, float(one.message[0]), float(one.reached[0]), float(one.broken[0]))
        assert likely_hand(likely, CATALOGUE) == float(least_hand(one, CATALOGUE)[0])


GOAL = Spot(UNDER_STAIRS.storey, *UNDER_STAIRS.at_m)
ADDED = (shock_on("front-door"), shock_on("kitchen-window"), shock_on("kitchen-door"), ear_in_kitchen())


def hands(site: Site) -> dict[tuple[str, str], float]:
    """The likely least time in hand of every way in and manner. [s]"""
    return {
        (way.opening.id, way.manner): float(
            least_hand(race(site, CATALOGUE, way=way, goal=GOAL), CATALOGUE)[0]
        )
        for way in ways_in(site, CATALOGUE)[0]
    }


def test_glass_that_is_noticed_is_as_good_as_a_leaf_that_is() -> None:
    """Climbing in and walking are alike, and both tell at once: 5 s + 3.9 s + 10 s to the unit broken, 11 s out."""
    contact = hands(worked_terrace(contacts={"kitchen-window": "instant"}))
    for device in (shock_on("kitchen-window"), ear_in_kitchen()):
        found = hands(with_watch(worked_terrace(contacts={}), device))
        assert found["kitchen-window", "through the glass"] == contact["kitchen-window", "opened"]
        assert found["kitchen-window", "through the glass"] == pytest.approx(7.9, abs=0.3)
    assert contact["kitchen-window", "through the glass"] == -CATALOGUE.figure("stay").value


@given(
    st.dictionaries(
        st.sampled_from(["front-door", "kitchen-door", "kitchen-window"]),
        st.sampled_from(["instant", "entry-exit", "log-only"]),
        max_size=3,
    ),
    st.sampled_from(ADDED),
    st.sampled_from(["instant", "instant-delayed", "log-only"]),
    st.sampled_from([0.0, 20.0]),
)
def test_one_more_that_alarms_at_once_never_shortens_it(
    contacts: dict[str, str], device: Device, behaviour: str, abort: float
) -> None:
    site = worked_terrace(contacts=contacts, abort_delay_s=abort)
    before, after = hands(site), hands(with_watch(site, device, behaviour))
    assert all(after[key] >= before[key] - 1e-9 for key in before)
