from __future__ import annotations

from wardwright.documents.writers.pdf_template import PDF_TEMPLATE


def test_the_frame_asks_nothing_of_the_network_and_reads_only_what_it_is_given() -> None:
    assert "@preview" not in PDF_TEMPLATE
    assert "http" not in PDF_TEMPLATE
    assert PDF_TEMPLATE.count("json(") == 1
    assert "read(" not in PDF_TEMPLATE
    assert "eval(" not in PDF_TEMPLATE
