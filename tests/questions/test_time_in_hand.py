import numpy as np

from common.worked_terrace import UNDER_STAIRS, worked_terrace
from wardwright.physics.walking.from_site import Spot
from wardwright.questions.time_in_hand import deciding, least_hand, likely_hand, time_in_hand
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
