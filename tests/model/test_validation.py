import pytest

from common.broken import found, hut
from wardwright.errors import DocumentError
from wardwright.model.validation import problems, sound
from wardwright.store.catalogue import load_catalogue

THREE = (("openings/kitchen-window/sill_m", 2.3), ("zones/zone-2/number", 1), ("place/country", "US"))


def test_a_house_that_holds_together_has_no_problem() -> None:
    site = hut()
    assert problems(site, load_catalogue()) == ()
    assert sound(site, where="hut", catalogue=load_catalogue()) is site


def test_what_stops_comes_before_what_is_noted() -> None:
    assert [p.weight for p in found(*THREE)] == ["stops", "stops", "noted"]


def test_the_first_is_raised_and_the_others_that_stop_are_counted() -> None:
    with pytest.raises(DocumentError) as caught:
        sound(hut(*THREE), where="hut.json")
    assert str(caught.value) == (
        'hut.json, openings[1] "kitchen window" (kitchen-window): its sill (2.3 m) is not below its head (2.1 m) '
        "(and 1 more fault). Correct 'sill_m' or 'head_m'; both are above the storey's floor."
    )


def test_what_is_only_noted_is_no_error() -> None:
    site = hut(("place/country", "US"))
    assert sound(site, where="hut") is site


def test_the_order_of_lists_changes_no_fault() -> None:
    site = hut(*THREE, ("spaces/kitchen/outline_m", [[2, 0], [6, 0], [6, 4], [2, 4]]))
    turned = site.model_copy(
        update={name: tuple(reversed(value)) for name, value in site if isinstance(value, tuple)}
    )
    catalogue = load_catalogue()
    assert len(problems(site, catalogue)) == len(problems(turned, catalogue)) == 4


def test_no_message_ends_with_a_full_stop_or_starts_with_a_capital() -> None:
    for problem in found(*THREE):
        assert not problem.what.endswith(".")
        assert problem.what[0].islower() or problem.what[0] == "'"
        assert problem.cure[0].isupper()
