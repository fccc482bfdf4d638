"""People who stay somewhere."""

from __future__ import annotations

from common.houses import zone
from common.night_house import ANN, AT_NIGHT, night_house
from wardwright.model.household import Pass
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.stays import at_home_unset, stays
from wardwright.trials.trip_played import UNSET

CATALOGUE = load_catalogue()


def test_who_may_be_in_a_space_may_be_anywhere_in_it() -> None:
    carer = ANN.model_copy(
        update={"comes": "visits", "passes": (Pass(part="night", may=("hall",), may_not=("kitchen",)),)}
    )
    (one, _) = stays(night_house(people=(carer,)), CATALOGUE)
    assert (one.place, one.device, one.second) == ("hall", "hall-movement", 0.0)
    quiet = night_house({"kitchen-movement": "instant"}, people=(carer,))
    (one, _) = stays(quiet, CATALOGUE)
    assert not one.rings


def test_a_visitor_by_day_sets_off_only_what_is_always_active() -> None:
    cleaner = ANN.model_copy(update={"comes": "visits", "knows_code": False})
    assert list(at_home_unset(night_house(people=(cleaner,)), CATALOGUE)) == []
    always = zone(1, "always", "hall-movement", behaviour="always-on", parts=AT_NIGHT)
    found = list(at_home_unset(night_house(people=(cleaner,), zones=(always,)), CATALOGUE))
    assert {(one.place, one.device) for one in found if one.rings} >= {("hall", "hall-movement")}
    assert {one.part for one in found} == {UNSET}
