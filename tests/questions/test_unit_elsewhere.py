from common.worked_terrace import worked_terrace
from wardwright.physics.walking.from_site import Spot
from wardwright.questions.unit_elsewhere import HEIGHT_M, best_elsewhere, moved_to
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.ways_on_foot import spot_of

CATALOGUE = load_catalogue()


def test_without_a_unit_or_another_power_point_there_is_nowhere_else() -> None:
    site = worked_terrace(contacts={"front-door": "instant"})
    assert best_elsewhere(site, CATALOGUE) is None
    assert best_elsewhere(site.model_copy(update={"devices": ()}), CATALOGUE) is None


def test_a_moved_unit_stands_at_the_spot_and_nothing_else_moves() -> None:
    site = worked_terrace(contacts={"front-door": "instant"})
    moved = moved_to(site, CATALOGUE, Spot("upper", 6.9, 1.2))
    assert spot_of(moved, moved.device("unit")) == Spot("upper", 6.9, 1.2)
    assert moved.device("unit").mount.height_m == HEIGHT_M
    assert [d for d in moved.devices if d.id != "unit"] == [d for d in site.devices if d.id != "unit"]
