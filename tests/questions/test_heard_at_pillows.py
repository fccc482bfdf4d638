import pytest
from hypothesis import given
from hypothesis import strategies as st

from common.turning import quarter_turned
from wardwright.model.estimate import Estimate
from wardwright.model.fixture import Fixture
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.heard_at_pillows import AT_NIGHT, answers_at_pillows, verdict_over
from wardwright.rules.sound_heard import INTRUDER_KINDS, sounders
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
SITE = read_sample("terrace")
LIMIT = CATALOGUE.limit("pillow-level", "uk-eu")


def asked(site: Site = SITE, *, with_mends: bool = False) -> dict[str, Answer]:
    every = sounders(site, CATALOGUE, INTRUDER_KINDS)
    return {one.subject: one for one in answers_at_pillows(site, CATALOGUE, every, with_mends=with_mends)}


def told(site: Site, **habits: str) -> Site:
    """The site with doors standing otherwise at night."""
    openings = tuple(
        one.model_copy(
            update={"habit_night": habits[one.id.replace("-", "_")], "basis": (("habit_night", "told"),)}
        )
        if one.id.replace("-", "_") in habits
        else one
        for one in site.openings
    )
    return site.model_copy(update={"openings": openings})


def test_a_verdict_is_met_thin_or_not() -> None:
    def over(value: float, low: float) -> str:
        return verdict_over(Estimate(value=value, low=low, high=value + 5.0, unit="dBA"), LIMIT)

    assert [over(80.0, 75.0), over(80.0, 74.9), over(74.0, 69.0)] == ["good", "thin", "bad"]
    assert verdict_over(None, LIMIT) == "bad"


def test_the_likely_level_falls_behind_doors_and_no_alarm_there_is_alone() -> None:
    one = asked()["pillow in Bedroom 3"]
    assert one.estimate is not None
    assert 65.0 < one.estimate.value < 75.0
    assert one.verdict == "bad"
    values = {part.name: part.estimate.value for part in one.parts if part.estimate is not None}
    assert values[AT_NIGHT] > one.estimate.value
    assert max(values[name] for name in values if name.startswith("from")) < one.estimate.value
    assert any("Grandmother hears badly" in note for note in one.notes)
    assert any("no promise of waking" in note for note in one.notes)


def test_a_door_told_open_at_night_moves_only_that_part() -> None:
    shut, opened = asked(), asked(told(SITE, landing_bedroom_2_door="open"))
    one, other = shut["pillow in Bedroom 2"], opened["pillow in Bedroom 2"]
    assert one.estimate == other.estimate
    night = [answer.parts[0].estimate for answer in (one, other)]
    assert night[0] is not None
    assert night[1] is not None
    assert night[1].value > night[0].value + 5.0


@given(st.floats(0.2, 4.0))
def test_an_added_absorber_never_raises_a_pillow(width: float) -> None:
    sofa = Fixture(
        id="more", name="More", storey="first", kind="sofa", centre_m=(0.9, 3.0), size_m=(width, 0.8)
    )
    more = asked(SITE.model_copy(update={"fixtures": (*SITE.fixtures, sofa)}))
    for name, answer in asked().items():
        other = more[name].estimate
        assert answer.estimate is not None
        assert other is not None
        assert other.value <= answer.estimate.value + 1e-9


def test_a_quarter_turn_changes_nothing() -> None:
    for name, answer in asked(quarter_turned(SITE)).items():
        before = asked()[name].estimate
        assert answer.estimate is not None
        assert before is not None
        assert answer.estimate.value == pytest.approx(before.value, abs=0.05)


def test_its_drawing_has_a_figure_for_each_room_and_one_for_the_pillow() -> None:
    sketches = asked()["pillow in Bedroom 1"].sketches
    assert sketches[0].label.endswith("dBA at the pillow")
    assert {sketch.role for sketch in sketches} == {"level"}
    assert {sketch.storey for sketch in sketches} == {"ground", "first"}
