"""Which trips there are from bed with part of the alarm set."""

from __future__ import annotations

from common.houses import standing_free
from common.night_house import ANN, CHILD, night_house
from wardwright.model.household import Pass
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.night_trips import doors_out, night_trips, wrong_turns_at_night

CATALOGUE = load_catalogue()


def test_who_goes_where() -> None:
    site = night_house(people=(ANN, CHILD))
    found = [(one.person.id, one.goal, one.place.id) for one in night_trips(site, CATALOGUE)]
    assert found == [
        ("ann", "kitchen", "kitchen"), ("ann", "child", "kitchen"), ("ann", "out", "front-door"),
    ]  # fmt: skip
    # The child sleeps in the kitchen already, and neither looks after itself nor knows the code.


def test_nobody_goes_where_they_are_told_not_to_be() -> None:
    upstairs = ANN.model_copy(update={"passes": (Pass(part="night", may_not=("kitchen",)),)})
    assert [one.goal for one in night_trips(night_house(people=(upstairs,)), CATALOGUE)] == ["out"]


def test_who_visits_or_has_no_bed_goes_nowhere_at_night() -> None:
    visitor = ANN.model_copy(update={"comes": "visits"})
    homeless = ANN.model_copy(update={"bed": None})
    assert night_trips(night_house(people=(visitor,)), CATALOGUE) == ()
    assert night_trips(night_house(people=(homeless,)), CATALOGUE) == ()


def test_doors_out_are_those_that_lead_outside() -> None:
    assert [one.id for one in doors_out(night_house())] == ["front-door"]


def test_where_somebody_is_told_not_to_be_is_a_wrong_turn() -> None:
    told = ANN.model_copy(update={"passes": (Pass(part="night", may=("hall",)),)})
    found = wrong_turns_at_night(night_house(people=(told, CHILD)))
    assert [(one.person.id, one.goal, one.place.id) for one in found] == [("ann", "astray", "kitchen")]
    assert wrong_turns_at_night(night_house(people=(ANN, CHILD))) == ()


def test_a_keyfob_that_is_kept_by_the_bed_spares_the_way_to_the_keypad() -> None:
    by_bed = standing_free("fob", "keyfob-radio", 8.0, 1.0)
    elsewhere = standing_free("fob", "keyfob-radio", 2.0, 1.0)
    found = [
        next(one for one in night_trips(night_house(also=(fob,)), CATALOGUE) if one.goal == "out")
        for fob in (by_bed, elsewhere)
    ]
    assert found[0].ends is None
    assert found[1].control is not None
