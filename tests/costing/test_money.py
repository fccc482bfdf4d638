"""Money is exact."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.costing.money import exact, share_of, to_cents, total

CENTS = st.decimals(0, 10**6, places=2)


@pytest.mark.parametrize(
    ("value", "cents"), [("0.005", "0.01"), ("0.0049", "0.00"), ("1.115", "1.12"), ("2", "2.00")]
)
def test_half_a_cent_goes_up(value: str, cents: str) -> None:
    assert str(to_cents(Decimal(value))) == cents


@pytest.mark.parametrize(("value", "text"), [(0.1, "0.1"), (1.3, "1.3"), (20.0, "20.0"), (3, "3")])
def test_a_number_of_the_catalogue_is_taken_as_written(value: float, text: str) -> None:
    assert str(exact(value)) == text


@given(st.lists(CENTS))
def test_sums_are_exact_in_any_order(amounts: list[Decimal]) -> None:
    assert total(amounts) == total(reversed(amounts)) == Decimal(sum(int(a * 100) for a in amounts)) / 100


@given(CENTS, st.integers(0, 100))
def test_tax_is_within_half_a_cent(amount: Decimal, percent: int) -> None:
    assert abs(share_of(amount, Decimal(percent)) - amount * percent / 100) <= Decimal("0.005")


def test_what_is_not_known_makes_the_sum_unknown() -> None:
    assert total([Decimal(1), None]) is None
    assert total([]) == 0
