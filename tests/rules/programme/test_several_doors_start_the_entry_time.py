"""PRG107: one door starts the entry time, the rest are instant."""

from __future__ import annotations

from common.houses import CATALOGUE, on_opening, on_wall, two_rooms_and_hall, zone
from common.rule_houses.programme import BACK_CONTACT, BACK_DOOR, TWO_DOORS, two_doors
from wardwright.model.programme import Programme
from wardwright.model.site import Site
from wardwright.rules.programme.several_doors_start_the_entry_time import (
    several_doors_start_the_entry_time as rule,
)
from wardwright.rules.registry import findings_of


def both_entry_doors(keypad_y: float) -> Site:
    """Entry doors south and north of the hall, 6 m apart; the keypad on its west wall."""
    front, *rest = two_rooms_and_hall().openings
    return two_rooms_and_hall(
        openings=(front, *rest, BACK_DOOR.model_copy(update={"is_entry_door": True})),
        devices=(
            on_wall("keypad", "keypad", "kitchen-wall", keypad_y, side="right", height_m=1.3),
            on_opening("front-contact", "front-door"),
            BACK_CONTACT,
        ),
        zones=(
            zone(1, "Hall front door", "front-contact", behaviour="entry-exit"),
            zone(2, "Hall back door", "back-contact", behaviour="entry-exit"),
        ),
        programme=Programme(entry_time_s=40.0),
    )


def test_the_door_that_nobody_comes_in_by_is_the_fault() -> None:
    (found,) = findings_of(rule, two_doors("entry-exit"), CATALOGUE)
    assert (found.subject, found.severity, found.related) == (
        "zone-1",
        "advise",
        ("back-contact", "back-door"),
    )
    assert "nobody is told to come in by it" in found.cure
    assert found.mends[0].values == (("behaviour", "instant"),)


def test_of_two_entry_doors_the_one_nearer_to_the_keypad_stays() -> None:
    (near_front,) = findings_of(rule, both_entry_doors(1.0), CATALOGUE)
    (near_back,) = findings_of(rule, both_entry_doors(5.0), CATALOGUE)
    assert (near_front.subject, near_back.subject) == ("zone-2", "zone-1")
    assert "40 s before anything sounds" in near_front.message


def test_the_other_contact_of_the_same_door_is_no_second_door() -> None:
    site = two_rooms_and_hall(
        openings=TWO_DOORS,
        devices=(on_opening("first-leaf", "front-door"), on_opening("second-leaf", "front-door")),
        zones=(
            zone(1, "Hall front door", "first-leaf", behaviour="entry-exit"),
            zone(2, "Hall front leaf", "second-leaf", behaviour="entry-exit"),
        ),
    )
    assert findings_of(rule, site, CATALOGUE) == ()
