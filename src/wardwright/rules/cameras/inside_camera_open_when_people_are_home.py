"""CAM103: a camera inside that nothing covers while people are in."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import CameraSheet
from wardwright.model.fabric import Space
from wardwright.model.placement import space_at, standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.camera_kit import PRIVATE_USES, inside_cameras
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.registry import rule


@rule(
    code="CAM103",
    name="inside-camera-open-when-people-are-home",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def inside_camera_open_when_people_are_home(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Cameras indoors that are neither covered nor off while people are in.

    What it checks
        For each camera that hangs in a room, whether the site says that it is covered or off while people are in, and
        whether the room is one where people sleep, wash or undress.
    Why it matters
        A picture of the household at home serves no alarm. Whoever has the code sees it, now or after a quarrel, and
        so does whoever guesses the code. In a bedroom or bathroom it should not hang at all without the written
        consent of every adult who lives there.
    How to put it right
        Have its own cover shut, or its supply cut, whenever the alarm is unset or part set, and note that it is so.
        Better still in a private room: take it out, and watch the way there instead.
    What it cannot know
        Who has the code, who else looks at the pictures, and whether those who are recorded agreed. What the law asks
        of such recordings differs from place to place.

    Parameters
    ----------
    site : Site
        The house, its rooms and devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each camera that stays open; one of severity `not run` where that is not decided, unless it hangs in
        a private room.

    Raises
    ------
    NotComputable
        If there is no camera inside.
    """
    this = inside_camera_open_when_people_are_home
    for device, sheet in inside_cameras(site, catalogue):
        if device.is_covered_when_home:
            continue
        place = standing(site, device)
        here = (place.x_m, place.y_m)
        room = space_at(site, place.storey, here)
        is_private = room is not None and room.use in PRIVATE_USES
        mend = Mend(action="change-device", subject=device.id, values=(("is_covered_when_home", True),))
        if device.is_covered_when_home is None and not is_private:
            yield this.not_run(
                device.id,
                f"{device.name}: whether it is covered or off while people are in is not decided",
                cure="Decide it with the household, and note it",
                mends=(Mend(action="tell", subject=device.id, values=(("field", "is_covered_when_home"),)),),
            )
            continue
        yield this.finding(
            device.id,
            _message(device, room if is_private else None),
            cure=_cure(sheet, is_private=is_private),
            mends=(mend,),
            sketches=(Sketch(role="fault", storey=place.storey, points=(here,), label=device.name),),
            related=() if room is None else (room.id,),
        )


def _message(device: Device, private: Space | None) -> str:
    how = "is open while people are in" if device.is_covered_when_home is False else "may be open at any hour"
    where = "" if private is None else f", in {private.name}, where people sleep, wash or undress"
    return f"{device.name}: it {how}{where}"


def _cure(sheet: CameraSheet, *, is_private: bool) -> str:
    cover = "shut its own cover" if sheet.has_cover else "cut its supply, for it has no cover of its own,"
    if is_private:
        return (
            f"Take it out of this room, or get the written consent of every adult who lives there and {cover}"
            " whenever anybody is in"
        )
    return f"Have the alarm {cover} whenever anybody is in"
