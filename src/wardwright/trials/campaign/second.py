"""A second, independent detection in a campaign: how often it comes within the window of the rule pack."""

from __future__ import annotations

import numpy as np

from wardwright.model.catalogue import Catalogue
from wardwright.trials.campaign.run import Campaign, window_of
from wardwright.trials.campaign.shares import Share, share_of
from wardwright.trials.independent import CONFIRMATION, confirmation_window


def second_of(campaign: Campaign, catalogue: Catalogue) -> tuple[Share | None, float | None, str | None]:
    """How often a second, independent detection comes within the window, the window [s], or why that is not known."""
    window = window_of(campaign.setting.site, catalogue)
    if not np.isfinite(window):
        pack = campaign.setting.site.place.rule_pack
        return None, None, f"not computable: the rule pack '{pack}' has no limit '{CONFIRMATION}'"
    noticed = np.isfinite(campaign.columns.notice)
    told = np.isfinite(campaign.columns.second[noticed])
    return share_of(int(np.count_nonzero(told)), told.size), window, None


def limit_words(campaign: Campaign, catalogue: Catalogue) -> str:
    """Where the window is from, and how sure that is; empty where none is told."""
    limit = confirmation_window(campaign.setting.site, catalogue)
    return "" if limit is None else "; ".join(part for part in (limit.origin, limit.mark, limit.note) if part)
