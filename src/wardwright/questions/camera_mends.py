"""What would mend a camera's view: turned down, hung lower, another lens, a mask, a cover."""

from __future__ import annotations

from wardwright.model.camera_rows import CameraEdition
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.rules.camera_view import View, face_task, mask_mend, variants, view_of
from wardwright.rules.finding import Mend

BETTER = 1.05
"""A density is better if it is at least so many times as much. [-] (assumption)"""
MOST = 3
"""How many changes of the view are named. [-]"""


def camera_mends(
    house: Site, catalogue: Catalogue, device: Device, *, view: View, edition: CameraEdition
) -> tuple[Mend, ...]:
    """Cures of one camera's view, each tried on the model, what tells a face first.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        The sheets to choose from.
    device : Device
        The camera.
    view : View
        What it shows and sees as it is.
    edition : {"2014", "2025"}
        Whose task words count.

    Returns
    -------
    tuple of Mend
        A cover where it sees into a private room, a mask where it sees beyond the boundary, then changes of its view.
    """
    found: list[Mend] = []
    if view.private and device.is_covered_when_home is not True:
        found.append(
            Mend(action="change-device", subject=device.id, values=(("is_covered_when_home", True),))
        )
    if view.is_mask_of_use:
        found.append(mask_mend(device, view))
    return (*found, *_of_the_view(house, catalogue, device, view=view, edition=edition))


def _of_the_view(
    house: Site, catalogue: Catalogue, device: Device, *, view: View, edition: CameraEdition
) -> tuple[Mend, ...]:
    face = face_task(catalogue, edition)
    needed = 0.0 if face is None else face.density_px_m
    now, beyond = _deciding(view), view.beyond_m2 or 0.0
    tried: list[tuple[tuple[bool, float, float], Mend]] = []
    for action, values, changed in variants(house, catalogue, device):
        sheet = catalogue.sheet(changed.sheet).camera
        if sheet is None:
            continue
        after = view_of(house, changed, sheet)
        density, left = _deciding(after), after.beyond_m2 or 0.0
        is_denser = now < needed and density >= now * BETTER and density > 0.0 and left <= beyond
        sees_less = left < beyond / BETTER and density > 0.0 and density >= min(now, needed)
        if is_denser or sees_less:
            gain = Estimate(value=density, low=density, high=density, unit="px/m", basis="default")
            rank = (density < needed, left, -density)
            tried.append((rank, Mend(action=action, subject=device.id, values=values, gain=gain)))
    tried.sort(key=lambda one: one[0])
    return tuple(mend for _, mend in tried[:MOST])


def _deciding(view: View) -> float:
    """The density where it matters most; 0 where nothing is shown. [px/m]"""
    return 0.0 if view.deciding is None else view.deciding.density
