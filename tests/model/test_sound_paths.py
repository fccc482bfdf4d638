import pytest

from wardwright.model.fabric import OpenEdge
from wardwright.model.sound_paths import leaf_paths, outer_pieces, wall_paths
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
SITE = read_sample("terrace")
WALLS, LEAVES = wall_paths(SITE, CATALOGUE), leaf_paths(SITE, CATALOGUE)


def between(a: str, b: str | None) -> float:
    return sum(path.area_m2 for path in WALLS if {path.one, path.other} == {a, b} and path.facing is not None)


def test_a_partition_counts_once_and_without_its_door() -> None:
    assert between("hall", "living") == pytest.approx(4.6 * 2.4 - 0.76 * 2.0)


def test_floors_lie_between_storeys() -> None:
    floors = {(path.one, path.other) for path in WALLS if path.facing is None}
    assert ("living", "bedroom-1") in floors


def test_only_inside_doors_have_a_gap_under_them() -> None:
    gaps = {leaf.opening.id: leaf.gap_width_m for leaf in LEAVES if leaf.opening is not None}
    assert gaps["living-door"] == 0.76
    assert gaps["front-door"] == gaps["living-window"] == 0.0
    assert [(leaf.one, leaf.other) for leaf in LEAVES if leaf.opening is None] == [("hall", "landing")]


def test_party_walls_are_no_outside_and_windows_look_out() -> None:
    pieces = outer_pieces(SITE, WALLS, LEAVES)
    normals = {LEAVES[p.number].opening.id: p.normal for p in pieces if p.is_leaf}  # type: ignore[union-attr]
    assert normals["living-window"] == pytest.approx((0.0, -1.0))
    assert normals["kitchen-window"] == pytest.approx((0.0, 1.0))
    assert {p.normal for p in pieces if not p.is_leaf} <= {(0.0, -1.0), (0.0, 1.0)} | {
        (-0.0, 1.0),
        (-0.0, -1.0),
    }


def test_an_open_edge_never_shuts_and_a_balcony_is_the_open_air() -> None:
    edge = OpenEdge(id="e", spaces=("hall", "kitchen"), line_m=((0.0, 4.6), (1.0, 4.6)))
    outdoors = SITE.space("living").model_copy(update={"use": "terrace"})
    spaces = tuple(outdoors if one.id == "living" else one for one in SITE.spaces)
    site = SITE.model_copy(update={"open_edges": (edge,), "spaces": spaces})
    leaves = leaf_paths(site, CATALOGUE)
    assert [leaf.area_m2 for leaf in leaves if (leaf.one, leaf.other) == ("hall", "kitchen")][-1] == 2.4
    assert [
        leaf.other for leaf in leaves if leaf.opening is not None and leaf.opening.id == "living-door"
    ] == [None]
