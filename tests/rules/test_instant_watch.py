"""What alarms at once, by shape and by contacts."""

from __future__ import annotations

from common.houses import CATALOGUE, on_opening, on_wall, open_edge, two_rooms_and_hall, zone
from common.rule_houses.control import STUDY_FAN, STUDY_ZONE
from wardwright.model.device import Device, Fixing
from wardwright.model.fabric import Stair
from wardwright.model.site import Site
from wardwright.rules.instant_watch import watched_at_once, watched_shapes

CONTACTS = (on_opening("door-contact", "study-door"), on_opening("window-contact", "study-window"))
BOTH = zone(1, "Study", "door-contact", "window-contact")


def guarded(**parts: object) -> Site:
    return two_rooms_and_hall(**({"devices": CONTACTS, "zones": (BOTH,)} | parts))


def test_a_place_that_a_detector_sees_is_guarded_by_it() -> None:
    site = two_rooms_and_hall(devices=(STUDY_FAN,), zones=(STUDY_ZONE,))
    watched = watched_at_once(site, CATALOGUE)
    assert watched.by("ground", (8.0, 3.0), room=()) == ("study-fan",)
    assert watched.by("ground", (2.0, 3.0), room=()) == ()
    assert watched.by("ground", (500.0, 3.0), room=()) == ()
    assert watched.by("up", (8.0, 3.0), room=()) == ()


def test_only_the_chosen_detectors_count() -> None:
    site = two_rooms_and_hall(devices=(STUDY_FAN,), zones=(STUDY_ZONE,))
    assert watched_shapes(site, CATALOGUE, frozenset()) == ()
    assert [shape.device for shape in watched_shapes(site, CATALOGUE, frozenset({"study-fan"}))] == [
        "study-fan"
    ]


def test_a_room_is_closed_by_contacts_on_all_its_ways() -> None:
    assert watched_at_once(guarded(), CATALOGUE).rooms == {"study"}
    one = zone(1, "Study", "door-contact")
    assert watched_at_once(guarded(zones=(one,)), CATALOGUE).rooms == frozenset()


def test_a_fixed_pane_is_closed_by_what_notices_it_broken_and_a_leaf_by_what_notices_it_forced() -> None:
    door, pane = CONTACTS[0], "study-window"
    ear = on_wall("ear", "ear", "study-wall", 3.0, side="right", height_m=2.0)
    shock = on_opening("shock", pane, "shock-wide").model_copy(
        update={"fixing": Fixing(by="screws", surface="timber")}
    )

    def rooms(device: Device, **facts: object) -> frozenset[str]:
        known = two_rooms_and_hall().openings
        openings = tuple(one.model_copy(update=facts) if one.id == pane else one for one in known)
        study = zone(1, "Study", "door-contact", device.id)
        site = guarded(devices=(door, device), openings=openings, zones=(study,))
        return watched_at_once(site, CATALOGUE).rooms

    assert rooms(ear, hinge="fixed") == {"study"}
    assert rooms(ear, hinge="fixed", glazing="laminated") == frozenset()
    assert rooms(ear) == frozenset()
    assert rooms(shock, hinge="fixed") == {"study"}
    assert rooms(shock) == {"study"}
    assert rooms(shock, is_locked=False) == frozenset()


def test_a_leaf_that_stands_open_is_not_closed_by_its_contact() -> None:
    openings = tuple(
        one.model_copy(update={"habit": "open"}) if one.id == "study-door" else one
        for one in two_rooms_and_hall().openings
    )
    assert watched_at_once(guarded(openings=openings), CATALOGUE).rooms == frozenset()


def test_a_room_without_ways_is_not_known_to_be_closed() -> None:
    assert watched_at_once(guarded(openings=()), CATALOGUE.model_copy()).rooms == frozenset()


def test_an_open_edge_or_a_stair_leaves_it_open() -> None:
    edge = (open_edge("hall", "study", ((6.15, 0.0), (6.15, 3.0))),)
    assert watched_at_once(guarded(open_edges=edge), CATALOGUE).rooms == frozenset()
    ground = guarded().storeys[0]
    up = ground.model_copy(update={"id": "up", "elevation_m": 2.7})
    stair = Stair(id="stair", lower="ground", upper="up", line_m=((8.0, 1.0), (8.0, 4.0)))
    assert watched_at_once(guarded(storeys=(ground, up), stairs=(stair,)), CATALOGUE).rooms == frozenset()
