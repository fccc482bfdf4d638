"""Rules about keypads, keyfobs and hold-up buttons: codes KEY."""

from __future__ import annotations

from wardwright.rules.keypads.hold_up_button_misplaced import hold_up_button_misplaced
from wardwright.rules.keypads.keyfob_beyond_its_range import keyfob_beyond_its_range
from wardwright.rules.keypads.keypad_far_from_the_entry_door import keypad_far_from_the_entry_door
from wardwright.rules.keypads.keypad_out_of_reach import keypad_out_of_reach
from wardwright.rules.keypads.keypad_seen_through_glass import keypad_seen_through_glass
from wardwright.rules.registry import Rule

KEYPAD_RULES: tuple[Rule, ...] = (
    keypad_far_from_the_entry_door,
    keypad_out_of_reach,
    keypad_seen_through_glass,
    keyfob_beyond_its_range,
    hold_up_button_misplaced,
)
"""In code order."""
