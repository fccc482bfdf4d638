from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from wardwright.errors import InputError
from wardwright.server.desk import Desk
from wardwright.server.later_steps import WHOLE_ROUND, drawn_of, gives_way, round_of, stages_of
from wardwright.store.catalogue import load_catalogue
from wardwright.store.jobs.opening import new_job
from wardwright.store.samples import read_sample


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Desk]:
    job = new_job(Path(tmp_path_factory.mktemp("steps")) / "terrace.job", read_sample("terrace"))
    yield Desk(job, load_catalogue())
    job.close()


def test_a_house_without_devices_has_no_stages_and_no_round(tmp_path: Path) -> None:
    bare = read_sample("terrace").model_copy(update={"devices": (), "zones": ()})
    with new_job(tmp_path / "bare.job", bare) as job:
        empty = Desk(job, load_catalogue())
        assert stages_of(empty, empty.state()) == ()
        assert round_of(empty, empty.state()) is None
        with pytest.raises(InputError, match="there is no test 'round'"):
            drawn_of(empty, WHOLE_ROUND)


def test_every_test_and_every_walk_of_the_round_is_drawn_on_its_storey(desk: Desk) -> None:
    found = round_of(desk, desk.state())
    assert found is not None
    for stop in found.stops:
        for test in stop.tests:
            for key in (test.key, *(walk.key for walk in test.walks)):
                assert stop.storey in drawn_of(desk, key).storeys, key
    assert set(drawn_of(desk, WHOLE_ROUND).storeys) == {"ground", "first"}


def test_one_walk_draws_one_way_and_its_test_all_of_them(desk: Desk) -> None:
    found = round_of(desk, desk.state())
    assert found is not None
    test = next(one for stop in found.stops for one in stop.tests if one.key == "view/living-movement")
    one, whole = drawn_of(desk, test.walks[0].key), drawn_of(desk, test.key)
    assert one.storeys["ground"].count('class="ink-walk"') == 1
    assert whole.storeys["ground"].count('class="ink-walk"') == len(test.walks)


@pytest.mark.parametrize(
    "key", ["", "view", "view/nobody", "view/living-movement/up the wall//slow", "x" * 500]
)
def test_a_test_that_is_not_there_is_refused_in_words(desk: Desk, key: str) -> None:
    with pytest.raises(InputError, match="there is no test") as fault:
        drawn_of(desk, key)
    assert len(fault.value.what) < 130


def test_how_far_a_device_gives_way_is_told_by_ways(desk: Desk) -> None:
    found = gives_way(desk, "hall-movement")
    assert found.revision == 1
    assert [one.split()[3].strip(":") for one in found.ways[:4]] == ["left", "right", "up", "down"]
    assert gives_way(desk, "front-door-contact").ways == ()
    with pytest.raises(InputError, match="no device 'nobody'"):
        gives_way(desk, "nobody")
