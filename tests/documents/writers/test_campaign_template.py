"""The campaign on the page: there where intruders were sent in, and nowhere else."""

from __future__ import annotations

from dataclasses import replace

from wardwright.documents.content.page import page_of
from wardwright.documents.content.paper import Column, Section, Table
from wardwright.documents.writers.html import write_html
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample


def test_a_campaign_has_its_part_and_its_place_in_the_list_and_its_texts_are_escaped() -> None:
    bare = page_of(read_sample("one-room"), load_catalogue(), (), ())
    table = Table(
        "Caught", (Column("Caught by"), Column("Change", unit="%")), (("<sounder>", "50.0 % & more"),)
    )
    told = replace(
        bare, campaign=(Section("Caught", text=("200 intruders",), points=("Who?",), table=table),)
    )
    without, with_it = (write_html(page).decode() for page in (bare, told))
    assert 'id="campaign"' not in without
    assert '<section id="campaign"' in with_it
    assert '<a href="#campaign">' in with_it
    assert "&lt;sounder&gt;" in with_it
    assert "50.0 % &amp; more" in with_it
    assert "Change [%]" in with_it
