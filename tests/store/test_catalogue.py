from math import radians, tan
from pathlib import Path
from typing import get_args

import pytest

from wardwright.errors import CatalogueError
from wardwright.model.device import DeviceKind
from wardwright.model.opening import LockClass
from wardwright.rules.table import RULES
from wardwright.store.catalogue import load_catalogue

SOUNDER = """
[[sheet]]
id = "my-sounder"
name = "my sounder"
kind = "sounder"
source = "own"
mark = "published"

[sheet.sounder]
level_dba = 100.0
"""


def sheet_file(folder: Path, text: str) -> Path:
    path = folder / "mine.toml"
    path.write_text(text, encoding="utf-8")
    return path


def message_of(path: Path) -> str:
    with pytest.raises(CatalogueError) as caught:
        load_catalogue([path])
    return str(caught.value).replace(str(path), "FILE")


def test_every_lock_class_of_the_model_has_its_row() -> None:
    assert {lock.id for lock in load_catalogue().locks} == set(get_args(LockClass))


def test_the_kit_has_every_kind_that_the_race_needs() -> None:
    kinds = {sheet.kind for sheet in load_catalogue().sheets}
    assert kinds == set(get_args(DeviceKind))


def test_every_row_says_where_it_is_from() -> None:
    catalogue = load_catalogue()
    sources = {source.id for source in catalogue.sources}
    rows = (
        *catalogue.sheets,
        *catalogue.constructions,
        *catalogue.glazings,
        *catalogue.locks,
        *catalogue.figures,
        *catalogue.radio_materials,
        *catalogue.radio_laws,
        *catalogue.wall_losses,
        *catalogue.entry_shares,
    )
    assert {row.source for row in rows} <= sources
    assert len(rows) > 40
    # A row without an outside source can be no more than common practice, memory, assumption or our derivation.
    own = {row.mark for row in rows if row.source == "own"}
    assert not own & {"standard", "published"}


def test_every_source_is_used() -> None:
    catalogue = load_catalogue()
    rows = (
        *catalogue.sheets,
        *catalogue.locks,
        *catalogue.figures,
        *catalogue.glazings,
        *catalogue.limits,
        *catalogue.radio_materials,
        *catalogue.radio_laws,
        *catalogue.cells,
        *catalogue.tasks,
        *catalogue.transmissions,
        *catalogue.absorptions,
        *catalogue.spectrums,
        *catalogue.entry_shares,
    )
    of_rules = {key for rule in RULES for key in rule.sources}
    assert {source.id for source in catalogue.sources} == {row.source for row in rows} | of_rules


def test_resistance_times_stand_on_their_standard() -> None:
    # EN 1627 as restated in public guidance: RC2 3 min, RC3 5 min tool contact.
    catalogue = load_catalogue()
    assert catalogue.figure("force-rc2").value == 3 * 60
    assert catalogue.figure("force-rc3").value == 5 * 60


def test_zone_rows_are_aimed_as_their_comment_says() -> None:
    # Heights above the floor of the axes from a lens at 2.2 m: 1.0 m at 12 m, 0.8 at 6, 0.5 at 3, 0 at 1.2.
    movement = load_catalogue().sheet("movement-12m").movement
    assert movement is not None
    heights = [
        2.2 - away * tan(radians(row.depression_deg))
        for away, row in zip((12, 6, 3, 1.2), movement.rows, strict=True)
    ]
    assert heights == pytest.approx([1.0, 0.8, 0.5, 0.0], abs=0.01)


def test_a_user_adds_a_sheet(tmp_path: Path) -> None:
    catalogue = load_catalogue([sheet_file(tmp_path, SOUNDER)])
    assert catalogue.sheet("my-sounder").sounder is not None
    assert len(catalogue.sheets) == len(load_catalogue().sheets) + 1


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (
            SOUNDER.replace("level_dba", "levl_dba"),
            (
                "FILE, sheet[0] \"my sounder\" (my-sounder): key 'levl_dba' is not known; did you mean 'level_dba'. "
                "Write 'level_dba', or take the key out."
            ),
        ),
        (
            SOUNDER.replace('"my-sounder"', '"sounder-inside"'),
            "FILE: the sheet 'sounder-inside' is already in sounders.toml. Give it another id.",
        ),
        (
            SOUNDER.replace('source = "own"', 'source = "en-1672"'),
            (
                "FILE, sheet \"my-sounder\": 'source' names the source 'en-1672', which does not exist; "
                "did you mean 'en-1627'. Add a [[source]] of that id, or write 'own'."
            ),
        ),
        (
            SOUNDER.replace("100.0", "300.0"),
            (
                "FILE, sheet[0] \"my sounder\" (my-sounder): 'level_dba' is 300.0, but must be at most 140. "
                "Give a number that is at most 140."
            ),
        ),
        (
            SOUNDER.replace('kind = "sounder"', 'kind = "keypad"'),
            (
                "FILE, sheet \"my-sounder\": the keypad has a table 'sheet.sounder'. "
                "Take the table out, or change 'kind'."
            ),
        ),
        (
            SOUNDER.partition("[sheet.sounder]")[0],
            (
                "FILE, sheet \"my-sounder\": the sounder needs its table 'sheet.sounder'. "
                "Add [sheet.sounder] with what the maker states."
            ),
        ),
        (
            "[[sheet]\n",
            (
                "FILE: this is not TOML: expected ']]' at the end of an array declaration (at line 1, column 8). "
                "Mend that line; a sheet begins with [[sheet]]."
            ),
        ),
        (
            (
                '[[figure]]\nid = "x"\nname = "x"\nvalue = 3.0\nlow = 4.0\nhigh = 5.0\nunit = "s"\n'
                'source = "own"\nmark = "assumption"\n'
            ),
            "FILE, figure \"x\": 'value' 3 is not between 'low' 4 and 'high' 5. Put the three in order.",
        ),
        (
            (
                '[[lock]]\nid = "chain"\nname = "chain"\nforce_figure = "force-plan"\nsource = "own"\n'
                'mark = "assumption"\n'
            ),
            (
                "FILE, lock \"chain\": 'force_figure' names the figure 'force-plan', which does not exist; "
                "did you mean 'force-plain'. Add a [[figure]] of that id."
            ),
        ),
    ],
)
def test_a_bad_sheet_gets_its_message(tmp_path: Path, text: str, message: str) -> None:
    assert message_of(sheet_file(tmp_path, text)) == message


def test_a_missing_file_is_named(tmp_path: Path) -> None:
    assert message_of(tmp_path / "none.toml") == (
        "FILE: the file cannot be read (No such file or directory). Check the path and who may read it."
    )


def test_a_file_that_is_no_text_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    path.write_bytes(b"\xff\xfe\x00")
    assert message_of(path) == "FILE: this is not text in UTF-8. Save it as UTF-8 text."


def test_an_unknown_sheet_names_those_that_exist() -> None:
    with pytest.raises(CatalogueError, match="movement-12m-pet"):
        load_catalogue().sheet("movement-15m")


def test_the_sheet_in_the_guide_can_be_used(tmp_path: Path) -> None:
    guide = Path(__file__).resolve().parents[2] / "docs" / "device-sheets.md"
    text = guide.read_text(encoding="utf-8").partition("```toml\n")[2].partition("```")[0]
    sheet = load_catalogue([sheet_file(tmp_path, text)]).sheet("hall-detector")
    assert sheet.movement is not None
    assert (sheet.source, sheet.movement.reach_m) == ("hall-detector-manual", 10.0)
