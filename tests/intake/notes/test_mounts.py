from __future__ import annotations

import pytest

from common.cottage import read
from wardwright.errors import NotesError
from wardwright.model.device import CeilingMount, FreeMount, OpeningMount, WallMount
from wardwright.model.placement import FACE_GAP_M, standing


@pytest.mark.parametrize(
    ("line", "place", "heading"),
    [
        # The hall is 0 to 1.8 by 0 to 4.6; a device's middle stands off its face.
        ("keypad hall west, 0.5 from south, 1.4 m", (FACE_GAP_M, 0.5, 1.4), 0),
        ("keypad hall east, 0.5 from north, 1.4 m", (1.8 - FACE_GAP_M, 4.1, 1.4), 180),
        ("keypad hall north, 0.5 from west, 4'7\"", (0.5, 4.6 - FACE_GAP_M, 1.397), -90),
        ("sounder hall outside west, 0.5 from south, 2.3 m", (-0.3 - FACE_GAP_M, 0.5, 2.3), 180),
        ("movement-detector hall corner north-west 2.2 m", (0.1, 4.6 - FACE_GAP_M, 2.2), -45),
        ("movement-detector hall corner west-north 2.2 m", None, 0),
        ("movement-detector hall corner south-east 2.2 m", (1.7, FACE_GAP_M, 2.2), 135),
        ("movement-detector hall ceiling 0.9 from west, 1.0 from south", (0.9, 1.0, 2.37), 0),
        ("keyfob hall free 0.9 from west, 1.0 from south, 0.8 m", (0.9, 1.0, 0.8), 0),
    ],
)
def test_a_device_hangs_where_the_line_says(
    line: str, place: tuple[float, ...] | None, heading: float
) -> None:
    if place is None:
        with pytest.raises(NotesError, match=r"'west-north' is not a corner\. Did you mean 'north-west'"):
            read(line)
        return
    site = read(line)
    stands = standing(site, site.devices[0])
    assert (stands.x_m, stands.y_m, stands.height_m) == pytest.approx(place)
    assert stands.heading_deg % 360 == pytest.approx(heading % 360)
    assert site.devices[0].basis_of("mount") == "told"


@pytest.mark.parametrize(
    ("line", "mount"),
    [
        ("keypad hall east", WallMount),
        ("movement-detector hall ceiling", CeilingMount),
        ("keyfob hall", FreeMount),
        ("contact front-door", OpeningMount),
    ],
)
def test_a_place_that_is_not_told_is_a_guess(line: str, mount: type) -> None:
    (device,) = read(line).devices
    assert isinstance(device.mount, mount)
    assert device.basis_of("mount") == ("told" if mount is OpeningMount else "guessed")


def test_a_guessed_place_keeps_clear_of_doors_and_a_told_one_is_refused_there() -> None:
    site = read("keypad hall south 1.4 m")
    door, mount = site.opening("front-door"), site.devices[0].mount
    assert isinstance(mount, WallMount)
    assert mount.wall == door.wall
    assert abs(mount.offset_m - door.offset_m) > door.width_m / 2
    with pytest.raises(NotesError, match="it would hang in front-door"):
        read("keypad hall south, 0.9 from west, 1.4 m")
    # Over the door there is wall.
    assert read("keypad hall south, 0.9 from west, 2.2 m").devices


def test_a_contact_says_what_it_knows() -> None:
    (device,) = read("contact front-door gap 12 mm, electronics on leaf").devices
    assert device.mount == OpeningMount(opening="front-door", electronics_on="leaf", gap_m=0.012)
    (plain,) = read("contact front-door").devices
    assert isinstance(plain.mount, OpeningMount)
    assert plain.mount.gap_m is None


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("keypad hall 1.4 m", "nothing says where in hall the keypad is"),
        ("keypad hall corner north-west, 0.4 from west", "a corner needs nothing else"),
        ("contact front-door ceiling", "needs no place"),
        ("contact front-door gap 3", "gap_m cannot be so"),
        ("keypad hall east gap 3 mm", "belong to a contact"),
        (
            "keypad den east\nstorey up\nden 2 x 2 at 0, 0\nnook 2 x 2 against den east, open",
            "no wall on that side of den",
        ),
    ],
)
def test_what_cannot_be_is_refused(line: str, message: str) -> None:
    with pytest.raises(NotesError, match=message):
        read(line)
