from wardwright.model.estimate import Estimate
from wardwright.questions.level_sketches import figure_at, figures_of_rooms
from wardwright.rules.sound_heard import INTRUDER_KINDS, shut, sounders
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
SITE = read_sample("terrace")


def test_each_room_that_hears_anything_has_its_figure_inside_it() -> None:
    every = sounders(SITE, CATALOGUE, INTRUDER_KINDS)
    found = dict(figures_of_rooms(SITE.bare, CATALOGUE, every, states=shut(SITE, CATALOGUE)))
    assert {"hall", "landing", "bedroom-1", "kitchen"} <= set(found)
    assert int(found["hall"].label) > int(found["landing"].label) > int(found["bedroom-2"].label)
    assert "cupboard" not in found


def test_a_figure_is_in_whole_decibels() -> None:
    level = Estimate(value=61.6, low=57.0, high=67.0, unit="dBA")
    assert figure_at("ground", (1.0, 2.0), level, words="at the pillow").label == "62 dBA at the pillow"
