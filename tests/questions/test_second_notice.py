"""Question 5: a second notice against the window of the rule pack."""

from __future__ import annotations

import pytest

from wardwright.model.limits import Limit
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.second_notice import NO_SECOND, WALKED, WINDOW, second_note, second_parts
from wardwright.questions.undetected_walk import answers
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
PACES = CATALOGUE.figure("pace-hurried"), CATALOGUE.figure("pace-cautious")


def limit(value: float) -> Limit:
    return Limit(
        id="confirmation-window", name="window", value=value, unit="s", source="own", mark="common practice"
    )


def test_the_walk_goes_from_a_hurried_to_a_cautious_pace() -> None:
    walked, window = second_parts((5.0, 10.0, 20.0), PACES, limit(120.0))
    assert walked.estimate is not None
    assert window.estimate is not None
    assert walked.estimate.value == pytest.approx(10.0 / PACES[0].value)
    assert walked.estimate.high == pytest.approx(20.0 / PACES[1].low)
    assert (walked.name, window.name, window.estimate.value) == (WALKED, WINDOW, 120.0)


def test_without_a_window_it_says_so() -> None:
    _, window = second_parts((5.0, 10.0, 20.0), PACES, None)
    assert (window.estimate, window.reason) == (None, "the rule pack tells no window")
    assert "no window" in second_note((5.0, 10.0, 20.0), PACES[1], None)


@pytest.mark.parametrize(
    ("window_s", "says"), [(120.0, " within the window of 2 min"), (30.0, "perhaps not within")]
)
def test_whether_it_comes_within_the_window_hangs_on_the_longest_walk(window_s: float, says: str) -> None:
    assert says in second_note((5.0, 10.0, 20.0), PACES[1], limit(window_s))


def of(site: Site) -> list[Answer]:
    return [one for one in answers(site, CATALOGUE) if one.estimate is not None]


def with_pack(pack: str) -> Site:
    site = read_sample("terrace-better")
    return site.model_copy(
        update={"place": site.place.model_copy(update={"rule_pack": pack, "country": None})}
    )


@pytest.mark.parametrize(("pack", "window_s"), [("uk-eu", 1800.0), ("us", 120.0)])
def test_every_way_in_is_held_against_the_window_of_its_pack(pack: str, window_s: float) -> None:
    found = of(with_pack(pack))
    assert found
    for one in found:
        parts = {part.name: part.estimate for part in one.parts}
        window = parts[WINDOW]
        assert window is not None
        assert window.value == window_s
        assert parts[WALKED] is not None
        assert any("the window of" in note for note in one.notes)


def test_with_one_device_alone_nothing_confirms() -> None:
    site = with_pack("uk-eu")
    alone = [one for one in site.devices if one.id in ("hall-movement", "landing-control-unit")]
    zones = [one for one in site.zones if "hall-movement" in one.devices]
    for one in of(site.model_copy(update={"devices": tuple(alone), "zones": tuple(zones)})):
        assert NO_SECOND in one.notes
