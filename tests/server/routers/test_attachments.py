from __future__ import annotations

import pytest
from fastapi.testclient import TestClient
from httpx2 import Response

from wardwright.store.jobs import attachments

AT = "/api/jobs/house.job/attachments"
PICTURE = b"\x89PNG\r\n\x1a\n a picture"


def attached(client: TestClient, content: bytes = PICTURE, **more: str) -> Response:
    asked: Response = client.post(AT, params={"name": "hall.png", "author": "me"} | more, content=content)
    return asked


def test_what_is_attached_is_listed_and_looked_at(client: TestClient) -> None:
    made = attached(client, about="devices/hall-movement", note="above the door")
    assert made.status_code == 201
    (one,) = client.get(AT).json()
    assert one == made.json()
    assert (one["kind"], one["author"], one["note"], one["size_bytes"]) == (
        "image/png", "me", "above the door", len(PICTURE),
    )  # fmt: skip
    assert one["about_name"] == "Ground hall movement"
    shown = client.get(f"{AT}/1")
    assert (shown.content, shown.headers["content-type"]) == (PICTURE, "image/png")
    assert shown.headers["x-content-type-options"] == "nosniff"


def test_markup_is_shown_as_text_and_never_as_a_page(client: TestClient) -> None:
    attached(client, b"<html><script>alert(1)</script>", name="page.html")
    shown = client.get(f"{AT}/1")
    assert shown.headers["content-type"] == "text/plain; charset=utf-8"
    assert "default-src 'self'" in shown.headers["content-security-policy"]


@pytest.mark.parametrize(
    ("about", "status"),
    [
        ("", 201),
        ("devices/hall-movement", 201),
        ("openings/front-door", 201),
        ("devices/nothing", 422),
        ("walls/hall-living-wall", 422),
        ("findings/XYZ1/hall", 422),
    ],
)
def test_it_is_about_the_job_or_about_a_thing_that_is_there(
    client: TestClient, about: str, status: int
) -> None:
    assert attached(client, about=about).status_code == status


def test_it_may_be_about_a_finding(client: TestClient) -> None:
    with client.websocket_connect("/api/jobs/house.job/live") as socket:
        board = socket.receive_json()
    finding = next(one for one in board["findings"] if one["severity"] != "not run")
    key = f"findings/{finding['code']}/{finding['subject_id']}"
    made = attached(client, about=key)
    assert made.status_code == 201
    assert made.json()["about_name"] == f"{finding['code']}: {finding['subject']}"


def test_it_is_taken_away_and_put_back_and_both_are_known(client: TestClient) -> None:
    attached(client)
    gone = client.post(f"{AT}/1/changes", json={"what": "removed", "author": "you"}).json()
    assert (gone["removed_by"], bool(gone["removed_at"])) == ("you", True)
    assert client.get(AT).json() == [gone]
    back = client.post(f"{AT}/1/changes", json={"what": "put back", "author": "me"}).json()
    assert back["removed_at"] == ""


def test_codes_and_what_is_too_long_or_of_no_kind_are_refused(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    for said in ({"note": "PIN 4711 by the door"}, {"name": "code 4711.png"}):
        refused = attached(client, **said)
        assert refused.status_code == 422
        assert "4711" not in refused.text
    assert attached(client, b"MZ\x00").status_code == 422
    monkeypatch.setattr(attachments, "LARGEST_BYTES", 1_000_000)
    assert "longer than 1 MB" in attached(client, bytes(1_000_001)).json()["what"]
    pieces = iter([bytes(600_000)] * 2)
    streamed = client.post(AT, params={"name": "hall.png", "author": "me"}, content=pieces)
    assert "longer than 1 MB" in streamed.json()["what"]
    assert client.get(AT).json() == []
    assert client.get(f"{AT}/1").status_code == 422


def test_codes_in_a_log_are_starred_out(client: TestClient) -> None:
    made = attached(client, b"07:42 user code 4711\n", name="log.txt").json()
    assert made["starred_lines"] == 1
    assert client.get(f"{AT}/1").text == "07:42 user code ****\n"
