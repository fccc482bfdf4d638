from typing import Any

from wardwright.model.site import SCHEMA_VERSION
from wardwright.model.upgrades.table import UPGRADES, upgraded


def test_steps_are_taken_in_order() -> None:
    def once(data: dict[str, Any]) -> dict[str, Any]:
        return {**data, "seen": [*data.get("seen", []), data["schema_version"]]}

    steps = dict.fromkeys((1, 2, 3), once)
    assert upgraded({"schema_version": 1}, found=1, newest=4, steps=steps) == {
        "seen": [1, 2, 3],
        "schema_version": 4,
    }


def test_a_missing_step_is_no_upgrade() -> None:
    assert upgraded({"schema_version": 1}, found=1, newest=3, steps={1: dict}) is None


def test_every_older_version_has_its_step() -> None:
    assert sorted(UPGRADES) == list(range(1, SCHEMA_VERSION))
