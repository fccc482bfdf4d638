from __future__ import annotations

from fastapi.testclient import TestClient

from server.routers.test_intake import ended

AT = "/api/jobs/house.job/campaign"


def test_intruders_are_sent_in_step_by_step_and_their_paper_can_then_be_had(client: TestClient) -> None:
    listed = client.get("/api/jobs/house.job/papers").json()
    assert not any(one["name"] == "campaign.pdf" for copy in listed for one in copy["papers"])
    begun = client.post(AT, json={"trials": 500})
    assert begun.status_code == 202, begun.json()
    said = ended(client, begun.json()["id"])
    assert (said["state"], said["job"]) == ("done", "house.job")
    assert said["begun"] == said["of"]
    assert said["result"]["kind"] == "sent-in"
    assert said["result"]["trials"] == 500
    listed = client.get("/api/jobs/house.job/papers").json()
    holding = [
        copy["copy_class"] for copy in listed for one in copy["papers"] if one["name"] == "campaign.pdf"
    ]
    assert holding == ["fitter"]
    assert client.get("/api/jobs/house.job/papers/fitter/campaign.pdf").content.startswith(b"%PDF")
    assert client.get("/api/jobs/house.job/papers/client/campaign.pdf").status_code == 422


def test_too_few_and_too_many_are_refused(client: TestClient) -> None:
    for trials in (0, 99, 200_001, "many"):
        assert client.post(AT, json={"trials": trials}).status_code == 422
