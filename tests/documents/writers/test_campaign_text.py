"""A campaign as lines: what must be said, folded, with no share shown as surer than it is."""

from __future__ import annotations

from common.houses import CATALOGUE
from common.small_campaign import fitted_hall, watched_hall
from wardwright.documents.writers.campaign_text import campaign_text
from wardwright.trials.campaign.report import report_of
from wardwright.trials.campaign.run import campaign

TEXT = campaign_text(report_of(campaign(watched_hall(), CATALOGUE, trials=3000), CATALOGUE))


def test_everything_is_said() -> None:
    for words in (
        "sounder before the first target is touched:", "message before the control unit is broken:",
        "second, independent detection within 30 min", "SECONDS from the opening being open", "BY WAY IN",
        "PATHS THAT BEAT THE DESIGN", "WHY MISSED (sounder)", "WHY MISSED (message)", "ONE THING LOST",
        "LEAST-DETECTED PATHS", "WHAT THESE NUMBERS CANNOT KNOW", "exact binomial interval (95 %)",
    ):  # fmt: skip
        assert words in " ".join(TEXT.split())
    assert "FAULT OF THE PROGRAM" not in TEXT


def test_lines_are_folded() -> None:
    assert max(len(line) for line in TEXT.splitlines()) <= 100
    narrow = campaign_text(report_of(campaign(watched_hall(), CATALOGUE, trials=500), CATALOGUE), width=50)
    assert max(len(line) for line in narrow.splitlines()) <= 50


def test_without_targets_and_misses_it_still_reads() -> None:
    text = campaign_text(report_of(campaign(fitted_hall(), CATALOGUE, trials=200), CATALOGUE))
    assert "sounder before the control unit is reached: 0.0 %" in text
    assert "second, independent detection" in text
