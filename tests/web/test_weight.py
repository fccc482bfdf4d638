"""How heavy the page is: what is built, and all that comes over the wire until the first view stands."""

from __future__ import annotations

import gzip
from pathlib import Path

from common.served import Served
from web.conftest import JOB, OpenPage, until

STATIC = Path(__file__).resolve().parents[2] / "src" / "wardwright" / "static"


def test_the_built_code_and_style_are_small(page_built: None) -> None:
    del page_built
    built = sorted(path for path in STATIC.rglob("*") if path.suffix in (".js", ".css", ".html"))
    assert {path.suffix for path in built} == {".js", ".css", ".html"}
    packed = {path.name: len(gzip.compress(path.read_bytes())) for path in built}
    assert sum(packed.values()) < 200_000, packed


def test_the_first_view_is_light(open_page: OpenPage, served: Served) -> None:
    """Files, the house, and the answers over the live link; that no other host is asked is seen to by `open_page`."""
    page = open_page(job="", ready=".jobs .job")
    files: list[int] = []
    said: list[int] = []
    page.on("response", lambda answer: files.append(len(answer.body())))
    page.on("websocket", lambda link: link.on("framereceived", lambda frame: said.append(len(frame))))
    page.goto(served.url + f"#{JOB}")
    page.reload()
    page.wait_for_selector(".answer")
    until(lambda: said)
    assert len(files) >= 4
    assert sum(files) + sum(said) < 2_000_000
