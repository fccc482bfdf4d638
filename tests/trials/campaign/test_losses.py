"""One thing lost: against campaigns of a site that never had it."""

from __future__ import annotations

import numpy as np

from common.houses import CATALOGUE
from common.small_campaign import watched_hall
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.campaign.losses import NOTHING_LOST, path_key
from wardwright.trials.campaign.run import campaign

ALL = load_catalogue()


def test_the_only_sounder_lost_is_no_sounder() -> None:
    found = campaign(watched_hall(), CATALOGUE, trials=1000)
    assert not found.losses["bell"][0].any()
    assert np.array_equal(found.losses["bell"][1], found.losses[NOTHING_LOST][1])


def test_one_of_two_sounders_lost_leaves_the_other() -> None:
    site = watched_hall()
    twin = site.device("bell").model_copy(update={"id": "bell-two"})
    found = campaign(site.model_copy(update={"devices": (*site.devices, twin)}), CATALOGUE, trials=1000)
    assert np.array_equal(found.losses["bell"][0], found.losses[NOTHING_LOST][0])


def test_a_message_path_lost_is_as_never_fitted() -> None:
    """The lakeside house sends by broadband; were its transmitter one of both paths, each would stand in."""
    site = read_sample("lakeside")
    alone = campaign(site, ALL, trials=2000)
    assert alone.setting.who.paths == {"broadband"}
    assert not alone.losses[path_key("broadband")][1].any()
    both = ALL.model_copy(
        update={
            "sheets": tuple(
                row
                if row.transmitter is None
                else row.model_copy(
                    update={
                        "transmitter": row.transmitter.model_copy(update={"paths": ("broadband", "mobile")})
                    }
                )
                for row in ALL.sheets
            )
        }
    )
    found = campaign(site, both, trials=2000)
    assert found.setting.who.paths == {"broadband", "mobile"}
    # What is left without mobile data is what the house sends by broadband alone, intruder by intruder.
    assert np.array_equal(found.losses[path_key("mobile")][1], alone.losses[NOTHING_LOST][1])
    assert found.losses[path_key("broadband")][1].mean() < found.losses[NOTHING_LOST][1].mean()
    assert np.array_equal(found.losses[path_key("mobile")][0], found.losses[NOTHING_LOST][0])
