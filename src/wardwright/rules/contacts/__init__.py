"""Rules about opening contacts: codes CON."""

from __future__ import annotations

from wardwright.rules.contacts.contact_gap_over_its_sheet import contact_gap_over_its_sheet
from wardwright.rules.contacts.contact_on_a_leaf_left_open import contact_on_a_leaf_left_open
from wardwright.rules.contacts.electronics_on_leaf_of_outward_opening import (
    electronics_on_leaf_of_outward_opening,
)
from wardwright.rules.contacts.plain_contact_on_a_roller_door import plain_contact_on_a_roller_door
from wardwright.rules.contacts.second_leaf_without_contact import second_leaf_without_contact
from wardwright.rules.registry import Rule

CONTACT_RULES: tuple[Rule, ...] = (
    contact_gap_over_its_sheet,
    electronics_on_leaf_of_outward_opening,
    plain_contact_on_a_roller_door,
    contact_on_a_leaf_left_open,
    second_leaf_without_contact,
)
"""In code order."""
