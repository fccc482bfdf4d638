import pytest

from common.broken import found, hut, only
from wardwright.model.consistency.identity import places
from wardwright.model.surroundings import GroundThing


@pytest.mark.parametrize(
    ("path", "value", "subject", "what"),
    [
        (
            "spaces/landing/storey",
            "first-floor",
            "landing",
            "'storey' names the storey 'first-floor', which does not exist; did you",
        ),
        ("walls/west/storey", "x", "west", "'storey' names the storey 'x', which does not exist"),
        ("fixtures/table/storey", "x", "table", "'storey' names the storey 'x', which does not exist"),
        ("stairs/stairs/lower", "x", "stairs", "'lower' names the storey 'x', which does not exist"),
        ("stairs/stairs/upper", "x", "stairs", "'upper' names the storey 'x', which does not exist"),
        (
            "openings/kitchen-window/joins",
            ["x", None],
            "kitchen-window",
            "'joins' names the space 'x', which does not",
        ),
        ("people/mother/bed", "x", "mother", "'bed' names the space 'x', which does not exist"),
        (
            "pets/+",
            {"id": "dog", "name": "dog", "spaces": ["x"]},
            "dog",
            "'spaces' names the space 'x', which does",
        ),
        ("targets/safe/space", "x", "safe", "'space' names the space 'x', which does not exist"),
        (
            "zones/zone-2/behaviour",
            "instan",
            "zone-2",
            "'behaviour' names the behaviour 'instan', which does not exist; ",
        ),
        ("zones/zone-2/parts", ["day"], "zone-2", "'parts' names the part 'day', which does not exist"),
        (
            "openings/kitchen-window/glazing",
            "triple",
            "kitchen-window",
            "'glazing' names the glazing 'triple', which",
        ),
        (
            "walls/west/construction",
            "brik",
            "west",
            "'construction' names the construction 'brik', which does not ",
        ),
        ("devices/unit/mount/wall", "x", "unit", "'mount.wall' names the wall 'x', which does not exist"),
        (
            "devices/front-contact/mount/opening",
            "front",
            "front-contact",
            "'mount.opening' names the opening 'front', ",
        ),
        (
            "devices/unit/mount",
            {"on": "free", "storey": "cellar", "at_m": [1, 1]},
            "unit",
            "'mount.storey' names the storey 'cellar', which does not exist",
        ),
        (
            "outlets/+",
            {"id": "o", "name": "o", "kind": "power", "storey": "x", "at_m": [1, 1]},
            "o",
            "'storey' names the storey 'x', which does not exist",
        ),
        (
            "open_edges/+",
            {"id": "e", "spaces": ["hall", "x"], "line_m": [[3, 1], [3, 2]]},
            "e",
            "'spaces' names the space 'x', which does not exist",
        ),
    ],
    ids=lambda value: value if isinstance(value, str) and "/" in value else "",
)
def test_a_reference_to_nothing_is_named(path: str, value: object, subject: str, what: str) -> None:
    hits = [p for p in found((path, value)) if p.what.startswith(what)]
    assert [(p.subject, p.weight) for p in hits] == [(subject, "stops")]


def test_a_zone_with_an_unknown_device_is_named() -> None:
    assert "'devices' names the device 'x', which does not exist" in [
        p.what for p in found(("zones/zone-2/devices", ["kitchen-detector", "x"]))
    ]


def test_an_id_may_stand_once_in_the_whole_document() -> None:
    assert only(("zones/zone-2/id", "kitchen")) == (
        "stops",
        "kitchen",
        "the id 'kitchen' is already that of spaces[1] \"kitchen\" (kitchen)",
    )
    oak = {
        "id": "table",
        "name": "oak",
        "kind": "tree",
        "outline_m": [[9, 9], [9, 10], [10, 10]],
        "height_m": 5,
    }
    assert (
        only(("ground/things", [oak]))[2] == "the id 'table' is already that of fixtures[0] \"table\" (table)"
    )


def test_a_basis_of_no_key_and_of_one_left_out() -> None:
    assert only(("walls/south/basis", {"colour": "told"}))[::2] == (
        "stops",
        "'basis' names 'colour', which is no key of it",
    )
    assert only(("walls/south/basis", {"height_m": "measured"})) == (
        "noted",
        "south",
        "'basis' calls 'height_m' measured, but 'height_m' is left out",
    )
    assert found(("walls/south/basis", {"height_m": "default"})) == ()
    assert only(("place/basis", {"latitude": "told"}))[2].endswith("did you mean 'latitude_deg'")


@pytest.mark.parametrize("path", ["name", "fixtures/table/name", "fixtures/table/id", "people/mother/name"])
def test_a_code_in_any_name_stops(path: str) -> None:
    problems = found((path, "alarm-code-0815"))
    secret = [p for p in problems if "looks as if it held a code" in p.what]
    assert [p.weight for p in secret] == ["stops"]
    assert "0815" not in " ".join(secret[0])


def test_every_list_of_a_site_is_looked_through() -> None:
    site = hut()
    lists = {name for name, value in site if isinstance(value, tuple)}
    assert {place.list_name for place in places(site)} <= lists
    assert {"storeys", "behaviours", "parts", "zones"} <= {place.list_name for place in places(site)}
    oak = GroundThing(id="oak", name="oak", kind="tree", outline_m=((9.0, 9.0), (9.0, 10.0)), height_m=5.0)
    ground = site.ground.model_copy(update={"things": (oak,)})
    assert any(p.entry is oak for p in places(site.model_copy(update={"ground": ground})))


def test_names_must_be_such_as_can_be_shown() -> None:
    weight, subject, what = only(("devices/unit/name", "unit\x1b[2J"))
    assert (weight, subject, what) == ("stops", "unit", "'name' holds a sign that cannot be shown")
    assert only(("name", "hut\u202e"))[2] == "the site's name holds a sign that cannot be shown"
    assert found(("name", "Hütte\u00a01")) == ()
