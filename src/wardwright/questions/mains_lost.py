"""Question 12, the mains lost: for how long does the alarm still notice, sound and send?"""

from __future__ import annotations

import math

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.questions.answer import Answer, PartAnswer, Verdict, unanswered
from wardwright.questions.loss_mends import longer_standby, router_back_up, second_path
from wardwright.rules.finding import Mend
from wardwright.trials.single_loss import (
    Hours,
    hours_of,
    is_self_powered,
    message_hours,
    message_paths,
    routers,
    together,
)
from wardwright.trials.watchers import devices_of

NUMBER = 12
MEASURE = "hours without mains for which it still notices, sounds and sends"
NO_GRADE_H = 12.0
"""Hours that are wanted where no grade is aimed at. [h] (assumption)"""


def mains_lost(site: Site, catalogue: Catalogue, unit: Device) -> Answer:
    """How long the alarm goes on without mains.

    Parameters
    ----------
    site : Site
        The devices, and the grade that is aimed at.
    catalogue : Catalogue
        Sheets and figures.
    unit : Device
        The control unit.

    Returns
    -------
    Answer
        Held against the hours of the grade. [h]
    """
    pack = site.place.rule_pack
    own = hours_of(unit, catalogue, pack=pack)
    message = message_hours(site, catalogue, unit=unit)
    parts = (
        _hours_part("control unit goes on", own, none=""),
        _hours_part("message still leaves", message, none="no message path is known"),
    )
    alone = [one for one in devices_of(site, catalogue, "sounder") if is_self_powered(one, catalogue)]
    notes = [f"{one.name} sounds by itself, also after that" for one in alone]
    dark = [
        one.name
        for one in sorted(site.devices, key=lambda one: one.id)
        if catalogue.sheet(one.sheet).power == "mains" and hours_of(one, catalogue, pack=pack).high == 0.0
        and not hours_of(one, catalogue, pack=pack).unknown
    ]  # fmt: skip
    if dark:
        notes.append(f"at once without power: {', '.join(dark)}")
    whole = own if message is None else together(own, message)
    if whole.unknown:
        answer = unanswered(
            NUMBER, MEASURE, subject="mains", subject_id="mains",
            reason=f"not computable: the sheets are silent about the batteries of {', '.join(whole.unknown)}",
        )  # fmt: skip
        return answer.model_copy(update={"parts": parts, "notes": tuple(notes)})
    least = _wanted(site, catalogue)
    verdict: Verdict = "good" if whole.low >= least else "thin" if whole.high >= least else "bad"
    mends: list[Mend] = []
    if verdict != "good":
        if own.low < least:
            mends += longer_standby(site, catalogue, unit, least=least)
        if message is not None and message.low < min(least, own.low):
            mends += second_path(site, catalogue)
            # A router's battery helps only a message path that goes on as long.
            by_router = [one.transmitter for one in message_paths(site, catalogue) if one.by == "broadband"]
            if any(hours_of(one, catalogue, pack=pack).low > 0.0 for one in by_router):
                mends += [mend for one in routers(site, catalogue) for mend in router_back_up(catalogue, one)]
    if message is None:
        notes.append("no message path is known: only noticing and sounding are counted")
    return Answer(
        question=NUMBER, subject="mains", subject_id="mains", measure=MEASURE, estimate=_hours(whole),
        verdict=verdict, parts=parts, notes=(*notes, f"held against {least:g} h"), mends=tuple(mends),
    )  # fmt: skip


def _wanted(site: Site, catalogue: Catalogue) -> float:
    """How long the alarm is to go on without mains. [h]"""
    rows = catalogue.limits_in(f"standby-grade-{site.needs.grade}", site.place.rule_pack)
    return rows[0].value if rows else NO_GRADE_H


def _hours(hours: Hours) -> Estimate:
    return Estimate(value=hours.low, low=hours.low, high=hours.high, unit="h", basis="told")


def _hours_part(name: str, hours: Hours | None, *, none: str) -> PartAnswer:
    if hours is None:
        return PartAnswer(name=name, estimate=None, reason=none)
    if hours.unknown:
        reason = f"not computable: the sheets are silent about the batteries of {', '.join(hours.unknown)}"
        return PartAnswer(name=name, estimate=None, reason=reason)
    if math.isinf(hours.low):
        return PartAnswer(name=name, estimate=None, reason="it needs no mains")
    return PartAnswer(name=name, estimate=_hours(hours))
