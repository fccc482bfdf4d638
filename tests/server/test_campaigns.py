"""A campaign as long work."""

from __future__ import annotations

from pathlib import Path

import pytest

from wardwright.errors import InputError, Stopped
from wardwright.model.site import Site
from wardwright.server.campaigns import send_in, steps_of
from wardwright.server.desk import Desk
from wardwright.server.work import Work
from wardwright.server.work_messages import CampaignWish
from wardwright.server.written import campaign_of, written
from wardwright.store.catalogue import load_catalogue
from wardwright.store.jobs.opening import new_job
from wardwright.store.samples import read_sample


def desk_of(folder: Path, site: Site) -> Desk:
    return Desk(new_job(folder / "a.job", site, author="me"), load_catalogue())


def test_it_tells_its_steps_and_what_came_of_it(tmp_path: Path) -> None:
    desk, wish = desk_of(tmp_path, read_sample("terrace")), CampaignWish(trials=30_000)
    work = Work("sending in", job="a.job", steps=steps_of(wish))
    said: list[str] = []
    work.listeners.add(lambda: said.append(work.news().step))
    found = send_in(desk, wish, work)
    assert len(said) == steps_of(wish) == 4
    assert said[:2] == ["sending in intruders 1 to 25000", "sending in intruders 25001 to 30000"]
    assert (found.revision, found.trials) == (1, 30_000)
    assert [one.heading for one in found.parts][:3] == ["Caught", "What these numbers cannot know", "When"]
    assert found.lost.keys() == {"ground", "first"}
    assert "ground" in found.least
    assert "<svg" in found.parts[2].drawing


def test_the_fitters_papers_hold_it_until_the_house_is_another_and_no_other_copy_does(tmp_path: Path) -> None:
    desk, wish = desk_of(tmp_path, read_sample("one-room")), CampaignWish(trials=500)
    assert "campaign.pdf" not in written(desk, "fitter")
    send_in(desk, wish, Work("sending in", job="a.job", steps=steps_of(wish)))
    assert "campaign.pdf" in written(desk, "fitter")
    assert "campaign.pdf" not in {**written(desk, "client"), **written(desk, "open")}
    assert desk.sent_in is not None
    desk.sent_in = (desk.sent_in[0] - 1, desk.sent_in[1])
    assert campaign_of(desk) is None


def test_stopped_it_holds_nothing(tmp_path: Path) -> None:
    desk, wish = desk_of(tmp_path, read_sample("one-room")), CampaignWish(trials=500)
    work = Work("sending in", job="a.job", steps=steps_of(wish))
    work.stop()
    with pytest.raises(Stopped):
        send_in(desk, wish, work)
    assert desk.sent_in is None


def test_where_nobody_can_be_sent_in_it_says_why_and_what_to_do(tmp_path: Path) -> None:
    bare = read_sample("one-room").model_copy(update={"devices": (), "zones": (), "targets": ()})
    wish = CampaignWish(trials=500)
    with pytest.raises(InputError, match="nobody can be sent in"):
        send_in(desk_of(tmp_path, bare), wish, Work("sending in", job="a.job", steps=steps_of(wish)))
