from __future__ import annotations

from pathlib import Path

from wardwright.model.edits import OPERATION
from wardwright.questions.table import QUESTIONS
from wardwright.server.desk import Desk, Seen
from wardwright.store.catalogue import load_catalogue
from wardwright.store.jobs.opening import new_job
from wardwright.store.samples import read_sample

TURN = (OPERATION.validate_python({"do": "turn-device", "device": "hall-movement", "heading_deg": 200.0}),)


def test_only_what_is_another_is_sent_again(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", read_sample("terrace"), author="me") as job:
        desk = Desk(job, load_catalogue())
        first, seen = desk.board(Seen({}, None), show=None)
        assert [one.key for one in first.answers] == list(first.order)
        again, seen = desk.board(seen, show=None)
        assert (again.answers, again.findings) == ((), None)
        tried, seen = desk.board(seen, show="11/hall-movement", trial=(7, TURN))
        assert tried.number == 7
        assert 0 < len(tried.answers) < len(first.answers)
        assert "11/hall-movement" in {one.key for one in tried.answers}
        back, _ = desk.board(seen, show=None)
        assert {one.key: one for one in first.answers} | {one.key: one for one in back.answers} == {
            one.key: one for one in first.answers
        }
        assert job.newest == 1


IN_HAND = {str(question.number) for question in QUESTIONS if question.in_hand is not None}


def test_what_is_still_in_the_hand_is_answered_without_what_can_wait(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", read_sample("terrace"), author="me") as job:
        desk = Desk(job, load_catalogue())
        first, seen = desk.board(Seen({}, None), show=None)
        moving, seen = desk.board(seen, show=None, trial=(7, TURN), is_in_hand=True)
        assert set(moving.order) == set(first.order)
        assert {key.split("/")[0] for key in set(moving.order) - set(moving.waiting)} == IN_HAND
        assert not any(one.mends for one in moving.answers)
        still, seen = desk.board(seen, show=None, trial=(7, TURN))
        assert still.waiting == ()
        whole, _ = desk.board(Seen({}, None), show=None, trial=(7, TURN))
        assert seen.answers == {one.key: one for one in whole.answers}
        assert still.order == whole.order


def test_a_page_that_was_told_nothing_yet_is_told_all(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", read_sample("terrace"), author="me") as job:
        desk = Desk(job, load_catalogue())
        board, _ = desk.board(Seen({}, None), show=None, trial=(1, TURN), is_in_hand=True)
        assert board.waiting == ()


def test_a_trial_that_does_not_hold_together_says_so(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", read_sample("terrace"), author="me") as job:
        desk = Desk(job, load_catalogue())
        mount = {"on": "wall", "wall": "hall-living-wall", "side": "left", "offset_m": 99.0, "height_m": 2.0}
        wrong = (
            OPERATION.validate_python({"do": "mount-device", "device": "hall-movement", "mount": mount}),
        )
        board, _ = desk.board(Seen({}, None), show=None, trial=(1, wrong))
        assert "it is on no wall" in board.fault


def test_the_chosen_answer_is_laid_over_the_house(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", read_sample("terrace"), author="me") as job:
        desk = Desk(job, load_catalogue())
        plain, _ = desk.board(Seen({}, None), show=None)
        race, _ = desk.board(Seen({}, None), show="1/front-door")
        assert race.overlays != plain.overlays
        assert race.strip.startswith("<svg")
        assert race.walk[0].times_s == tuple(sorted(race.walk[0].times_s))
        assert plain.walk == ()
        assert plain.strip == ""
        assert race.tags["hall-keypad"] == "KP"


def test_findings_that_wait_for_a_resting_hand_stay_as_they_were(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", read_sample("sunrise"), author="me") as job:
        desk = Desk(job, load_catalogue())
        first, seen = desk.board(Seen({}, None), show=None)
        assert first.findings is not None
        waiting = {one.key for one in first.findings if one.key.startswith("SUN")}
        assert waiting
        wall = job.site(1).walls[0].id
        trial = (OPERATION.validate_python({"do": "move-wall", "wall": wall, "by_m": 0.01}),)
        board, seen = desk.board(seen, show=None, trial=(1, trial), is_in_hand=True)
        told = seen.findings if board.findings is None else board.findings
        assert told is not None
        assert waiting <= {one.key for one in told}
        assert {int(key.split("/")[0]) for key in board.waiting} >= {6, 9, 13}
