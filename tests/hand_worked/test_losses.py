"""One thing lost, and batteries that sleep, by hand: everybody comes by the front door and nothing is uncertain.

The house: control unit 10 m from the front door (at it at 4 s, dead at 14), a movement detector across the way at
y = 9.5 (noticed at y = 9.5 - 0.309: 8.921 m, 3.57 s), a contact on the front door. Radio 1 s, broadband 6 s, mobile
data 12 s.
"""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from common.straight_houses import contact_on, curtain_at, sounder_at, straight_house, unit_at
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, FreeMount
from wardwright.model.fixture import Outlet
from wardwright.model.programme import Programme
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.campaign.inputs import Inputs, drawn
from wardwright.trials.campaign.losses import NOTHING_LOST, losses_of, path_key
from wardwright.trials.campaign.play import Heard, heard, play
from wardwright.trials.campaign.setting import Setting, setting_of
from wardwright.trials.campaign.streams import Streams
from wardwright.trials.single_loss import hours_of, message_hours

CHANCES = {
    "share-cautious": 0.0, "share-through-glass": 0.0, "share-doors-as-told": 1.0, "chance-contact-tells": 1.0,
    "share-broadband-up": 1.0, "message-broadband": 6.0, "message-mobile": 12.0, "stay": 1e6,
}  # fmt: skip
FRONT, CURTAIN = contact_on("front-door"), curtain_at(9.5)
CURTAIN_S = (9.5 - 0.309 - 0.27) / 2.5
STEP_S = 0.021
"""0.05 m at 2.5 m/s. [s]"""


def certain() -> Catalogue:
    """The catalogue with every figure at its likely value, and every chance settled."""
    real = load_catalogue()
    rows = []
    for row in real.figures:
        value = CHANCES.get(row.id, row.value)
        rows.append(row.model_copy(update={"value": value, "low": value, "high": value}))
    return real.model_copy(update={"figures": tuple(rows)})


CERTAIN = certain()


def house(
    *zoned: tuple[Device, str], sender: str | None = None, sounder: str = "sounder-inside", **facts: Any
) -> Site:
    """The house with what is zoned, and a way for messages if one is named."""
    mount = FreeMount(storey="ground", at_m=(0.5, 20.0), height_m=1.5)
    path = [] if sender is None else [(Device(id="sender", name="sender", sheet=sender, mount=mount), "")]
    kit = [(unit_at(10.27), ""), (sounder_at(sheet=sounder), ""), *path, *zoned]
    return straight_house(kit=kit, back=None, **facts)


def played(site: Site, *, since_s: float = np.inf) -> tuple[Setting, Inputs, Heard]:
    """Three intruders, all alike; the detectors last signalled so long ago."""
    setting = setting_of(site, CERTAIN)
    inputs = drawn(Streams(1), CERTAIN, setting.who, room=setting.room, count=3)
    inputs = inputs._replace(since=np.full(3, since_s))
    return setting, inputs, heard(play(setting.ground, setting.kit, inputs), setting.kit, inputs)


def times_of(found: Heard) -> list[float]:
    """Notice, sounder and message of all three, which are the same."""
    rows = np.array([found.notice, found.sounder, found.message])
    assert (rows == rows[:, :1]).all()
    return [float(one) for one in rows[:, 0]]


def lost(site: Site) -> dict[str, tuple[bool, bool]]:
    """What is lost -> whether sounder and message are still in time."""
    setting, inputs, _ = played(site)
    come = play(setting.ground, setting.kit, inputs)
    found = losses_of(setting, CERTAIN, inputs, played=come, seed=1)
    return {what: (bool(sounds.all()), bool(sent.all())) for what, (sounds, sent) in found.items()}


def test_nothing_lost() -> None:
    """Contact at 0: sounder 1, broadband 1 + 6 = 7; mobile data would be 1 + 12 = 13, before 14 too."""
    assert times_of(played(house((FRONT, "instant"), sender="message-both"))[2]) == [0.0, 1.0, 7.0]


def test_a_message_path_lost() -> None:
    """Broadband lost: mobile data at 13, in time; mobile data lost: broadband at 7; the only path lost: never."""
    both = lost(house((FRONT, "instant"), sender="message-both"))
    assert [both[one][1] for one in (NOTHING_LOST, path_key("broadband"), path_key("mobile"))] == [True] * 3
    one = lost(house((FRONT, "instant"), sender="message-broadband"))
    assert one[path_key("broadband")] == (True, False)
    # Noticed by the detector across the way alone, told at 4.57: broadband 10.57, mobile data 16.57 > 14.
    late = lost(house((CURTAIN, "instant"), sender="message-both"))
    assert [late[one][1] for one in (NOTHING_LOST, path_key("broadband"))] == [True, False]


def test_a_detector_lost() -> None:
    """Without the contact the detector across the way is first: told at 4.57, sounder after the unit is reached at 4.

    The message by broadband leaves at 10.57, before 14. Without the detector the contact is first as ever.
    """
    site = house((FRONT, "instant"), (CURTAIN, "instant"), sender="message-broadband")
    found = lost(site)
    assert found["front-door-contact"] == (False, True)
    assert found["curtain"] == found[NOTHING_LOST] == (True, True)


def test_the_sounder_lost() -> None:
    """The control unit has one of its own: still in time, and no message more or less."""
    assert lost(house((FRONT, "instant")))["sounder"] == (True, True)


def test_a_unit_broken_before_the_entry_time_ends() -> None:
    """Entry time to 31, the unit dead at 14: no sounder and no message; one with power of its own sounds at 14."""
    assert times_of(played(house((FRONT, "entry-exit")))[2]) == [0.0, np.inf, np.inf]
    own = played(house((FRONT, "entry-exit"), sounder="sounder-outside"))[2]
    assert times_of(own) == [0.0, 14.0, np.inf]


@pytest.mark.parametrize(
    ("since_s", "is_awake"), [(np.inf, True), (57.0, True), (56.0, False), (0.0, False)], ids=str
)
def test_a_detector_on_cells_sleeps(since_s: float, *, is_awake: bool) -> None:
    """It rests for 60 s after a signal: passed at 3.57 s it is awake if it signalled 56.43 s before 0 or earlier.

    Asleep, it tells nothing, and the door behind it is first: at 10.27 - 0.27 = 10 m: 4 s, 1 s the leaf after it.
    """
    door = contact_on("door-1")
    kit = [
        (unit_at(12.77), ""), (sounder_at(), ""), (CURTAIN, "instant"), (door, "instant"),
    ]  # fmt: skip
    site = straight_house(kit=kit, back=None, doors={10.27: "shut"})
    when = CURTAIN_S if is_awake else 4.0
    expected = [when, when + 1.0, when + 11.0]
    assert times_of(played(site, since_s=since_s)[2]) == pytest.approx(expected, abs=STEP_S)


def test_the_abort_delay_loses_the_message() -> None:
    """Told at 1, due 1 + 30 = 31, by broadband 37: the unit is dead at 14. The sounder does not wait."""
    late = Programme(entry_time_s=30.0, abort_delay_s=30.0)
    site = house((FRONT, "instant-delayed"), sender="message-broadband", programme=late)
    assert times_of(played(site)[2]) == [0.0, 1.0, np.inf]


def test_the_mains_lost() -> None:
    """2.2 Ah of the unit, a quarter of an hour of alarm at 0.42 A in it, 0.085 A else.

    0.42 A is over a twentieth of 2.2 Ah in an hour, so the alarm counts 1.75 times (BS 5839-1 Annex E): 0.184 Ah.
    An old battery, 2.2 / 1.25 = 1.76 Ah: (1.76 - 0.184) / 0.085 = 18.54 h; a new one (2.2 - 0.184) / 0.085 = 23.72 h.
    The router has no battery, so broadband ends at once; mobile data goes on for the 14 h of its transmitter.
    """
    router = Outlet(id="router", name="router", kind="router", storey="ground", at_m=(0.5, 22.0))
    sites = {
        sheet: house((FRONT, "instant"), sender=sheet, outlets=(router,))
        for sheet in ("message-broadband", "message-mobile", "message-both")
    }
    unit = sites["message-both"].device("unit")
    hours = hours_of(unit, CERTAIN, pack="uk-eu")
    assert [hours.low, hours.high] == pytest.approx([18.544, 23.721], abs=1e-3)
    left = {sheet: message_hours(site, CERTAIN, unit=unit) for sheet, site in sites.items()}
    assert {sheet: None if one is None else one.low for sheet, one in left.items()} == {
        "message-broadband": 0.0, "message-mobile": 14.0, "message-both": 14.0,
    }  # fmt: skip
