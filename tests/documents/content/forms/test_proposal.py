from __future__ import annotations

from collections.abc import Callable
from typing import get_args

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.forms.proposal import DOES, NOT_PLACED, proposal
from wardwright.model.device import DeviceKind
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def test_the_proposal_reads_as_it_did(kept: Callable[[str, str], None]) -> None:
    site = fitted()
    kept("proposal.txt", as_text(proposal(site, CATALOGUE, ask(site, CATALOGUE), drawn_up=DAY)))


def test_every_kind_of_device_has_its_words() -> None:
    assert set(DOES) == set(get_args(DeviceKind))


def test_every_device_is_counted_once_and_the_control_unit_has_no_room() -> None:
    site = fitted()
    table = next(
        one.table
        for one in proposal(site, CATALOGUE, (), drawn_up=DAY).sections
        if one.heading == "What we propose"
    )
    assert table is not None
    assert sum(int(row[2]) for row in table.rows if isinstance(row[2], int)) == len(site.devices)
    assert [row[0] for row in table.rows if row[1] == "control unit"] == [NOT_PLACED]


def test_a_house_without_kit_says_that_nothing_is_decided() -> None:
    site = read_sample("terrace").model_copy(update={"devices": (), "zones": ()})
    bare = site.model_copy(
        update={"openings": tuple(one.model_copy(update={"is_entry_door": False}) for one in site.openings)}
    )
    told = as_text(proposal(bare, CATALOGUE, (), drawn_up=DAY))
    assert "Which door gives time to unset is not decided." in told
    assert "Where you set and unset is not decided" in told
    assert "Nothing is on in this part." in told
