"""The campaign against closed forms, and against a slow walker who plays one intruder at a time."""

from __future__ import annotations

import math

import numpy as np
import pytest

from common.houses import CATALOGUE
from common.signals import in_turn
from common.small_campaign import STILL, fitted_hall, watched_hall, world
from wardwright.geometry.raster import BoolArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.trials.campaign.inputs import Inputs, drawn
from wardwright.trials.campaign.legs import REACHES, STEP_M
from wardwright.trials.campaign.play import heard, play
from wardwright.trials.campaign.run import campaign
from wardwright.trials.campaign.setting import Setting, setting_of
from wardwright.trials.campaign.streams import Streams
from wardwright.trials.draws import Z_95
from wardwright.trials.interruption import AT_START, Response, Tasks, interruption
from wardwright.trials.race import race
from wardwright.trials.zone_response import respond

TRIALS = 100_000


def _window(site: Site, catalogue: Catalogue, *, seed: int = 1) -> BoolArray:
    """Whether each intruder of the kitchen's window was beaten by the message."""
    found = campaign(site, catalogue, trials=TRIALS, seed=seed)
    number = [way.opening.id for way in found.setting.ways].index("kitchen-window")
    return found.message_in_time[found.columns.way == number]


def _closed(site: Site, catalogue: Catalogue) -> float:
    """The interruption estimate of the same path: the window, the kitchen, its door, the hall, the unit."""
    setting = setting_of(site, catalogue)
    way = next(one for one in setting.ways if one.opening.id == "kitchen-window")
    foot = race(site, catalogue, way=way, goal=setting.goals[0].spot).course.foot
    walked = foot.progress.flat / 2.5 + foot.progress.doors
    door = float(walked[foot.passes["kitchen-door"]])
    value = {
        name: catalogue.figure(name)
        for name in ("climb-in", "break-control-unit", "radio-delay", "message-time")
    }
    spread = {name: (one.high - one.low) / (2.0 * Z_95) for name, one in value.items()}
    tells = catalogue.figure("chance-contact-tells").value
    tasks = Tasks(
        detection=(tells, 0.0, tells, 0.0),
        delay=(value["climb-in"].value, door, float(walked[-1]) - door, value["break-control-unit"].value),
        spread=(spread["climb-in"], 0.0, 0.0, spread["break-control-unit"]),
        left=AT_START,
    )
    answer = Response(
        value["radio-delay"].value + value["message-time"].value,
        math.hypot(spread["radio-delay"], spread["message-time"]),
    )
    return float(interruption(tasks, answer))


@pytest.mark.parametrize(
    "change",
    [
        {},
        {"chance-contact-tells": (0.5, 0.5, 0.5)},
        {"chance-contact-tells": (1.0, 1.0, 1.0)},
        {"message-time": (15.0, 11.0, 19.0)},
        {"message-time": (20.0, 14.0, 26.0)},
        {"break-control-unit": (15.0, 11.0, 19.0)},
        {"climb-in": (10.0, 5.0, 15.0)},
    ],
)
def test_the_interruption_estimate_through_the_campaign(
    change: dict[str, tuple[float, float, float]],
) -> None:
    """Two contacts one after the other, normal times: within 4 standard errors of the closed form."""
    catalogue, site = world(STILL | change), fitted_hall()
    met, expected = _window(site, catalogue), _closed(site, catalogue)
    error = math.sqrt(expected * (1.0 - expected) / len(met))
    assert len(met) > TRIALS / 5
    assert abs(met.mean() - expected) < 4.0 * error
    assert 0.02 < expected < 0.999


def test_another_seed_is_another_sample_of_the_same() -> None:
    """Seeds differ by sampling error alone, and do differ."""
    catalogue, site = world(STILL), fitted_hall()
    first, second = (_window(site, catalogue, seed=seed) for seed in (1, 2))
    p = _closed(site, catalogue)
    assert first.mean() != second.mean()
    assert abs(first.mean() - second.mean()) < 4.0 * math.sqrt(
        p * (1 - p) * (1 / len(first) + 1 / len(second))
    )


def test_a_sleeping_detector_by_hand() -> None:
    """Since it last signalled is exponential: the share asleep when it is passed is 1 - exp(-(sleep - when)/mean)."""
    site = watched_hall()
    asleep = CATALOGUE.model_copy(
        update={
            "sheets": tuple(
                row.model_copy(update={"movement": row.movement.model_copy(update={"sleep_s": 600.0})})
                if row.id == "fan" and row.movement is not None
                else row
                for row in CATALOGUE.sheets
            )
        }
    )
    setting = setting_of(site, asleep)
    assert setting.kit.sleeps.tolist() == [600.0, 600.0]
    inputs = drawn(Streams(3), asleep, setting.who, room=setting.room, count=20_000)
    awake = inputs._replace(since=np.full_like(inputs.since, np.inf))
    slept, told = play(setting.ground, setting.kit, inputs), play(setting.ground, setting.kit, awake)
    noticed = np.isfinite(told.signals[0])
    still = told.signals[0] < 600.0 - inputs.since
    # Who is passed while it sleeps is told of later or never; everybody else as before.
    assert np.array_equal(slept.signals[0][noticed & ~still], told.signals[0][noticed & ~still])
    assert (slept.signals[0][noticed & still] > told.signals[0][noticed & still]).all()
    mean = asleep.figure("since-movement").value
    expected = float(np.mean(1.0 - np.exp(-np.maximum(600.0 - told.signals[0][noticed], 0.0) / mean)))
    error = math.sqrt(expected * (1.0 - expected) / np.count_nonzero(noticed))
    assert abs(still[noticed].mean() - expected) < 4.0 * error


class _Slowly:
    """One intruder, played goal by goal with plain numbers."""

    def __init__(self, setting: Setting, inputs: Inputs, row: int) -> None:
        self.setting, self.inputs, self.row = setting, inputs, row
        self.scene, self.way = int(inputs.doors_otherwise[row]), int(inputs.way[row])
        self.movers = len(setting.who.movement)
        self.clock = float(inputs.climb[row]) if setting.ways[self.way].climbs else 0.0
        self.signals = [math.inf] * len(setting.devices)
        self.reached, self.broken = [math.inf] * len(setting.goals), math.inf

    def at(self, place: int) -> float:
        """When a place of the leg is passed that begins now."""
        ground, one, row = self.setting.ground, self.inputs, self.row
        metres = ground.flat[place] + ground.stairs[place] / one.stairs[row]
        return float(self.clock + metres / one.pace[row] + ground.doors[place] * one.door[row])

    def walk(self) -> None:
        """All legs; what comes after the intruder has left is no more."""
        ground, one, row = self.setting.ground, self.inputs, self.row
        for i in range(len(self.setting.who.at_openings)):
            if ground.at_once[i, self.way] and one.tells[i, row]:
                self.signals[self.movers + i] = 0.0
        source, sources = int(ground.starts[self.way]), ground.first.shape[1] // ground.goals
        for goal in one.order[row].tolist():
            leg = source * ground.goals + goal
            if ground.last[self.scene, leg] < 0:
                continue
            for i in range(self.movers):
                self.seen(i, leg)
            self.opens(leg)
            self.clock = self.at(int(ground.last[self.scene, leg]))
            self.reached[goal] = self.clock
            self.clock += float(one.breaking[row] if goal == ground.unit else one.search[row])
            self.broken = self.clock if goal == ground.unit else self.broken
            source = sources - ground.goals + goal
        left = min(float(one.stay[row]), self.clock)
        self.signals = [when if when <= left else math.inf for when in self.signals]
        self.reached = [when if when <= left else math.inf for when in self.reached]
        self.broken = self.broken if self.broken <= left else math.inf

    def seen(self, i: int, leg: int) -> None:
        """By one movement detector on one leg."""
        ground, one, row = self.setting.ground, self.inputs, self.row
        reach = min(range(len(REACHES)), key=lambda k: abs(REACHES[k] - one.reach[i, row]))
        room = min(range(len(ground.rooms_c)), key=lambda k: abs(ground.rooms_c[k] - one.room_c[row]))
        place = float(ground.noticed[self.scene, int(one.is_cautious[row]), room, i, leg, reach])
        if math.isinf(place):
            return
        entered = float(ground.entered[self.scene, i, leg])
        place = entered + (place - entered) * float(one.walked[i, row])
        number = int(ground.first[self.scene, leg]) + math.ceil(place / STEP_M - 1e-9)
        if (
            number <= ground.last[self.scene, leg]
            and self.at(number) >= self.setting.kit.sleeps[i] - one.since[row]
        ):
            self.signals[i] = min(self.signals[i], self.at(number))

    def opens(self, leg: int) -> None:
        """Inside doors with contacts."""
        ground = self.setting.ground
        for i in range(len(self.setting.who.at_openings)):
            place = int(ground.opened[self.scene, i, leg])
            if place >= 0 and self.inputs.tells[i, self.row]:
                when = self.at(place)
                self.signals[self.movers + i] = min(self.signals[self.movers + i], when)

    def told(self) -> tuple[float, float]:
        """When the alarm starts and the message leaves, infinite where a broken unit does neither."""
        radio, behaviours = float(self.inputs.radio[self.row]), self.setting.kit.behaviours
        times = [when + radio for when in self.signals if math.isfinite(when)]
        known = [one for one, when in zip(behaviours, self.signals, strict=True) if math.isfinite(when)]
        response = respond(in_turn(times, known), self.setting.site.programme)
        message = response.message_due_s + float(self.inputs.message[self.row])
        alarm = response.alarm_s if response.alarm_s <= self.broken else math.inf
        return alarm, message if message <= self.broken else math.inf


def test_all_at_once_is_one_after_another() -> None:
    """300 intruders in a house with every sort of zone: the same signals, goals, alarm and message."""
    site = watched_hall()
    setting = setting_of(site, CATALOGUE)
    inputs = drawn(Streams(11), CATALOGUE, setting.who, room=setting.room, count=300)
    played = play(setting.ground, setting.kit, inputs)
    told = heard(played, setting.kit, inputs)
    for row in range(300):
        one = _Slowly(setting, inputs, row)
        one.walk()
        alarm, message = one.told()
        assert played.signals[:, row].tolist() == pytest.approx(one.signals)
        assert played.reached[:, row].tolist() == pytest.approx(one.reached)
        assert told.message[row] == pytest.approx(message)
        assert told.sounder[row] == pytest.approx(alarm + float(inputs.sounder[row]))
    assert np.isfinite(told.message).any()


def test_a_broken_control_unit_starts_nothing() -> None:
    """Unless a sounder sounds by itself when it loses the unit."""
    setting = setting_of(watched_hall(), CATALOGUE)
    inputs = drawn(Streams(4), CATALOGUE, setting.who, room=setting.room, count=20_000)
    played = play(setting.ground, setting.kit, inputs)
    told = heard(played, setting.kit, inputs)
    late = np.isfinite(played.broken) & ~np.isfinite(told.sounder)
    assert late.any()
    assert not np.isfinite(told.message[late]).any()
    alone = heard(played, setting.kit._replace(sounds_alone=True), inputs)
    assert np.array_equal(alone.sounder[late], played.broken[late])
    assert np.array_equal(alone.message, told.message)
    silent = heard(played, setting.kit._replace(sounds=False), inputs)
    assert np.isinf(silent.sounder).all()


def test_a_second_detection_is_of_another_zone() -> None:
    """Two devices of one group are one notice; a narrow window leaves some out."""
    setting = setting_of(watched_hall(), CATALOGUE)
    inputs = drawn(Streams(4), CATALOGUE, setting.who, room=setting.room, count=5_000)
    played = play(setting.ground, setting.kit, inputs)
    apart = heard(played, setting.kit, inputs).second
    assert np.isfinite(apart).any()
    together = heard(played, setting.kit._replace(groups=np.zeros(4, dtype=np.int64)), inputs).second
    assert np.isinf(together).all()
    narrow = heard(played, setting.kit, inputs, window=5.0).second
    assert np.array_equal(np.isfinite(narrow), apart <= 5.0)
