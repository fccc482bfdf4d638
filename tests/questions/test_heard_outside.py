from wardwright.model.surroundings import Ground
from wardwright.questions.heard_outside import answers_outside
from wardwright.rules.sound_heard import INTRUDER_KINDS, sounders
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
SITE = read_sample("terrace")
EVERY = sounders(SITE, CATALOGUE, INTRUDER_KINDS)


def test_boundary_and_street_hear_the_sounder_outside() -> None:
    found = {one.subject_id: one for one in answers_outside(SITE, CATALOGUE, EVERY)}
    assert {name: one.verdict for name, one in found.items()} == {"boundary": "good", "street": "good"}
    inside = tuple(one for one in EVERY if one.room >= 0)
    quiet = {one.subject_id: one for one in answers_outside(SITE, CATALOGUE, inside)}
    assert quiet["street"].verdict == "bad"
    assert "a figure of our own" in found["street"].notes[0]


def test_without_ground_it_says_what_is_not_drawn() -> None:
    bare = SITE.model_copy(update={"ground": Ground()})
    (one,) = answers_outside(bare, CATALOGUE, EVERY)
    assert (one.verdict, one.estimate) == ("unknown", None)
    assert one.reason == "not computable: neither boundary, road nor a neighbour's building is drawn"


def test_the_figure_is_written_beside_the_house() -> None:
    (sketch,) = answers_outside(SITE, CATALOGUE, EVERY)[1].sketches
    (x, y) = sketch.points[0]
    assert -2.0 < x < 7.0
    assert -2.0 < y < 0.0
    assert sketch.label.endswith("at the street")
