"""Sum up a campaign: shares with intervals, times, what beats the design and why, single losses."""

from __future__ import annotations

import numpy as np

from wardwright.errors import NotComputable
from wardwright.geometry.raster import BoolArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import space_at
from wardwright.model.sketch import Sketch
from wardwright.physics.walking.from_site import way_in_spot
from wardwright.trials.campaign.goals import Goal
from wardwright.trials.campaign.losses import NOTHING_LOST, path_key
from wardwright.trials.campaign.misses import NEEDS, traced
from wardwright.trials.campaign.results import (
    Beaten,
    CampaignReport,
    Cause,
    EntryRow,
    Loss,
    PathResult,
    WayResult,
    Why,
)
from wardwright.trials.campaign.run import Campaign
from wardwright.trials.campaign.second import limit_words, second_of
from wardwright.trials.campaign.setting import Setting
from wardwright.trials.campaign.shares import Share, share_of, spread_of
from wardwright.trials.path_analysis import path_estimate
from wardwright.trials.path_lines import by_storey
from wardwright.trials.ways_in import WayIn
from wardwright.trials.ways_on_foot import on_foot

BEATEN_SHOWN = 6
"""Paths that beat the design, at most. [-]"""


def report_of(campaign: Campaign, catalogue: Catalogue) -> CampaignReport:
    """Sum up a campaign.

    Parameters
    ----------
    campaign : Campaign
        The campaign.
    catalogue : Catalogue
        Figures and limits.

    Returns
    -------
    CampaignReport
        For people and for JSON.
    """
    setting, columns = campaign.setting, campaign.columns
    sounder, message = campaign.sounder_in_time, campaign.message_in_time
    second, window, reason = second_of(campaign, catalogue)
    targets = [goal for goal in setting.goals if goal.target is not None]
    return CampaignReport(
        site=setting.site.name,
        part=setting.part,
        trials=campaign.trials,
        seed=campaign.seed,
        before_target=_share(sounder),
        before_unit=_share(message) if setting.ground.unit is not None else None,
        both=_share(sounder & message),
        targets=tuple(
            (goal.name, _share((columns.sounder < at)[np.isfinite(at)]))
            for goal, at in zip(targets, columns.at_target, strict=True)
        ),
        times=tuple(
            spread_of(name, times)
            for name, times in (
                ("first notice", columns.notice),
                ("sounder", columns.sounder),
                ("message outside", columns.message),
                ("first target touched", columns.touched),
                ("control unit reached", columns.unit),
                ("control unit broken", columns.broken),
            )
        ),
        ways=_ways(campaign),
        beaten=_beaten(campaign, catalogue),
        why=_why(campaign, catalogue),
        losses=_losses(campaign),
        second=second,
        second_window_s=window,
        second_limit=limit_words(campaign, catalogue),
        second_reason=reason,
        paths=_paths(setting, catalogue),
        entries=tuple(
            EntryRow(
                id=row.id, name=row.name, share=row.share, source=row.source, mark=row.mark, note=row.note
            )
            for row in setting.entries.rows
        ),
        closed=tuple(sorted({way.opening.name for way in setting.closed})),
    )


def _share(happened: BoolArray) -> Share:
    return share_of(int(np.count_nonzero(happened)), happened.size)


def _ways(campaign: Campaign) -> tuple[WayResult, ...]:
    found = []
    for number, way in enumerate(campaign.setting.ways):
        here = campaign.columns.way == number
        found.append(
            WayResult(
                opening=way.opening.id,
                name=way.opening.name,
                manner=way.manner,
                share=_share(here),
                sounder=_share(campaign.sounder_in_time[here]),
                message=_share(campaign.message_in_time[here]),
            )
        )
    return tuple(found)


def _beaten(campaign: Campaign, catalogue: Catalogue) -> tuple[Beaten, ...]:
    """Ways in and first goals by how many intruders are lost there, most first."""
    setting, columns = campaign.setting, campaign.columns
    lost = ~(campaign.sounder_in_time & campaign.message_in_time)
    goals = len(setting.goals)
    pair = columns.way * goals + columns.first_goal
    size = len(setting.ways) * goals
    every, missed = (np.bincount(one, minlength=size) for one in (pair, pair[lost]))
    found = []
    for number in np.argsort(-missed, kind="stable")[:BEATEN_SHOWN].tolist():
        if not missed[number]:
            break
        way, goal = setting.ways[number // goals], setting.goals[number % goals]
        found.append(
            Beaten(
                way=way.opening.name,
                manner=way.manner,
                first=goal.name,
                rooms=_rooms(setting, catalogue, way=way, goal=goal),
                lost=share_of(int(missed[number]), campaign.trials),
                own=share_of(int(missed[number]), int(every[number])),
                sketches=_drawn(setting, catalogue, way=way, goal=goal),
            )
        )
    return tuple(found)


def _drawn(setting: Setting, catalogue: Catalogue, *, way: WayIn, goal: Goal) -> tuple[Sketch, ...]:
    """The fastest way there, storey by storey."""
    leg = on_foot(setting.site.bare, catalogue, start=way_in_spot(setting.site, way.opening), goal=goal.spot)
    if leg is None:
        return ()
    lines = by_storey(leg.route.storeys, leg.route.points.tolist())
    return tuple(Sketch(role="beaten", storey=storey, points=points) for storey, points in lines)


def _rooms(setting: Setting, catalogue: Catalogue, *, way: WayIn, goal: Goal) -> tuple[str, ...]:
    """The rooms that the fastest way goes through, each as often as it is come into."""
    house = setting.site.bare
    leg = on_foot(house, catalogue, start=way_in_spot(house, way.opening), goal=goal.spot)
    if leg is None:
        return ()
    found: list[str] = []
    for storey, (x, y) in zip(leg.route.storeys, leg.route.points.tolist(), strict=True):
        space = space_at(house, storey, (x, y))
        if space is not None and (not found or found[-1] != space.name):
            found.append(space.name)
    return tuple(found)


def _why(campaign: Campaign, catalogue: Catalogue) -> tuple[Why, ...]:
    return tuple(
        Why(
            need=one.need,
            traced=one.misses,
            design=share_of(one.design, one.misses),
            causes=tuple(Cause(what=what, share=share_of(count, one.misses)) for what, count in one.causes),
            bugs=tuple(f"{way} to {goal}" for way, goal in one.bugs),
        )
        for one in traced(campaign, catalogue)
        if one.need == "sounder" or campaign.setting.ground.unit is not None
    )


def _losses(campaign: Campaign) -> tuple[Loss, ...]:
    setting = campaign.setting
    whole = [_share(one) for one in campaign.losses[NOTHING_LOST]]
    things = [
        (one.id, one.name) for one in (*setting.devices, *(sounder.device for sounder in setting.sounders))
    ]
    things += [(path_key(path), path_key(path)) for path in sorted(setting.who.paths)]
    found = []
    for key, name in things:
        sounder, message = (_share(one) for one in campaign.losses[key])
        changes = [
            (now.count - before.count) / max(1, before.trials)
            for now, before in zip((sounder, message), whole, strict=True)
        ]
        found.append(
            Loss(
                lost=key,
                name=name,
                sounder=sounder,
                message=message,
                sounder_change=changes[0],
                message_change=changes[1],
            )
        )
    return tuple(sorted(found, key=lambda one: (one.sounder_change + one.message_change, one.lost)))


def _paths(setting: Setting, catalogue: Catalogue) -> tuple[PathResult, ...]:
    """The least-detected path from each way in to the control unit; worst first."""
    unit = setting.ground.unit
    found = []
    for way in setting.ways if unit is not None else ():
        for need in NEEDS:
            goal = setting.goals[unit or 0].spot
            try:
                one = path_estimate(setting.site, catalogue, way=way, goal=goal, need=need, part=setting.part)
            except NotComputable:
                continue
            found.append(
                PathResult(
                    opening=way.opening.id,
                    name=way.opening.name,
                    manner=way.manner,
                    need=need,
                    rooms=tuple(task.name for task in one.tasks[1:]),
                    detected=one.detected,
                    interrupted=one.interrupted,
                    timely=one.timely,
                    last_timely=one.last_timely,
                    sketches=tuple(
                        Sketch(role="least-detected", storey=storey, points=points)
                        for storey, points in one.lines
                    ),
                )
            )
    return tuple(sorted(found, key=lambda one: (one.interrupted, one.opening, one.manner, one.need)))
