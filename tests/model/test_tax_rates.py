"""Tax by country."""

from __future__ import annotations

import pytest

from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


@pytest.mark.parametrize(("country", "currency", "percent"), [("GB", "GBP", 20.0), ("DE", "EUR", 19.0)])
def test_the_tax_of_a_country(country: str, currency: str, percent: float) -> None:
    row = CATALOGUE.tax_rate(country)
    assert row is not None
    assert (row.currency, row.percent, row.mark) == (currency, percent, "from memory")


def test_where_there_is_no_one_rate_none_is_known() -> None:
    row = CATALOGUE.tax_rate("US")
    assert row is not None
    assert row.percent is None


@pytest.mark.parametrize("country", [None, "ZZ"])
def test_of_a_country_that_is_not_known_nothing_is(country: str | None) -> None:
    assert CATALOGUE.tax_rate(country) is None


def test_each_country_has_one_row() -> None:
    countries = [row.country for row in CATALOGUE.tax_rates]
    assert len(countries) == len(set(countries)) >= 10
