import pytest

from wardwright.errors import CatalogueError
from wardwright.model.sheets import SheetText, read_rows

SOURCE = '[[source]]\nid = "own"\ntitle = "own"\nseen = "all"\n'
MOVEMENT = """
[[sheet]]
id = "m"
name = "m"
kind = "movement-detector"
source = "own"
mark = "assumption"

[sheet.movement]
reach_m = 10
angle_deg = 90
height_low_m = 2.6
height_high_m = 2.0
rows = [{name = "far", pairs = 9, depression_deg = 6}]
"""


def test_files_are_joined_in_order() -> None:
    figure = (
        '[[figure]]\nid = "f"\nname = "f"\nvalue = 1\nlow = 1\nhigh = 1\nunit = "s"\n'
        'source = "own"\nmark = "assumption"\n'
    )
    joined = read_rows([SheetText("a", SOURCE), SheetText("b", figure)])
    assert [figure.id for figure in joined.figures] == ["f"]


LIMIT = '[[limit]]\nid = "l"\nname = "l"\nvalue = 1\nunit = "s"\npack = "us"\nsource = "own"\nmark = "published"\n'


def test_limits_share_an_id_across_packs() -> None:
    joined = read_rows([SheetText("a", SOURCE), SheetText("b", LIMIT + LIMIT.replace("us", "uk-eu"))])
    assert [row.words for row in joined.limits] == ["l (us)", "l (uk-eu)"]


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (MOVEMENT, "b, sheet \"m\": 'height_low_m' 2.6 is above 'height_high_m' 2. Put the two in order."),
        (
            MOVEMENT.replace("reach_m = 10", 'reach_m = "10"'),
            "b, sheet[0] \"m\" (m): 'reach_m' should be a number, but is the text '10'. Write a number.",
        ),
        (SOURCE, "b: the source 'own' is already in a. Give it another id."),
        (LIMIT + LIMIT, "b: the limit 'l (us)' is already in b. Give it another id."),
        ("a = " + "[" * 5000, "b: "),
        ("#" * 1_000_001, "b: the file is longer than 1 MB. Give a file of rows only; "),
    ],
    ids=["heights", "quotes", "source-twice", "limit-twice", "nested", "long"],
)
def test_rows_that_cannot_be_used_are_refused(text: str, message: str) -> None:
    with pytest.raises(CatalogueError) as caught:
        read_rows([SheetText("a", SOURCE), SheetText("b", text)])
    assert str(caught.value).startswith(message)
