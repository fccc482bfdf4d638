"""All zones together: how many behave otherwise than the plan asks for, and what breaks coming in and leaving."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import OpeningMount
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.questions.answer import Answer, Verdict
from wardwright.trials.arrival import arrive, heard_devices
from wardwright.trials.leaving import LeftOpen, leave, open_when_setting
from wardwright.trials.responses import response_words
from wardwright.trials.trips import Trip, household, trips
from wardwright.trials.zone_roles import role_of


def together(
    site: Site, catalogue: Catalogue, each: tuple[Answer, ...], *, measure: str, number: int
) -> Answer:
    """One answer about the site as a whole.

    Parameters
    ----------
    site : Site
        The house, its devices and zones.
    catalogue : Catalogue
        Sheets and figures.
    each : tuple of Answer
        The answers about the devices.
    measure : str
        What is counted.
    number : int
        Of the question.

    Returns
    -------
    Answer
        At least those that differ however doors stand, at most also those that hang on a door.
    """
    sure = float(sum(answer.verdict == "bad" for answer in each))
    may = float(sum(answer.verdict in ("bad", "thin") for answer in each))
    broken = tuple(_broken_trips(site, catalogue))
    verdict: Verdict = "good"
    if may:
        verdict = "thin"
    if sure or broken:
        verdict = "bad"
    if not site.zones:
        verdict = "unknown"
    return Answer(
        question=number,
        subject=site.name,
        subject_id="site",
        measure=measure,
        estimate=Estimate(value=sure, low=sure, high=may, unit="devices", basis="told"),
        verdict=verdict,
        notes=(
            *(("no zone is programmed yet",) if not site.zones else broken),
            *(_open_words(site, one) for one in open_when_setting(site, catalogue)),
            *(f"{signal}: {words}" for signal, words in response_words(site.programme)),
        ),
    )


def _broken_trips(site: Site, catalogue: Catalogue) -> Iterator[str]:
    """What rings, or keeps the alarm from being set, on the household's own ways."""
    if not site.zones:
        return
    for trip in trips(site, catalogue):
        yield from _door_without_start(site, trip)
        person = household(site)[0]  # who it is changes when, not whether
        came = arrive(site, catalogue, trip, person=person, leaves="most")
        rung = [one.subject for one in came.timeline if one.what == "alarm"]
        if rung:
            name = site.device(rung[0]).name
            yield f"an ordinary arrival by {trip.door.name} may be an alarm of {name}"
        left = leave(site, catalogue, trip, person=person, leaves="most")
        if left.outcome == "kept from setting" and left.by is not None:
            name = site.device(left.by).name
            yield f"{name} may keep the alarm from being set by whoever leaves by {trip.door.name}"


def _door_without_start(site: Site, trip: Trip) -> Iterator[str]:
    starting = [
        device
        for device, behaviour in heard_devices(site)
        if role_of(behaviour) == "entry-exit"
        and isinstance(device.mount, OpeningMount)
        and device.mount.opening == trip.door.id
    ]
    if not starting:
        yield f"nothing starts the entry time at {trip.door.name}: no contact on it is entry/exit"


def _open_words(site: Site, one: LeftOpen) -> str:
    usually = f", as it usually is ({one.opening.habit})," if one.is_usual else ""
    if one.is_refused:
        always = ": it can never be set" if one.is_usual else ""
        return f"with {one.opening.name} open{usually} setting is refused{always}"
    out = ", ".join(device.name for device in one.left_out)
    room = "the room" if one.space is None else one.space.name
    if not one.watched_by:
        rest = f"nothing else watches {room}"
    else:
        names = ", ".join(site.device(name).name for name in one.watched_by)
        rest = f"{names} still surely watches {one.watched_share * 100:.0f} % of {room}"
    return f"with {one.opening.name} open{usually} {out} is left out: {rest}"
