"""The walk-test plan as lines for a terminal, and as JSON."""

from __future__ import annotations

from wardwright.documents.content.proving_plan_words import HOW_TO_WALK, walk_words, walks_of
from wardwright.documents.content.quantities import quantity, sentence
from wardwright.documents.content.round_told import plan_names, told_round
from wardwright.documents.writers.text import WIDTH, hanging, plain
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.proving_plan import ProvingPlan


def proving_plan_text(plan: ProvingPlan, site: Site, catalogue: Catalogue, *, width: int = WIDTH) -> str:
    """Write the walk-test plan as lines.

    Parameters
    ----------
    plan : ProvingPlan
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
        Stop by stop in walking order, under each detector's tests its walks. Plain letters.
    """
    names, told = plan_names(site, catalogue), told_round(plan.round, site, catalogue)
    lines = [f"Tests of {plan.house}", *hanging(sentence(told.heading), width)]
    lines += hanging(f"Begin at {told.begins_at}: {told.order}. Back there: {told.back}.", width)
    lines += hanging(HOW_TO_WALK, width)
    for stop, one in zip(plan.round.stops, told.stops, strict=True):
        where = f" ({one.where})" if one.where else ""
        lines += ["", f"{one.number}.{where} walk there: {one.walk}"]
        for test, words in zip(stop.tests, one.tests, strict=True):
            lines += hanging(sentence(words.what), width, indent="   ")
            if "view" not in test.kind:
                continue
            walks = walks_of(plan, test.about, is_view=test.kind == "view")
            waits = {walk.wait_s for walk in walks if walk.wait_s}
            for wait in sorted(waits):
                told_wait = quantity(wait, "s", 1.0, is_plain=True)
                lines += hanging(
                    f"Wait {told_wait} out of its sight before each walk.", width, indent="     "
                )
            lines += [
                row
                for walk in walks
                for row in hanging(sentence(walk_words(walk, names)), width, indent="     ")
            ]
    if plan.without_walks:
        missing = ", ".join(names.of(one) for one in plan.without_walks)
        lines += [
            "",
            *hanging(f"No walk could be laid out, since what it sees is not known: {missing}.", width),
        ]
    return plain("\n".join(lines) + "\n")


def proving_plan_json(plan: ProvingPlan) -> str:
    """The plan as JSON, numbers not rounded."""
    return plan.model_dump_json(indent=2) + "\n"
