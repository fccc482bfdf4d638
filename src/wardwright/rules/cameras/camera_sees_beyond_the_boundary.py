"""CAM105: a camera outside that looks into the street or at a neighbour."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.camera_kit import outside_cameras
from wardwright.rules.camera_view import variants, view_of
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.registry import exactly, rule, weakest


@rule(
    code="CAM105",
    name="camera-sees-beyond-the-boundary",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own", "edpb-3-2019"),
    follows="devices",
)
def camera_sees_beyond_the_boundary(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Cameras outside that see ground, windows or houses beyond the boundary.

    What it checks
        For each camera outside, how much open ground beyond the boundary it shows well enough to make somebody out,
        past walls, fences and other storeys, and which neighbours' windows and buildings it sees. A square metre is
        let pass.
    Why it matters
        A picture of the street or of a neighbour brings duties in Europe and the United Kingdom: a reason, a sign,
        erasing in time, answering whoever asks for their pictures. A neighbour who feels watched complains.
    How to put it right
        Turn the camera down or along the house, use a longer lens, or cover that part of the picture with a mask:
        question 19 gives its corners. Show the customer the view.
    What it cannot know
        Whether a mask is set already, gaps in hedges, leaves that fall, and what the law of the place asks.

    Parameters
    ----------
    site : Site
        The house, its boundary and what stands about it.
    catalogue : Catalogue
        The cameras' sheets and the limit.

    Yields
    ------
    Finding
        One for each such camera, with the ground that it sees [m2].

    Raises
    ------
    NotComputable
        If there is no camera outside.
    """
    this = camera_sees_beyond_the_boundary
    limit = catalogue.limit("camera-beyond-boundary", site.place.rule_pack).value
    for device, sheet in outside_cameras(site, catalogue):
        view = view_of(site, device, sheet)
        if view.beyond_m2 is None:
            yield this.not_run(
                device.id, f"{device.name}: no boundary is drawn", cure="Add the boundary of what is ours"
            )
            continue
        if view.beyond_m2 <= limit and not view.windows:
            continue
        mends: list[Mend] = []
        for action, values, changed in variants(site, catalogue, device):
            other = catalogue.sheet(changed.sheet).camera
            after = None if other is None else view_of(site, changed, other)
            is_clear = after is not None and (after.beyond_m2 or 0.0) <= limit and not after.windows
            if after is not None and is_clear and any(one.density > 0.0 for one in after.shown):
                mends.append(Mend(action=action, subject=device.id, values=values))
                break
        place = standing(site, device)
        windows = f", and {', '.join(view.windows)}" if view.windows else ""
        yield this.finding(
            device.id,
            f"{device.name}: it sees ground beyond the boundary{windows}",
            cure="Turn it down, use a longer lens, or cover that part of the picture with a mask",
            estimate=exactly(view.beyond_m2, "m2", weakest("told", device.basis_of("mount"))),
            limit=limit,
            mends=tuple(mends),
            sketches=(
                Sketch(
                    role="fault", storey=place.storey, points=((place.x_m, place.y_m),), label=device.name
                ),
            ),
        )
