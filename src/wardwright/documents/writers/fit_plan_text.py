"""The plan of fitting as lines for a terminal, and as JSON."""

from __future__ import annotations

from wardwright.documents.content.fit_plan_words import HOW_TRIED, move_words, sheet_words, stage_words
from wardwright.documents.content.names import names_of
from wardwright.documents.content.quantities import sentence
from wardwright.documents.writers.text import WIDTH, hanging, plain
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.fit_plan import FitPlan
from wardwright.works.fitting_order import FIXES_NOTHING


def fit_plan_text(plan: FitPlan, site: Site, catalogue: Catalogue, *, width: int = WIDTH) -> str:
    """Write the plan of fitting as lines.

    Parameters
    ----------
    plan : FitPlan
        It.
    site : Site
        The design.
    catalogue : Catalogue
        For names.
    width : int, default 100
        Columns that lines are folded to. [-]

    Returns
    -------
    str
        Stage by stage, each device once with its sheet. Plain letters.
    """
    names = names_of(site, catalogue)
    sheets = {one.device: one for one in plan.sheets}
    moves = {one.device: one for one in plan.moves}
    lines = [f"Fitting {plan.house}"]
    for number, step in enumerate(plan.steps, 1):
        lines += ["", *hanging(f"{number}. {sentence(stage_words(step))}", width)]
        for device in step.devices:
            if step.stage in FIXES_NOTHING:
                lines.append(f"   - {names.of(device)}")
                continue
            lines.append(f"   {names.of(device)}")
            told = [*sheet_words(sheets[device], names)]
            if device in moves:
                told += [f"may be {one}" for one in move_words(moves[device], names)]
            lines += [row for one in told for row in hanging(sentence(one), width, indent="     ")]
    if plan.moves:
        lines += ["", *hanging(HOW_TRIED, width)]
    return plain("\n".join(lines) + "\n")


def fit_plan_json(plan: FitPlan) -> str:
    """The plan as JSON, numbers not rounded."""
    return plan.model_dump_json(indent=2) + "\n"
