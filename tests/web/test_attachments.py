"""Attachments in a real browser: added, listed, looked at, taken away, put back, about a thing or about none."""

from __future__ import annotations

import io
import struct
import zlib
from typing import Any

import pytest

from common.served import Served
from web.conftest import JOB, SHAPES, OpenPage, assert_fits, assert_no_barrier, until


def picture(red: int = 160) -> bytes:
    """A small PNG of one colour."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    side = 48
    rows = b"".join(b"\0" + bytes([red, 140, 120]) * side for _ in range(side))
    head = struct.pack(">IIBBBBB", side, side, 8, 2, 0, 0, 0)
    return (
        b"\x89PNG\r\n\x1a\n"
        + chunk(b"IHDR", head)
        + chunk(b"IDAT", zlib.compress(rows))
        + chunk(b"IEND", b"")
    )


def paper() -> bytes:
    out = io.BytesIO()
    out.write(
        b"%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\n2 0 obj<</Type/Pages/Kids[]/Count 0>>endobj\n"
    )
    return out.getvalue()


def attached(page: Any, name: str, content: bytes, *, about: str = "", note: str = "") -> None:
    if page.locator(".attachments[open]").count() == 0:
        page.locator("#attachments > summary").click()
    page.locator("#attachment-file").set_input_files(
        {"name": name, "mimeType": "application/octet-stream", "buffer": content}
    )
    if about:
        page.get_by_label("What it is about").select_option(label=about)
    page.get_by_label("What is to be said of it").fill(note)
    page.get_by_role("button", name="Attach it").click()


def kept(served: Served) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = served.said(f"/{JOB}/attachments")
    return found


def test_a_picture_of_a_device_is_attached_looked_at_taken_away_and_put_back(
    open_page: OpenPage, served: Served
) -> None:
    page = open_page()
    attached(page, "hall.png", picture(), about="Ground hall movement", note="above the door")
    until(lambda: len(kept(served)) == 1)
    assert (kept(served)[0]["about"], kept(served)[0]["note"]) == ("devices/hall-movement", "above the door")
    line = page.locator(".attached li")
    line.wait_for()
    until(lambda: page.evaluate("document.querySelector('.attached img').naturalWidth") == 48)
    line.get_by_role("button", name="View hall.png").click()
    page.wait_for_selector(".viewer img")
    page.keyboard.press("Escape")
    until(lambda: page.locator(".viewer").count() == 0)
    line.get_by_role("button", name="Show on the plan: Ground hall movement").click()
    page.wait_for_selector(".details .attached-to")
    assert "hall.png" in page.locator(".details").inner_text()
    page.get_by_role("button", name="Take away hall.png").click()
    until(lambda: kept(served)[0]["removed_at"])
    until(lambda: "hall.png" not in page.locator(".details").inner_text())
    page.locator(".attachments summary").filter(has_text="Taken away").click()
    page.get_by_role("button", name="Put back hall.png").click()
    until(lambda: not kept(served)[0]["removed_at"])


def test_from_the_details_of_a_thing_by_keys(open_page: OpenPage, served: Served) -> None:
    page = open_page()
    page.locator('[data-opening="front-door"]').focus()
    page.keyboard.press("Enter")
    page.get_by_role("button", name="Attach something about it").focus()
    page.keyboard.press("Enter")
    until(lambda: page.evaluate("document.activeElement.id") == "attachment-file")
    page.locator("#attachment-file").set_input_files(
        {"name": "door.txt", "mimeType": "text/plain", "buffer": b"a latch only\n"}
    )
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    page.keyboard.type("seen on site")
    page.keyboard.press("Enter")
    until(lambda: kept(served))
    assert (kept(served)[0]["about"], kept(served)[0]["note"]) == ("openings/front-door", "seen on site")
    button = page.locator(".attached").get_by_role("button", name="View door.txt")
    button.focus()
    page.keyboard.press("Enter")
    assert "a latch only" in page.wait_for_selector(".viewer pre").inner_text()
    page.keyboard.press("Escape")
    until(lambda: page.evaluate("document.activeElement.textContent") == "View")


def test_a_log_a_paper_and_readings_are_told_by_their_content(open_page: OpenPage, served: Served) -> None:
    page = open_page()
    for number, (name, content) in enumerate(
        (
            ("log.txt", b"07:42 user code 4711\n"),
            ("sheet.bin", paper()),
            ("levels.dat", b"place,level\nhall,-71\nkitchen,-80\n"),
        ),
        start=1,
    ):
        attached(page, name, content)
        until(lambda number=number: page.locator(".attached li").count() == number)
    assert len(kept(served)) == 3
    told = page.locator(".attached").inner_text()
    for part in ("a code on 1 line was starred out", "PDF", "readings", "text"):
        assert part in told
    page.get_by_role("button", name="View log.txt").click()
    assert "****" in page.wait_for_selector(".viewer pre").inner_text()
    page.get_by_role("button", name="Close", exact=True).click()
    with page.context.expect_page() as opened:
        page.get_by_role("link", name="View sheet.bin").click()
    opened.value.close()


def test_a_code_in_what_is_said_of_it_is_caught_and_nothing_is_kept(
    open_page: OpenPage, served: Served
) -> None:
    page = open_page()
    attached(page, "hall.png", picture(), note="keypad PIN 4711")
    assert "looks as if it held a code" in page.wait_for_selector(".attachments .fault").inner_text()
    assert kept(served) == []
    page.get_by_label("What is to be said of it").fill("keypad")
    page.get_by_role("button", name="Attach it").click()
    until(lambda: len(kept(served)) == 1)


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("shape", sorted(SHAPES))
def test_no_barrier_and_room_enough(open_page: OpenPage, shape: str, scheme: str) -> None:
    page = open_page(shape, color_scheme=scheme)
    attached(page, "hall.png", picture(), about="Ground hall movement", note="above the door")
    page.wait_for_selector(".attached li")
    attached(page, "log.txt", b"07:42 hall\n")
    until(lambda: page.locator(".attached li").count() == 2)
    assert_no_barrier(page)
    assert_fits(page, ".attachments")
    page.get_by_role("button", name="View hall.png").first.click()
    page.wait_for_selector(".viewer img")
    assert_no_barrier(page)
    page.keyboard.press("Escape")
    page.get_by_role("button", name="Take away log.txt").click()
    page.locator(".attachments summary").filter(has_text="Taken away").click()
    assert_no_barrier(page)
