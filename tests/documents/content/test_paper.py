from __future__ import annotations

from common.fitted import DAY
from wardwright.documents.content.paper import Paper, Section


def test_a_paper_is_compared_by_what_it_says() -> None:
    papers = [Paper("Labels", "house", "open", DAY, (Section("One", text=("words",)),)) for _ in range(2)]
    assert papers[0] == papers[1]
    assert hash(papers[0]) == hash(papers[1])
