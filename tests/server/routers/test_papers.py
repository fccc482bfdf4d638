from __future__ import annotations

from fastapi.testclient import TestClient

from common.fitted import text_of
from leaks.secrets import leaks
from wardwright.documents.content.copies import COPIES
from wardwright.documents.paper_list import TITLES
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

PLACE = "/api/jobs/house.job/papers"


def test_every_paper_of_each_class_can_be_had_and_its_class_is_in_its_name(client: TestClient) -> None:
    listed = client.get(PLACE).json()
    assert {one["copy_class"] for one in listed} == set(COPIES)
    for one in listed:
        assert one["warning"]
        names = [paper["name"] for paper in one["papers"]]
        assert set(TITLES[one["copy_class"]]) <= set(names)
        for name in names:
            answer = client.get(f"{PLACE}/{one['copy_class']}/{name}")
            assert answer.status_code == 200
            assert len(answer.content) > 100
            kept = f"house-{COPIES[one['copy_class']].folder}-{name}"
            assert answer.headers["content-disposition"] == f"attachment; filename*=UTF-8''{kept}"


def test_what_is_had_as_an_open_or_a_clients_copy_gives_nothing_away(client: TestClient) -> None:
    site, catalogue = read_sample("terrace"), load_catalogue()
    for copy in ("client", "open"):
        for name in TITLES[copy]:
            content = client.get(f"{PLACE}/{copy}/{name}").content
            assert leaks(text_of(name, content), site, catalogue, is_open=copy == "open") == ()


def test_a_paper_of_another_class_or_of_no_class_is_not_there(client: TestClient) -> None:
    assert client.get(f"{PLACE}/open/plan.pdf").status_code == 422
    assert client.get(f"{PLACE}/everybody/plan.pdf").status_code == 422
    assert client.get("/api/jobs/none.job/papers").status_code == 422


def test_a_paper_is_kept_as_a_file_unless_it_is_printed(client: TestClient) -> None:
    kept = client.get(f"{PLACE}/open/labels.pdf")
    printed = client.get(f"{PLACE}/open/labels.pdf?printed=true")
    assert kept.headers["content-disposition"].startswith("attachment; ")
    assert printed.headers["content-disposition"].startswith("inline; ")
    assert printed.content == kept.content
    # What is no picture of paper is never opened in the page's own place: it might run there.
    rows = client.get(f"{PLACE}/open/labels.csv?printed=true")
    assert rows.headers["content-disposition"].startswith("attachment; ")


def test_the_pages_of_a_paper_are_pictures(client: TestClient) -> None:
    pages = client.get(f"{PLACE}/client/proposal.pdf/pages").json()
    assert pages
    assert all(one["width_mm"] > 100.0 and one["height_mm"] > 100.0 for one in pages)
    picture = client.get(f"{PLACE}/client/proposal.pdf/pages/{len(pages)}?width=300")
    assert picture.headers["content-type"] == "image/png"
    assert picture.content.startswith(b"\x89PNG")
    assert client.get(f"{PLACE}/client/proposal.pdf/pages/{len(pages) + 1}").status_code == 422
    assert client.get(f"{PLACE}/client/proposal.pdf/pages/1?width=0").status_code == 422
    assert client.get(f"{PLACE}/open/labels.csv/pages").status_code == 422


def test_a_quote_is_among_the_papers_once_the_firm_is_told(client: TestClient) -> None:
    def names(copy: str) -> set[str]:
        (one,) = (each for each in client.get(PLACE).json() if each["copy_class"] == copy)
        return {paper["name"] for paper in one["papers"]}

    assert client.get(f"{PLACE}/client/quote.pdf").status_code == 422
    assert "quote.pdf" not in names("client")
    firm = {"name": "Example Alarms", "rates": {"currency": "GBP", "labour_per_hour": "48.50"}}
    assert client.put("/api/office/firm", json=firm).status_code == 200
    assert "quote.pdf" in names("client")
    assert not any("quote" in name for name in names("open"))
    told = text_of("quote.pdf", client.get(f"{PLACE}/client/quote.pdf").content)
    assert "Example Alarms" in told
    assert "GBP" in told
    # What else it may not tell is held by the leak test: it is the same paper. Allowances are the firm's own.
    assert "contingency" not in told
    (kept,) = (name for name in names("fitter") if "quote" in name)
    assert client.get(f"{PLACE}/fitter/{kept}").status_code == 200
    assert client.get(f"{PLACE}/client/quote.pdf/pages").json()
