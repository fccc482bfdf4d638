"""CAM106: a camera that looks at people where they undress or sleep."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.camera_kit import inside_cameras
from wardwright.rules.camera_view import view_of
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.registry import exactly, rule, weakest


@rule(
    code="CAM106",
    name="camera-in-a-private-space",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
    follows="devices",
)
def camera_in_a_private_space(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Cameras that hang in a bedroom, a bathroom or a toilet, or look into one.

    What it checks
        For each camera indoors, which bedrooms, bathrooms and toilets it hangs in or sees into, leaves standing as
        they usually do. One that is covered or off while people are in is let pass.
    Why it matters
        Nobody expects to be filmed there, and whoever has the app sees it: remote pictures are a known means of
        abuse between partners.
    How to put it right
        Take it away or turn it; else have it covered while people are in, and get the written consent of all adults.
    What it cannot know
        Who agreed to it, who else has the app, and doors that are left open now and then.

    Parameters
    ----------
    site : Site
        The house and its cameras.
    catalogue : Catalogue
        The cameras' sheets.

    Yields
    ------
    Finding
        One for each such camera, with how many such rooms it sees.

    Raises
    ------
    NotComputable
        If there is no camera indoors.
    """
    this = camera_in_a_private_space
    for device, sheet in inside_cameras(site, catalogue):
        private = view_of(site, device, sheet).private
        if not private or device.is_covered_when_home is True:
            continue
        place = standing(site, device)
        names = ", ".join(site.space(one).name for one in private)
        yield this.finding(
            device.id,
            f"{device.name}: it sees people in {names}",
            cure="Take it away or turn it; else cover it while people are in, with the consent of all adults",
            estimate=exactly(float(len(private)), "spaces", weakest("told", device.basis_of("mount"))),
            limit=0.0,
            mends=(
                Mend(action="change-device", subject=device.id, values=(("is_covered_when_home", True),)),
            ),
            sketches=(
                Sketch(
                    role="fault", storey=place.storey, points=((place.x_m, place.y_m),), label=device.name
                ),
            ),
            related=private,
        )
