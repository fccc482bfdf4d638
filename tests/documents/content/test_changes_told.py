from __future__ import annotations

from wardwright.documents.content.changes_told import told_changes
from wardwright.model.edits import OPERATION, edited
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

SITE, CATALOGUE = read_sample("terrace"), load_catalogue()


def after(*operations: object) -> Site:
    return edited(SITE, tuple(OPERATION.validate_python(one) for one in operations))


def told(site: Site) -> dict[str, tuple[str, tuple[str, ...]]]:
    return {one.thing: (one.course, one.what) for one in told_changes(SITE, site, CATALOGUE)}


def test_a_device_that_moved_says_how_far_and_how_high() -> None:
    device = SITE.device("hall-movement")
    mount = device.mount.model_dump() | {"height_m": 2.4}
    mount["offset_m"] += 0.25
    site = after({"do": "mount-device", "device": device.id, "mount": mount})
    course, what = told(site)["Ground hall movement"]
    assert course == "changed"
    assert what[0] == "moved 0.25 m on the plan"
    assert "height above the floor 2.40 m, before 2.20 m" in what


def test_what_came_and_what_went_is_named_without_its_fields() -> None:
    site = after({"do": "remove", "of": "devices", "id": "hall-keypad"},
                 {"do": "add", "to": "people", "record": {"id": "lodger", "name": "Lodger"}})  # fmt: skip
    found = told(site)
    assert found["Ground hall keypad"] == ("gone", ())
    assert found["Lodger"] == ("new", ())


def test_a_fact_says_what_it_is_and_what_it_was() -> None:
    site = after({"do": "tell", "of": "openings", "id": "front-door", "facts": {"lock": "rc2"}},
                 {"do": "tell", "of": "programme", "facts": {"entry_time_s": 40.0}})  # fmt: skip
    found = told(site)
    assert any(one.startswith("lock rc2, before") for one in found["Front door"][1])
    assert "entry time 40 s, before 30 s" in found["the programme"][1]


def test_a_fact_that_is_only_known_otherwise_says_so() -> None:
    window = SITE.opening("kitchen-window")
    site = after(
        {"do": "tell", "of": "openings", "id": window.id, "facts": {"lock": window.lock}, "basis": "measured"}
    )
    ((_, what),) = told(site).values()
    assert what == (f"lock is measured, before {window.basis_of('lock')}",)


def test_a_moved_wall_tells_of_shapes_and_no_coordinates() -> None:
    site = after({"do": "move-wall", "wall": "hall-living-wall", "by_m": 0.1})
    found = told(site)
    assert found["Hall"] == ("changed", ("shape or place on the plan",))
    assert not any("(" in piece for _, what in found.values() for piece in what if "looking" not in piece)


def test_nothing_is_told_where_nothing_differs() -> None:
    assert told_changes(SITE, SITE, CATALOGUE) == ()
