import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from hypothesis import given
from hypothesis import strategies as st

from common.broken import GOOD, hut
from wardwright.errors import DocumentError
from wardwright.model.document import json_schema, read_document, write_document
from wardwright.model.fabric import Space, Storey, Wall
from wardwright.model.record import BASES
from wardwright.model.site import Site
from wardwright.model.validation import problems
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample, sample_names

ROOT = Path(__file__).resolve().parents[2]
GROUND = Storey(id="ground", name="ground floor", elevation_m=0.0)
NUMBERS = st.floats(min_value=-100.0, max_value=100.0, allow_nan=False)
POINTS = st.tuples(NUMBERS, NUMBERS)


@st.composite
def walls(draw: st.DrawFn) -> Wall:
    # Only the fields drawn are set, so that unset ones must stay unset.
    fields: dict[str, Any] = {"id": "w", "storey": "ground", "line_m": draw(st.tuples(POINTS, POINTS))}
    extra = {
        "thickness_m": st.floats(min_value=0.01, max_value=3.0),
        "base_m": NUMBERS,
        "height_m": st.none() | st.floats(min_value=0.01, max_value=20.0),
        "footprint_m": st.none() | st.lists(POINTS, min_size=3, max_size=6).map(tuple),
        "is_exterior": st.none() | st.booleans(),
    }
    for name in draw(st.sets(st.sampled_from(sorted(extra)))):
        fields[name] = draw(extra[name])
    fields["basis"] = draw(st.dictionaries(st.sampled_from(sorted(fields)), st.sampled_from(BASES)))
    return Wall(**fields)


@given(walls(), st.text(max_size=20))
def test_what_is_written_reads_back_equal(wall: Wall, name: str) -> None:
    site = Site(name=name, storeys=(GROUND,), walls=(wall,))
    text = write_document(site)
    again = read_document(text, where="again")
    assert again == site
    assert write_document(again) == text
    assert again.walls[0].model_fields_set == wall.model_fields_set
    fields = type(wall).model_fields
    assert [again.walls[0].basis_of(f) for f in fields] == [wall.basis_of(f) for f in fields]


def test_a_default_stays_out_and_stays_a_default() -> None:
    wall = Wall(id="w", storey="ground", line_m=((0.0, 0.0), (4.0, 0.0)), basis={"line_m": "measured"})  # type: ignore[arg-type] # a mapping is taken too
    text = write_document(Site(name="hut", storeys=(GROUND,), walls=(wall,)))
    assert "thickness_m" not in text
    again = read_document(text, where="hut").walls[0]
    assert (again.basis_of("line_m"), again.basis_of("thickness_m")) == ("measured", "default")


def test_a_small_edit_changes_few_lines() -> None:
    before = write_document(hut()).splitlines()
    after = write_document(hut(("walls/south/thickness_m", 0.3))).splitlines()
    assert len(before) == len(after)
    assert sum(one != other for one, other in zip(before, after, strict=True)) == 1


def test_a_mount_says_what_it_is_on_even_when_nobody_set_it() -> None:
    text = write_document(hut())
    site = read_document(text, where="hut")
    mount = site.devices[0].mount
    unset = type(mount).model_validate({k: v for k, v in mount.model_dump().items() if k != "on"})
    device = site.devices[0].model_copy(update={"mount": unset})
    assert write_document(site.model_copy(update={"devices": (device, *site.devices[1:])})) == text


def test_a_mark_of_order_at_the_start_is_passed_over() -> None:
    assert read_document("\ufeff" + GOOD.read_text(encoding="utf-8"), where="hut") == hut()


def test_an_older_document_is_upgraded_step_by_step() -> None:
    # An artificial version 0, in which the name was called title.
    def named(data: dict[str, Any]) -> dict[str, Any]:
        return {"name" if key == "title" else key: value for key, value in data.items()}

    data = json.loads(GOOD.read_text(encoding="utf-8"))
    old = {"title" if key == "name" else key: value for key, value in data.items()} | {"schema_version": 0}
    assert read_document(json.dumps(old), where="old", steps={0: named}) == hut()
    with pytest.raises(DocumentError, match="'schema_version' is 0, and nothing upgrades that version"):
        read_document(json.dumps(old), where="old")


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", "x: this is not JSON: expecting value at line 1, column 1. Mend that place."),
        ("[]", "x: a site document is an object in braces, but this is a list. "),
        ('{"schema_version": true}', "x: 'schema_version' should be a whole number, but is true. "),
        ('{"schema_version": "1"}', "x: 'schema_version' should be a whole number, but is the text '1'. "),
        ('{"a": ' + "1" * 5000 + "}", "x: a number has thousands of digits. Write an ordinary number."),
        ('{"a": ' * 100_000, "x: lists and objects stand more than 24 deep within one another. "),
        ("[" * 30 + "]" * 30, "x: lists and objects stand more than 24 deep within one another. "),
        ('{"a": -Infinity}', "x: the value -Infinity is not a number. "),
        ('{"name": "hut", "a": 1, "a": 1}', "x, \"hut\": key 'a' is written twice. "),
        (
            '{"schema_version": 1, "name": "hut", "storeys": [{"id": "g", "name": "g", "elevation_m": 1e999}]}',
            "x, storeys[0] \"g\" (g): 'elevation_m' should be an ordinary number, but is the number inf. ",
        ),
        ('"' + "a" * 20_000_001 + '"', "x: the document is longer than 20 MB. "),
    ],
    ids=lambda text: text[:20],
)
def test_what_is_no_document_is_refused(text: str, message: str) -> None:
    with pytest.raises(DocumentError) as caught:
        read_document(text, where="x")
    assert str(caught.value).startswith(message)


def test_the_published_schema_is_not_stale() -> None:
    done = subprocess.run(
        [sys.executable, str(ROOT / "scripts" / "build-schema"), "--check"],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr


def validator() -> Any:
    text = (ROOT / "docs" / "site.schema.json").read_text(encoding="utf-8")
    schema = json.loads(text)
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def test_the_schema_takes_every_sample_and_the_good_house() -> None:
    judge = validator()
    judge.validate(json.loads(GOOD.read_text(encoding="utf-8")))
    for name in sample_names():
        judge.validate(json.loads(write_document(read_sample(name))))


def test_the_samples_as_they_stand_in_the_package_fit_the_schema() -> None:
    judge = validator()
    for path in sorted((ROOT / "src" / "wardwright" / "samples").glob("*.json")):
        judge.validate(json.loads(path.read_text(encoding="utf-8")))


@pytest.mark.parametrize(
    "name",
    ["no-version", "misspelt-key", "number-in-quotes", "negative-thickness", "unknown-word", "newer-version"],
)
def test_the_schema_refuses_what_reading_refuses(name: str) -> None:
    bad = json.loads((GOOD.parent / f"{name}.json").read_text(encoding="utf-8"))
    assert not validator().is_valid(bad)


def test_the_schema_asks_a_mount_what_it_is_on() -> None:
    data = json.loads(GOOD.read_text(encoding="utf-8"))
    del data["devices"][0]["mount"]["on"]
    assert not validator().is_valid(data)
    with pytest.raises(DocumentError, match="'mount' does not say what it is fixed on"):
        read_document(json.dumps(data), where="hut")


def test_the_schema_describes_its_keys() -> None:
    wall = json_schema()["$defs"]["Wall"]["properties"]
    assert wall["thickness_m"]["exclusiveMinimum"] == 0
    assert "[m]" in wall["line_m"]["description"]


def test_a_space_needs_three_corners() -> None:
    with pytest.raises(ValueError, match="at least 3 items"):
        Space(id="s", name="s", storey="ground", outline_m=((0.0, 0.0), (1.0, 0.0)))


def test_the_document_in_the_guide_reads_and_holds_together() -> None:
    guide = (ROOT / "docs" / "site-document.md").read_text(encoding="utf-8")
    text = guide.partition("```json\n")[2].partition("```")[0]
    site = read_document(text, where="guide")
    assert problems(site, load_catalogue()) == ()
    assert site.walls[0].basis_of("thickness_m") == "guessed"
    validator().validate(json.loads(text))
