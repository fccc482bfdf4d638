from __future__ import annotations

from pathlib import Path

from fastapi.testclient import TestClient

FIRM = {"name": "Example Alarms", "rates": {"currency": "GBP", "labour_per_hour": "48.50"}}
ROWS = b"code,cost,price,date\nmovement-12m,41.50,,2026-03-31\n"


def test_the_firm_is_kept_once_and_every_quote_is_by_it(client: TestClient, tmp_path: Path) -> None:
    assert client.get("/api/office").json() == {"firm": None, "prices": None, "fault": None}
    made_up = client.get("/api/jobs/house.job/quote").json()
    assert made_up["by"] == ""
    said = client.put("/api/office/firm", json=FIRM)
    assert said.status_code == 200
    assert said.json()["firm"]["rates"]["labour_per_hour"] == "48.50"
    assert (tmp_path / "firm.toml").stat().st_mode & 0o077 == 0
    quote = client.get("/api/jobs/house.job/quote").json()
    assert quote["by"] == "Example Alarms"
    assert len(quote["options"]) > 1
    assert quote["options"][0]["difference"] == ""
    assert all(one["changes"] for one in quote["options"][1:])
    assert quote["options"][0]["total"].endswith("GBP")


def test_with_a_price_list_what_is_not_in_it_makes_the_sum_unknown(client: TestClient) -> None:
    said = client.put("/api/office/prices?name=list.csv", content=ROWS).json()
    assert said["prices"] == {"rows": 1, "oldest": "2026-03-31"}
    first = client.get("/api/jobs/house.job/quote").json()["options"][0]
    assert first["total"] == "not known"
    assert first["not_priced"]
    assert client.delete("/api/office/prices").json()["prices"] is None


def test_a_form_that_cannot_be_kept_is_refused_with_its_place_and_leaves_what_was(client: TestClient) -> None:
    client.put("/api/office/firm", json=FIRM)
    wrong = {**FIRM, "rates": {"currency": "GBP", "labour_per_hour": "much"}}
    for body in (wrong, {"name": "x"}, {**FIRM, "cade": 1}, [], "text"):
        answer = client.put("/api/office/firm", json=body)
        assert answer.status_code == 422, body
        assert answer.json()["cure"]
    assert client.put("/api/office/firm", content=b"{").status_code == 422
    assert client.put("/api/office/prices?name=a.csv", content=b"x" * 5_000_001).status_code == 422
    assert client.get("/api/office").json()["firm"]["name"] == "Example Alarms"


def test_a_file_that_cannot_be_used_is_told_and_stops_the_quote(client: TestClient, tmp_path: Path) -> None:
    (tmp_path / "firm.toml").write_text("name = ", encoding="utf-8")
    assert "TOML" in client.get("/api/office").json()["fault"]["what"]
    assert client.get("/api/jobs/house.job/quote").status_code == 422
