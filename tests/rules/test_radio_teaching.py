from common.radio_house import CATALOGUE, device, long_house
from wardwright.rules.radio_links import links_of
from wardwright.rules.radio_teaching import next_reading

ALIKE = tuple(device(f"east-{i}", "water-radio", 20.0 + i / 2, 1.0 + i / 2) for i in range(4))


def read(name: str) -> dict[str, object]:
    return {"id": f"r-{name}", "device": name, "receiver": "unit", "level_dbm": -90.0}


def test_the_path_that_most_others_share_teaches_most() -> None:
    found = next_reading(long_house(device("near", "water-radio", 2.0), *ALIKE), CATALOGUE)
    assert found is not None
    assert found.device.id.startswith("east-")
    assert 0.0 < found.narrower < 0.5


def test_what_was_read_is_not_named_again() -> None:
    first = next_reading(long_house(*ALIKE), CATALOGUE)
    assert first is not None
    second = next_reading(long_house(*ALIKE, readings=[read(first.device.id)]), CATALOGUE)
    assert second is not None
    assert second.device.id != first.device.id
    assert second.narrower < first.narrower


def test_the_ranges_of_the_others_do_shrink() -> None:
    site = long_house(*ALIKE)
    first = next_reading(site, CATALOGUE)
    assert first is not None
    after = long_house(*ALIKE, readings=[read(first.device.id)])
    for one in ALIKE:
        before, now = (links_of(s, CATALOGUE, s.device(str(one["id"])))[0].margin for s in (site, after))
        assert now.high - now.low < before.high - before.low


def test_with_one_link_or_all_read_there_is_nothing_to_say() -> None:
    one = device("near", "water-radio", 2.0)
    assert next_reading(long_house(one), CATALOGUE) is None
    names = [str(each["id"]) for each in ALIKE]
    assert next_reading(long_house(*ALIKE, readings=[read(name) for name in names]), CATALOGUE) is None
