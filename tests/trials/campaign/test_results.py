"""The records of a campaign's results."""

from __future__ import annotations

from wardwright.trials.campaign.results import CANNOT_KNOW, Cause, Why
from wardwright.trials.campaign.shares import share_of


def test_a_record_reads_itself_back() -> None:
    cause = Cause(what="slow radio", share=share_of(3, 4))
    one = Why(need="message", traced=4, design=share_of(1, 4), causes=(cause,), bugs=())
    assert Why.model_validate_json(one.model_dump_json()) == one


def test_what_cannot_be_known_is_many_things() -> None:
    assert len(CANNOT_KNOW) == len(set(CANNOT_KNOW)) >= 6
    assert not any("certif" in one or "deter" in one.split() for one in CANNOT_KNOW)
