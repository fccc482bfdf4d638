from common.worked_terrace import worked_terrace
from wardwright.questions.worth_adding import AT_MOST, worth_adding
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def test_a_bare_house_is_told_the_five_facts_that_move_most() -> None:
    site = worked_terrace(contacts={}).model_copy(update={"devices": (), "zones": ()})
    found = worth_adding(site, CATALOGUE)
    assert len(found) == AT_MOST
    assert found[0].startswith("where the control unit is to be")
    assert found[1].startswith("the first detectors")
    assert "in which rooms" in found[2]


def test_what_is_known_is_not_asked_for() -> None:
    found = " ".join(worth_adding(read_sample("terrace"), CATALOGUE))
    for known in ("control unit", "first detectors", "really comes in by", "who lives there", "sounders"):
        assert known not in found


def test_unknown_locks_are_counted_by_opening() -> None:
    site = worked_terrace(contacts={"front-door": "instant"})
    openings = tuple(o.model_copy(update={"lock": "unknown"}) for o in site.openings)
    found = worth_adding(site.model_copy(update={"openings": openings}), CATALOGUE)
    assert "the locks of 2 openings that lead in" in found
