from __future__ import annotations

import pytest

from wardwright.store.jobs.kinds import kind_of, text_of


@pytest.mark.parametrize(
    ("content", "kind"),
    [
        (b"\xff\xd8\xff\xe0 picture", "image/jpeg"),
        (b"\x89PNG\r\n\x1a\n picture", "image/png"),
        (b"GIF89a picture", "image/gif"),
        (b"RIFF\x00\x00\x00\x00WEBPVP8 ", "image/webp"),
        (b"\x00\x00\x00\x18ftypheic", "image/heic"),
        (b"%PDF-1.7", "application/pdf"),
        (b"07:42 hall\n07:43 kitchen, door\n", "text/plain"),
        (b"time,level\n1,-70\n2,-71\n", "text/csv"),
        (b"time\tlevel\n1\t-70\n", "text/csv"),
        (b"<svg xmlns='x'><script>1</script></svg>", "text/plain"),
        (b"", None),
        (b" \n", None),
        (b"MZ\x00\x01", None),
        (b"PK\x03\x04\xff\xfe", None),
    ],
)
def test_the_content_tells_the_kind(content: bytes, kind: str | None) -> None:
    assert kind_of(content) == kind


def test_a_mark_of_byte_order_is_no_text() -> None:
    assert text_of("\ufeffhall".encode()) == "hall"
    assert text_of(b"\xff\xfeh\x00") is None
