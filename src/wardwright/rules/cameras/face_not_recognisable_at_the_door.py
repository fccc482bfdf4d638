"""CAM107: a camera at a door whose picture does not tell who stands there."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.camera_kit import outside_cameras
from wardwright.rules.camera_view import face_task, variants, view_of
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.registry import rule, weakest


@rule(
    code="CAM107",
    name="face-not-recognisable-at-the-door",
    since="0.1",
    stage="trial use",
    mark="from memory",
    severity="check with the standard",
    sources=("iec-62676-4-2014", "iec-62676-4-2025"),
    follows="devices",
)
def face_not_recognisable_at_the_door(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Entry doors that no camera outside shows well enough to tell a face that is known.

    What it checks
        For each entry door, how densely the cameras outside show a face before it, past whatever is in the way.
        Held against the density of IEC 62676-4 from which on a known face is told: 125 px/m by the edition of 2014,
        250 by that of 2025; the needs say which. The figures are restated, not read: check them with the standard.
    Why it matters
        The picture at the door is the one that is asked for afterwards. A hat and a shoulder help nobody.
    How to put it right
        Turn the camera to the door, hang it lower, or use a longer lens: the one given was tried.
    What it cannot know
        The light at the door by night, rain on the lens, and how the picture is squeezed for sending.

    Parameters
    ----------
    site : Site
        The house, its cameras and the edition that is asked for.
    catalogue : Catalogue
        The cameras' sheets and the tasks.

    Yields
    ------
    Finding
        One for each such door, with the density there [px/m].

    Raises
    ------
    NotComputable
        If there is no camera outside, no entry door, or no task that tells a face.
    """
    this = face_not_recognisable_at_the_door
    used = outside_cameras(site, catalogue)
    face = face_task(catalogue, site.needs.camera_edition)
    doors = sorted((one for one in site.openings if one.is_entry_door), key=lambda one: one.id)
    if face is None:
        raise NotComputable("no task of that edition tells a face", cure="Add its [[task]] rows")
    if not doors:
        raise NotComputable(
            "no opening is told to be an entry door",
            cure="Say which door the household comes in by, such as 'set front-door entry' in notes",
        )
    left = catalogue.figure("density-left")
    for door in doors:
        best = [
            (one.density, device, one)
            for device, sheet in used
            for one in view_of(site, device, sheet).shown
            if one.named.ident == door.id
        ]
        if not best:
            continue  # it leads to no open air
        density, device, one = max(best, key=lambda each: (each[0], each[1].id))
        if density >= face.density_px_m:
            continue
        x, y, _ = one.named.at
        yield this.finding(
            door.id,
            f"{door.name}: no camera shows a face there well enough to {face.name} it"
            + (f"; for {device.name}, {one.why_not}" if one.why_not else ""),
            cure="Turn the camera to the door, hang it lower, or use a longer lens",
            estimate=Estimate(
                value=density * left.value,
                low=density * left.low,
                high=density * left.high,
                unit="px/m",
                basis=weakest("default", device.basis_of("mount")),
            ),
            limit=face.density_px_m,
            mends=tuple(
                Mend(action=action, subject=device.id, values=values)
                for action, values, changed in variants(site, catalogue, device)
                if (sheet := catalogue.sheet(changed.sheet).camera) is not None
                and any(
                    other.named.ident == door.id and other.density >= face.density_px_m
                    for other in view_of(site, changed, sheet).shown
                )
            )[:2],
            sketches=(Sketch(role="fault", storey=one.named.storey, points=((x, y),), label=door.name),),
            related=tuple(each.id for each, _ in used),
        )
