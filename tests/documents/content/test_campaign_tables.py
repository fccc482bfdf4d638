"""The tables of a campaign where there is little to tell."""

from __future__ import annotations

from wardwright.documents.content.campaign_tables import caught_table, losses_table, why_table
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.campaign.report import report_of
from wardwright.trials.campaign.results import CampaignReport, Why
from wardwright.trials.campaign.run import campaign
from wardwright.trials.campaign.shares import share_of

CATALOGUE = load_catalogue()


def small() -> CampaignReport:
    return report_of(campaign(read_sample("one-room"), CATALOGUE, trials=200), CATALOGUE)


def test_without_a_control_unit_nothing_is_said_of_it_but_why() -> None:
    rows = dict(caught_table(small().model_copy(update={"before_unit": None})).rows)  # type: ignore[arg-type]
    assert rows["message before the control unit is broken"] == "not computable: no control unit"
    assert "both" not in rows


def test_a_need_without_a_miss_says_so_and_a_fault_of_the_program_is_told() -> None:
    none = Why(need="sounder", traced=0, design=share_of(0, 0), causes=(), bugs=())
    fault = Why(need="message", traced=3, design=share_of(1, 3), causes=(), bugs=("door to unit",))
    rows = why_table(small().model_copy(update={"why": (none, fault)})).rows
    assert rows[0][1] == "no miss"
    assert any("a fault of the program: door to unit" in str(row[1]) for row in rows)


def test_nothing_lost_is_a_table_without_rows() -> None:
    assert losses_table(small().model_copy(update={"losses": ()})).rows == ()
