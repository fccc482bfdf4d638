"""What may bring fitters back in the first year: findings of the rules, and answers that are thin or not met."""

from __future__ import annotations

from wardwright.costing.return_visits import Risk, risks_of
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions import entry_and_exit_times, will_it_reach, zone_behaviours
from wardwright.questions.answer import Answer, Verdict

TOO_SHORT, JUST, BREAKS, WEAK = (
    "return-visit-times-bad", "return-visit-times-thin", "return-visit-behaviour-bad", "return-visit-radio-thin",
)  # fmt: skip
BY_ANSWER: dict[tuple[int, Verdict], str] = {
    (entry_and_exit_times.NUMBER, "bad"): TOO_SHORT,
    (entry_and_exit_times.NUMBER, "thin"): JUST,
    (zone_behaviours.NUMBER, "bad"): BREAKS,
    (will_it_reach.NUMBER, "thin"): WEAK,
}
"""Question and verdict -> the figure that says how likely a return visit is because of it."""
SAID_BY_A_RULE = "LNK104"
"""The rule that a weak radio link is a finding of: its answer does not count again."""


def return_risks(site: Site, catalogue: Catalogue) -> tuple[Risk, ...]:
    """Everything that is known to bring somebody back.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Says which rules count.

    Returns
    -------
    tuple of Risk
        Findings by code and subject, then answers by question; what could not be worked out is no risk that is known.
    """
    found = risks_of(site, catalogue)
    weak = {one.subject for one in found if one.code == SAID_BY_A_RULE}
    asked: tuple[Answer, ...] = (
        *entry_and_exit_times.answers(site, catalogue),
        *zone_behaviours.answers(site, catalogue),
        *will_it_reach.without_mends(site, catalogue),
    )
    known = {device.id for device in site.devices} | {one.id for one in site.openings}
    return (
        *found,
        *(
            Risk(
                one.subject_id,
                f"Q{one.question}",
                BY_ANSWER[one.question, one.verdict],
                f"{one.subject}: {one.measure}",
            )
            for one in sorted(asked, key=lambda each: (each.question, each.subject_id))
            if (one.question, one.verdict) in BY_ANSWER
            and one.subject_id in known
            and not (one.question == will_it_reach.NUMBER and one.subject_id in weak)
        ),
    )
