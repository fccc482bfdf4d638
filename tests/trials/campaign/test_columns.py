"""What is kept of each intrusion, and what in time means."""

from __future__ import annotations

import numpy as np

from common.houses import CATALOGUE
from common.small_campaign import watched_hall
from wardwright.trials.campaign.columns import columns_of, message_in_time, sounder_in_time
from wardwright.trials.campaign.inputs import drawn
from wardwright.trials.campaign.play import heard, play
from wardwright.trials.campaign.setting import setting_of
from wardwright.trials.campaign.streams import Streams

SETTING = setting_of(watched_hall(), CATALOGUE)
INPUTS = drawn(Streams(1), CATALOGUE, SETTING.who, room=SETTING.room, count=2000)
PLAYED = play(SETTING.ground, SETTING.kit, INPUTS)
COLUMNS = columns_of(SETTING, INPUTS, PLAYED, alarm=heard(PLAYED, SETTING.kit, INPUTS))


def test_the_first_target_touched_is_the_earliest() -> None:
    assert COLUMNS.at_target.shape == (2, 2000)
    assert np.array_equal(COLUMNS.touched, COLUMNS.at_target.min(axis=0))
    assert np.array_equal(COLUMNS.unit, PLAYED.reached[0])
    assert (COLUMNS.broken >= COLUMNS.unit).all()


def test_in_time_is_before() -> None:
    sounder = sounder_in_time(COLUMNS)
    assert np.array_equal(sounder, COLUMNS.sounder < COLUMNS.touched)
    assert sounder.any()
    assert not sounder.all()
    at_unit = sounder_in_time(COLUMNS._replace(at_target=COLUMNS.at_target[:0]))
    assert np.array_equal(at_unit, COLUMNS.sounder < COLUMNS.unit)
    assert np.array_equal(message_in_time(COLUMNS), np.isfinite(COLUMNS.message))
