from __future__ import annotations

import threading
import time
from pathlib import Path
from typing import Any

import pytest
from fastapi.testclient import TestClient

from common.dxf_plan import written as drawn
from common.ifc_house import written
from structure.source_tree import ROOT
from wardwright.model.document import write_document
from wardwright.server.routers import intake
from wardwright.store import bringing_in, limited
from wardwright.store.jobs.opening import open_job
from wardwright.store.samples import read_sample

NOTES = (ROOT / "tests" / "bad_inputs" / "good.notes").read_bytes()
KIT = b"movement-detector A01 corner south-west 2.2 m\n"


def handed_in(client: TestClient, name: str, content: bytes) -> str:
    made = client.post("/api/files", params={"name": name}, content=content)
    assert made.status_code == 201, made.json()
    assert made.json()["size_bytes"] == len(content)
    ident: str = made.json()["id"]
    return ident


def ended(client: TestClient, ident: str) -> dict[str, Any]:
    end = time.monotonic() + 60.0
    while (said := client.get(f"/api/works/{ident}").json())["state"] in ("waiting", "running"):
        assert time.monotonic() < end, said
        time.sleep(0.02)
    answer: dict[str, Any] = said
    return answer


def brought_in(client: TestClient, **wish: str) -> dict[str, Any]:
    begun = client.post("/api/intake", json=wish)
    assert begun.status_code == 202, begun.json()
    return ended(client, begun.json()["id"])


def files(client: TestClient) -> list[str]:
    return [one["file"] for one in client.get("/api/jobs").json()]


def test_a_building_file_with_notes_becomes_a_job_and_its_report_is_kept(client: TestClient) -> None:
    house = handed_in(client, "Mill.ifc", written())
    notes = handed_in(client, "kit.notes", b"person grandmother slow bed kitchen\n")
    said = brought_in(client, file=house, notes=notes, premises="")
    assert said["state"] == "done", said
    assert said["begun"] == said["of"] == 5
    result = said["result"]
    assert (result["file"], result["choices"]) == ("Mill.job", [])
    assert "1 person" in result["counts"]
    assert result["report"]["guessed"]
    assert result["worth_adding"]
    opened = client.get("/api/jobs/Mill.job").json()
    assert [one["name"] for one in opened["site"]["people"]] == ["Grandmother"]
    (kept,) = client.get("/api/jobs/Mill.job/attachments").json()
    assert kept["name"] == intake.REPORT
    assert "Guessed:" in client.get("/api/jobs/Mill.job/attachments/1").text
    again = client.post("/api/intake", json={"file": house})
    assert (again.status_code, again.json()["what"].split(",")[0]) == (422, "the file is not here any more")


def test_where_there_are_several_premises_it_is_asked_which(client: TestClient) -> None:
    house = handed_in(client, "flats.ifc", written())
    asked = brought_in(client, file=house)["result"]
    assert [one["name"] for one in asked["choices"]] == ["A", "B"]
    assert asked["file"] == ""
    assert files(client) == ["house.job"]
    made = brought_in(client, file=house, premises="A")["result"]
    assert made["file"] == "flats.job"
    spaces = client.get("/api/jobs/flats.job").json()["site"]["spaces"]
    assert [one["id"] for one in spaces] == ["hall-a01", "kitchen-a02"]


def test_a_drawing_notes_and_a_site_document_are_brought_in_too(client: TestClient) -> None:
    document = write_document(read_sample("one-room")).encode()
    for name, content in (("plan.dxf", drawn()), ("cottage.notes", NOTES), ("room.json", document)):
        said = brought_in(client, file=handed_in(client, name, content))
        assert said["state"] == "done", said
    assert brought_in(client, file=handed_in(client, "room.json", document))["result"]["file"] == "room-2.job"
    assert files(client) == ["cottage.job", "house.job", "plan.job", "room-2.job", "room.job"]


@pytest.mark.parametrize(
    ("name", "content", "wish", "said"),
    [
        ("house.ifc", b"no house", {}, "not an IFC file"),
        ("house.notes", b"# front door code 4711\n", {}, "never stored"),
        ("house.notes", b"\xff\xfe", {}, "not text"),
        ("house.json", b"[" * 100_000, {}, ""),
        ("house.json", b'{"name": "x"}', {}, ""),
        ("house.notes", NOTES, {"premises": "A"}, "premises can be picked in a building file only"),
        ("house.notes", NOTES, {"unit": "mm"}, "a unit can be told of a drawing only"),
    ],
)
def test_what_cannot_be_used_gets_one_message_and_leaves_nothing(
    client: TestClient, name: str, content: bytes, wish: dict[str, str], said: str
) -> None:
    ended_with = brought_in(client, file=handed_in(client, name, content), **wish)
    assert ended_with["state"] == "failed"
    assert said in ended_with["fault"]["what"]
    assert ended_with["fault"]["cure"]
    assert ended_with["fault"]["where"].startswith(name)
    assert files(client) == ["house.job"]


def test_after_a_fault_the_same_file_can_be_tried_with_other_notes(client: TestClient) -> None:
    house = handed_in(client, "house.ifc", written())
    wrong = handed_in(client, "kit.notes", b"frobnicate the hall\n")
    assert brought_in(client, file=house, notes=wrong, premises="")["state"] == "failed"
    right = handed_in(client, "kit.notes", b"person lodger\n")
    assert brought_in(client, file=house, notes=right, premises="")["state"] == "done"


def test_what_is_no_house_or_too_long_is_refused_before_it_is_sent_whole(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    limits = client.get("/api/limits").json()
    assert limits["largest_by_ending"][".ifc"] == limited.LARGEST_FILE_BYTES
    assert limits["units"] == ["mm", "cm", "m", "inch", "foot"]
    refused = client.post("/api/files", params={"name": "house.rvt"}, content=b"x")
    assert refused.status_code == 422
    assert "neither a building file" in refused.json()["what"]
    monkeypatch.setitem(bringing_in.LARGEST_BY_ENDING, ".ifc", 2_000_000)
    for content in (bytes(2_000_001), iter([bytes(1_500_000), bytes(1_500_000)])):
        refused = client.post("/api/files", params={"name": "house.ifc"}, content=content)
        assert refused.status_code == 422
        assert "longer than 2 MB" in refused.json()["what"]


def test_a_file_that_is_let_go_is_gone(client: TestClient) -> None:
    house = handed_in(client, "house.notes", NOTES)
    assert client.delete(f"/api/files/{house}").status_code == 204
    assert client.post("/api/intake", json={"file": house}).status_code == 422
    kept = handed_in(client, "house.notes", NOTES)
    assert client.post("/api/intake", json={"file": kept, "notes": "gone"}).status_code == 422
    assert brought_in(client, file=kept)["state"] == "done"  # it was put back


def test_stopped_at_any_step_it_leaves_nothing_half_written(
    client: TestClient, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = sorted(one.name for one in tmp_path.iterdir())
    house = handed_in(client, "house.ifc", written())
    for number in range(1, 5):
        real, count = intake.Work.step, iter(range(1, 100))

        def step(
            work: Any, doing: str, *, real: Any = real, count: Any = count, number: int = number
        ) -> None:
            if next(count) == number:
                work.stop()
            real(work, doing)

        monkeypatch.setattr(intake.Work, "step", step)
        said = brought_in(client, file=house, premises="")
        monkeypatch.setattr(intake.Work, "step", real)
        assert (said["state"], said["result"]) == ("stopped", None)
        assert sorted(one.name for one in tmp_path.iterdir()) == before
    assert brought_in(client, file=house, premises="")["state"] == "done"


def test_the_reader_is_ended_at_once_and_the_server_answers_meanwhile(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    asleep = threading.Event()

    def never(_: Any, content: Any, **more: Any) -> Any:
        asleep.set()
        code = "import time; time.sleep(60)"
        return real([limited.sys.executable, "-c", code], content, **more)

    real = limited.ran
    monkeypatch.setattr(limited, "ran", never)
    house = handed_in(client, "house.ifc", written())
    begun = client.post("/api/intake", json={"file": house, "premises": ""}).json()
    assert asleep.wait(10.0)
    assert client.get("/api/jobs/house.job").status_code == 200
    start = time.monotonic()
    client.post(f"/api/works/{begun['id']}/stop")
    assert ended(client, begun["id"])["state"] == "stopped"
    assert time.monotonic() - start < 5.0


def test_the_job_opens_by_itself_afterwards(client: TestClient, tmp_path: Path) -> None:
    brought_in(client, file=handed_in(client, "a.notes", NOTES))
    client.__exit__(None, None, None)
    with open_job(tmp_path / "a.job") as job:
        assert job.newest == 1
