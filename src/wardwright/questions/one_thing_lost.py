"""Question 12: if one thing is broken or blocked, what still works and for how long?"""

from __future__ import annotations

from functools import lru_cache

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.estimate import Estimate
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.questions.answer import Answer, Verdict, about_the_site, unanswered
from wardwright.questions.detector_lost import MEASURE as NOTICED_MEASURE
from wardwright.questions.detector_lost import detector_lost
from wardwright.questions.link_margins import hang_on, link_margins
from wardwright.questions.loss_mends import own_power_sounders, second_path
from wardwright.questions.mains_lost import MEASURE, mains_lost
from wardwright.trials.alarm import DETECTORS, as_met
from wardwright.trials.single_loss import Router, is_self_powered, message_paths, noticing, routers
from wardwright.trials.watchers import control_units, devices_of

NUMBER = 12
PATHS_MEASURE = "message paths that are left"
HEARD_MEASURE = "devices that are likely still heard"
SOUNDERS_MEASURE = "sounders that still sound"


def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """One answer for each thing that can be lost.

    Parameters
    ----------
    site : Site
        The house, its devices and its zones.
    catalogue : Catalogue
        Sheets and figures.

    Returns
    -------
    tuple of Answer
        Mains, routers, message paths, control unit, sounders, repeaters, detectors. Not computable where there is no
        control unit.
    """
    if not control_units(site, catalogue):
        return (about_the_site(NUMBER, MEASURE, site=site, reason="no control unit"),)
    # Wherever detectors and keypads stand, all but repeaters is answered alike.
    elsewhere = as_met(site, catalogue, but=(*DETECTORS, "keypad", "keyfob"))
    return (
        *_all_but_hearing(elsewhere, catalogue),
        *(_repeater(site, catalogue, one) for one in devices_of(site, catalogue, "repeater")),
        *_detectors(as_met(site, catalogue), catalogue),
    )


@lru_cache(maxsize=32)
def _all_but_hearing(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    unit = control_units(site, catalogue)[0]
    return (
        mains_lost(site, catalogue, unit),
        *(_router(site, catalogue, one) for one in routers(site, catalogue)),
        *(_transmitter(site, catalogue, one) for one in devices_of(site, catalogue, "transmitter")),
        _control_unit(site, catalogue, unit),
        *(_sounder(site, catalogue, one, unit=unit) for one in devices_of(site, catalogue, "sounder")),
    )


@lru_cache(maxsize=32)
def _detectors(met: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """The answer about each detector, on the site as an intruder meets it."""
    kinds = [(one, catalogue.sheet(one.sheet).kind) for one in met.devices]
    detectors = sorted((one for one, kind in kinds if kind in DETECTORS), key=lambda one: one.id)
    try:
        of = noticing(met, catalogue)
    except NotComputable as reason:
        # The control unit is where nobody walks: who notices on the way there cannot be asked.
        why = f"not computable: {reason}"
        return tuple(
            unanswered(NUMBER, NOTICED_MEASURE, subject=one.name, subject_id=one.id, reason=why)
            for one in detectors
        )
    return tuple(detector_lost(met, catalogue, one, of=of) for one in detectors if of is not None)


def _counted(count: int, unit: str) -> Estimate:
    return Estimate(value=float(count), low=float(count), high=float(count), unit=unit, basis="told")


def _router(site: Site, catalogue: Catalogue, router: Router) -> Answer:
    left = len({path.by for path in message_paths(site, catalogue) if path.by != "broadband"})
    others = [one for one in routers(site, catalogue) if one.id != router.id]
    if others:
        left = len({path.by for path in message_paths(site, catalogue)})
    return _paths_left(
        site, catalogue, left, name=router.name, ident=router.id, sketches=_at_router(site, router)
    )


def _transmitter(site: Site, catalogue: Catalogue, lost: Device) -> Answer:
    left = sum(1 for path in message_paths(site, catalogue) if path.transmitter.id != lost.id)
    return _paths_left(site, catalogue, left, name=lost.name, ident=lost.id, sketches=_at(site, lost))


def _paths_left(
    site: Site, catalogue: Catalogue, left: int, *, name: str, ident: str, sketches: tuple[Sketch, ...]
) -> Answer:
    if not message_paths(site, catalogue):
        answer = unanswered(
            NUMBER, PATHS_MEASURE, subject=name, subject_id=ident,
            reason="not computable: no message path is known",
        )  # fmt: skip
        return answer.model_copy(update={"mends": second_path(site, catalogue)})
    notes = ("noticing and sounding go on",)
    return Answer(
        question=NUMBER,
        subject=name,
        subject_id=ident,
        measure=PATHS_MEASURE,
        estimate=_counted(left, "ways"),
        verdict="bad" if left == 0 else "good",
        notes=notes if left else (*notes, "no message leaves the house"),
        mends=() if left else second_path(site, catalogue, beside=ident),
        sketches=sketches,
    )


def _control_unit(site: Site, catalogue: Catalogue, unit: Device) -> Answer:
    alone = [one for one in devices_of(site, catalogue, "sounder") if is_self_powered(one, catalogue)]
    sounds = [f"{one.name} sounds by itself when it loses the control unit" for one in alone]
    return Answer(
        question=NUMBER,
        subject=unit.name,
        subject_id=unit.id,
        measure=SOUNDERS_MEASURE,
        estimate=_counted(len(alone), "devices"),
        # Somebody may hear it, but nobody is told.
        verdict="thin" if alone else "bad",
        notes=(*sounds, "no detector is heard and no message leaves any more"),
        mends=() if alone else own_power_sounders(site, catalogue),
        sketches=_at(site, unit),
    )


def _sounder(site: Site, catalogue: Catalogue, lost: Device, *, unit: Device) -> Answer:
    others = [one for one in devices_of(site, catalogue, "sounder") if one.id != lost.id]
    sheet = catalogue.sheet(unit.sheet)
    built_in = [unit] if sheet.control is not None and sheet.control.has_sounder else []
    left = [*others, *built_in]
    notes = [f"{one.name} still sounds" for one in left]
    if left == built_in and built_in:
        notes.append("it leads an intruder to the control unit")
    verdict: Verdict = "bad" if not left else "thin" if left == built_in else "good"
    return Answer(
        question=NUMBER,
        subject=lost.name,
        subject_id=lost.id,
        measure=SOUNDERS_MEASURE,
        estimate=_counted(len(left), "devices"),
        verdict=verdict,
        notes=(*notes, "noticing and sending go on"),
        sketches=_at(site, lost),
    )


def _repeater(site: Site, catalogue: Catalogue, lost: Device) -> Answer:
    gone, unknown = hang_on(site, catalogue, lost)
    if unknown:
        return unanswered(
            NUMBER, HEARD_MEASURE, subject=lost.name, subject_id=lost.id,
            reason=f"not computable: no margin is known of {', '.join(one.name for one in unknown)}",
        )  # fmt: skip
    left = len(link_margins(site, catalogue).keys() - {lost.id, *(one.id for one in gone)})
    names = ", ".join(one.name for one in gone)
    return Answer(
        question=NUMBER,
        subject=lost.name,
        subject_id=lost.id,
        measure=HEARD_MEASURE,
        estimate=_counted(left, "devices"),
        verdict="bad" if gone else "good",
        notes=(
            f"likely no longer heard: {names}" if gone else "every device that was heard still is, likely",
        ),
        sketches=_at(site, lost),
    )


def _at(site: Site, device: Device) -> tuple[Sketch, ...]:
    at = standing(site, device)
    return (
        Sketch(role="fault", storey=at.storey, points=((at.x_m, at.y_m),), label=f"without {device.name}"),
    )


def _at_router(site: Site, router: Router) -> tuple[Sketch, ...]:
    if router.device is not None:
        return _at(site, router.device)
    if router.outlet is None:
        return ()
    outlet = router.outlet
    return (
        Sketch(role="fault", storey=outlet.storey, points=(outlet.at_m,), label=f"without {outlet.name}"),
    )
