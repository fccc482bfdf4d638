from common.worked_terrace import UNDER_STAIRS, worked_terrace
from wardwright.model.device import Device, OpeningMount, WallMount
from wardwright.model.programme import Zone
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.alarm import alarm_of
from wardwright.trials.watchers import (
    REACH_SHARES,
    Watcher,
    at_the_way_in,
    control_units,
    devices_of,
    has_sounder,
    heard_in,
    watchers_on,
)
from wardwright.trials.ways_in import WayIn, ways_in

CATALOGUE = load_catalogue()
HALL = {
    "hall": (WallMount(wall="ground-back", side="left", offset_m=7.8, height_m=2.2), -60.0, "entry-route")
}
SITE = worked_terrace(contacts={"kitchen-window": "instant", "kitchen-door": "log-only"}, movement=HALL)
GOAL = Spot(UNDER_STAIRS.storey, *UNDER_STAIRS.at_m)


def way(opening: str, manner: str = "opened") -> WayIn:
    return next(w for w in ways_in(SITE, CATALOGUE)[0] if (w.opening.id, w.manner) == (opening, manner))


def watching(site: Site, chosen: WayIn, *, part: str = "full") -> tuple[Watcher, ...]:
    heard = alarm_of(site, CATALOGUE, part).heard
    return watchers_on(site.bare, CATALOGUE, heard, way=chosen, goal=GOAL)


def test_contacts_are_heard_at_the_way_in_and_at_doors_on_the_way() -> None:
    found = {w.device.id: w for w in watching(SITE, way("kitchen-window"))}
    assert found["kitchen-window-contact"].at_index == -1
    assert (found["kitchen-door-contact"].at_index or 0) > 0
    assert found["hall"].noticing is not None
    assert len(found["hall"].noticing.noticed_m) == len(REACH_SHARES)


def test_broken_glass_opens_no_contact() -> None:
    through = way("kitchen-window", "through the glass")
    ids = {w.device.id for w in watching(SITE, through)}
    assert "kitchen-window-contact" not in ids


def test_a_shock_detector_is_heard_at_the_way_in_alone() -> None:
    """On the front door, latched: forced there; on the kitchen door inside, only opened on the way."""
    on_leaves = tuple(
        Device(id=f"{name}-shock", name=name, sheet="shock-radio", mount=OpeningMount(opening=name))
        for name in ("front-door", "kitchen-door")
    )
    zones = tuple(
        Zone(id=one.id, number=20 + i, name=one.name, devices=(one.id,), behaviour="instant")
        for i, one in enumerate(on_leaves)
    )
    site = SITE.model_copy(update={"devices": (*SITE.devices, *on_leaves), "zones": (*SITE.zones, *zones)})
    front = {w.device.id: w.at_index for w in watching(site, way("front-door"))}
    assert front["front-door-shock"] == -1
    kitchen = {w.device.id for w in watching(site, way("kitchen-window"))}
    assert not kitchen & {"front-door-shock", "kitchen-door-shock"}


def test_a_door_that_stands_open_tells_its_contact_nothing() -> None:
    openings = tuple(
        o.model_copy(update={"habit": "open"}) if o.id == "kitchen-door" else o for o in SITE.openings
    )
    site = SITE.model_copy(update={"openings": openings})
    ids = {w.device.id for w in watching(site, way("kitchen-window"))}
    assert "kitchen-door-contact" not in ids


def test_only_zones_of_the_part_that_is_set_are_heard() -> None:
    assert watching(SITE, way("kitchen-window"), part="night") == ()
    device = SITE.device("hall")
    assert heard_in(SITE, "night").get(device.id) is None
    always = tuple(z.model_copy(update={"behaviour": "always-on"}) for z in SITE.zones)
    assert heard_in(SITE.model_copy(update={"zones": always}), "night").get(device.id) is not None


def test_devices_come_by_kind_in_the_order_of_ids() -> None:
    contacts = devices_of(SITE, CATALOGUE, "opening-contact")
    assert [one.id for one in contacts] == ["kitchen-door-contact", "kitchen-window-contact"]
    assert [one.id for one in control_units(SITE, CATALOGUE)] == ["unit"]
    assert has_sounder(SITE, CATALOGUE)
    silent = SITE.model_copy(update={"devices": contacts})
    assert not has_sounder(silent, CATALOGUE)


def test_those_that_notice_at_the_way_in_are_told_apart() -> None:
    contact = SITE.device("kitchen-window-contact")
    others = (SITE.device("hall"), SITE.device("kitchen-door-contact"))
    devices = (contact, *others)
    assert at_the_way_in(SITE, CATALOGUE, devices, way=way("kitchen-window")) == (contact,)
    assert at_the_way_in(SITE, CATALOGUE, devices, way=way("kitchen-window", "through the glass")) == ()
