from __future__ import annotations

import pypdfium2
import pytest

from common.fitted import DAY
from wardwright.documents.content.paper import Paper, PaperSize, Section
from wardwright.documents.press import Press, usual_size
from wardwright.model.place import Place
from wardwright.store.fonts import font_folder


@pytest.mark.parametrize(("size", "points"), [("a4", (595.28, 841.89)), ("letter", (612.0, 792.0))])
def test_the_page_is_the_size_that_was_asked_for(size: PaperSize, points: tuple[float, float]) -> None:
    paper = Paper("T", "house", "fitter", DAY, (Section("S", text=("Words.",)),))
    with pypdfium2.PdfDocument(Press(font_folder(), size).pdf(paper)) as book:
        assert book[0].get_size() == pytest.approx(points, abs=0.1)


def test_a_country_stands_before_the_rule_pack() -> None:
    assert usual_size(Place(country="DE", rule_pack="us")) == "a4"
    assert usual_size(Place()) == "a4"
