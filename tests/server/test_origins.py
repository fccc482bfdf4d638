from __future__ import annotations

import pytest

from wardwright.server.origins import is_from_elsewhere


@pytest.mark.parametrize(
    ("headers", "is_elsewhere"),
    [
        ({"host": "localhost:1"}, False),
        ({"origin": "http://localhost:1", "host": "localhost:1"}, False),
        ({"origin": "http://localhost:2", "host": "localhost:1"}, True),
        ({"origin": "null", "host": "localhost:1"}, True),
        ({"origin": "http://evil.example"}, True),
    ],
)
def test_only_the_servers_own_page_is_at_home(headers: dict[str, str], is_elsewhere: bool) -> None:
    assert is_from_elsewhere(headers) is is_elsewhere
