import pytest

from common.broken import hut
from wardwright.model.device import CeilingMount
from wardwright.model.revision import moved, replaced, with_device

UP = CeilingMount(storey="ground", at_m=(4.5, 2.0))


def test_moving_a_device_shares_everything_else() -> None:
    before = hut()
    after = moved(before, "kitchen-detector", UP)
    assert after.device("kitchen-detector").mount == UP
    assert before.device("kitchen-detector").mount != UP
    assert after.device("unit") is before.device("unit")
    for name in ("storeys", "spaces", "walls", "openings", "stairs", "zones", "programme"):
        assert getattr(after, name) is getattr(before, name)
    assert [d.id for d in after.devices] == [d.id for d in before.devices]


def test_a_moved_back_house_is_the_same_house() -> None:
    before = hut()
    again = moved(moved(before, "unit", UP), "unit", before.device("unit").mount)
    assert again == before
    assert hash(again) == hash(before)


def test_a_device_is_added_or_put_in_its_place() -> None:
    before = hut()
    second = before.device("unit").model_copy(update={"id": "second"})
    assert [d.id for d in with_device(before, second).devices] == [*(d.id for d in before.devices), "second"]
    renamed = before.device("unit").model_copy(update={"name": "main"})
    assert with_device(before, renamed).device("unit").name == "main"


def test_what_does_not_exist_is_refused() -> None:
    with pytest.raises(KeyError, match="attic"):
        moved(hut(), "attic", UP)
    with pytest.raises(KeyError, match="colour"):
        replaced(hut(), colour="red")
