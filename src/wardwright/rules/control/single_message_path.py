"""CTL107: a message that has one way out only."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.site import Site
from wardwright.rules.finding import Finding
from wardwright.rules.kit import some_of
from wardwright.rules.registry import exactly, rule
from wardwright.rules.replacement import replaced


@rule(
    code="CTL107",
    name="single-message-path",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def single_message_path(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Messages that leave by one path, or stop with the mains.

    What it checks
        The paths on the sheets of all message paths together: whether there is mobile data beside broadband, and
        whether a path goes on working without mains.
    Why it matters
        Broadband ends with one cut cable, a router that is unplugged, or a power cut. With no other path nobody
        outside learns of the alarm, nor that the path is dead.
    How to put it right
        Add mobile data with its own standby, and measure the mobile level where it is to hang. Feed the router from
        a standby supply as well.
    What it cannot know
        The mobile level indoors; whether both paths hang on one mast or one cable outside; how soon the far end
        notices that a path is dead.

    Parameters
    ----------
    site : Site
        The devices.
    catalogue : Catalogue
        The message paths' sheets.

    Yields
    ------
    Finding
        One for the message path that is alone, with its standby [h].

    Raises
    ------
    NoneOfAKind
        If no message path is known.
    """
    this = single_message_path
    cure = "Add the message path, such as a transmitter by broadband and mobile data"
    used = [
        (device, _paths(sheet), sheet) for device, sheet in some_of(site, catalogue, "transmitter", cure=cure)
    ]
    together = frozenset[str]().union(*(paths for _, paths, _ in used))
    if len(together) > 1:
        return
    device, paths, sheet = max(used, key=lambda one: (_standby(one[2]), one[0].id))
    standby = _standby(sheet)
    if "mobile" in paths and standby > 0.0:
        return
    without = "" if standby > 0.0 else ", which stops with the mains"
    yield this.finding(
        device.id,
        f"{device.name}: messages leave by {' and '.join(sorted(paths))} only{without}",
        cure="Use broadband and mobile data together, with a standby of their own",
        estimate=exactly(standby, "h", "told"),
        mends=replaced(catalogue, device, fits=lambda one: len(_paths(one)) > 1 and _standby(one) > 0.0),
        related=tuple(one.id for one, _, _ in used if one.id != device.id),
    )


def _paths(sheet: DeviceSheet) -> frozenset[str]:
    return frozenset() if sheet.transmitter is None else frozenset(sheet.transmitter.paths)


def _standby(sheet: DeviceSheet) -> float:
    return 0.0 if sheet.transmitter is None else sheet.transmitter.standby_h
