from __future__ import annotations

import pytest

from common.cottage import add, read
from wardwright.errors import NotesError


def test_people() -> None:
    site = read(
        'person grandmother slow bed bedroom-1 hears-badly\nperson tom quick child named "Young Tom"\nperson mother'
    )
    first, second, third = site.people
    assert (first.pace, first.bed, first.hears_badly, first.name) == (
        "slow",
        "bedroom-1",
        True,
        "Grandmother",
    )
    assert (second.pace, second.is_child, second.name) == ("quick", True, "Young Tom")
    assert (third.pace, third.basis_of("pace"), first.basis_of("pace")) == ("usual", "default", "told")


@pytest.mark.parametrize(
    ("line", "kind", "height", "mass", "guessed"),
    [
        ("dog 0.6 m 30 kg", "big-dog", 0.6, 30, {"kind"}),
        ("dog 30 kg 0.3", "big-dog", 0.3, 30, {"kind"}),
        ("dog 0.3 m 6 kg", "small-dog", 0.3, 6, {"kind"}),
        ("small-dog", "small-dog", 0.35, 7, {"height_m", "mass_kg"}),
        ("cat 12 in, 10 lb", "cat", 0.3048, 4.5359237, set()),
        ("rabbit 2 kg", "rabbit", 0.25, 2, {"height_m"}),
        ("pet tortoise 0.2 high", "other", 0.2, 5, {"mass_kg"}),
    ],
)
def test_animals(line: str, kind: str, height: float, mass: float, guessed: set[str]) -> None:
    (pet,) = read(line).pets
    assert (pet.kind, pet.height_m, pet.mass_kg) == (kind, pytest.approx(height), pytest.approx(mass))
    assert {field for field, basis in pet.basis if basis == "guessed"} == guessed


def test_an_animal_stays_where_it_is_let() -> None:
    assert read("cat stays kitchen hall 0.3 m").pets[0].spaces == ("kitchen", "hall")
    assert [pet.id for pet in read("cat\ncat\ncat as tom").pets] == ["cat", "cat-2", "tom"]


def test_targets() -> None:
    site = add(
        "target Bedroom-1 small valuables, high, corner north-east\n"
        "target kitchen\n"
        "target kitchen 0.5 from west, 0.5 from south, low"
    )
    first, second, third = site.targets
    assert (first.space, first.name, first.worth) == ("bedroom-1", "small valuables", "high")
    assert first.at_m == pytest.approx((5.1 - 0.3, 4.6 - 0.3))
    assert (second.at_m, second.name, second.worth) == (None, "valuables", "medium")
    assert (third.at_m, third.worth, third.id) == (pytest.approx((2.4, 0.6)), "low", "kitchen-target-2")


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("person", "the line ends where a role"),
        ("person mother bed attic", "there is no room 'attic'"),
        ("person mother\nperson mother", "there is a 'mother' already"),
        ("dog 300 kg", "mass_kg cannot be so"),
        ("dog stays", "nothing follows 'stays'"),
        ("target kitchen low high", "two worths are given"),
    ],
)
def test_what_cannot_be_is_refused(line: str, message: str) -> None:
    with pytest.raises(NotesError, match=message):
        read(line)
