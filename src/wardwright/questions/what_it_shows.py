"""Question 19: what will this camera show at the gate, and how much beyond the boundary does it see?"""

from __future__ import annotations

from functools import lru_cache

from wardwright.model.camera_rows import CameraEdition, Task
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import CameraSheet
from wardwright.model.estimate import Driver, Estimate
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.video.density import distance_of
from wardwright.physics.video.from_site import Shown, is_inside
from wardwright.questions.answer import Answer, PartAnswer, Verdict, about_the_site
from wardwright.questions.camera_mends import camera_mends
from wardwright.questions.camera_notes import camera_notes, task_word
from wardwright.rules.camera_kit import cameras
from wardwright.rules.camera_view import View, face_task, view_of
from wardwright.rules.kit import devices_of
from wardwright.rules.registry import weakest

NUMBER = 19
MEASURE = "density of the picture where it matters most"
NOTHING_SHOWN = "no door, gate or drive that is drawn is in its picture"


def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """One answer for each camera."""
    return _answers(site, catalogue, with_mends=True)


def without_mends(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """The same answers, but for what would mend them."""
    return _answers(site, catalogue, with_mends=False)


def _answers(site: Site, catalogue: Catalogue, *, with_mends: bool) -> tuple[Answer, ...]:
    if not devices_of(site, catalogue, "camera"):
        return (about_the_site(NUMBER, MEASURE, site=site, reason="no camera"),)
    edition = site.needs.camera_edition
    return tuple(
        _answer(site.bare, catalogue, device, sheet=sheet, edition=edition, with_mends=with_mends)
        for device, sheet in cameras(site, catalogue)
    )


@lru_cache(maxsize=256)
def _answer(
    house: Site,
    catalogue: Catalogue,
    device: Device,
    *,
    sheet: CameraSheet,
    edition: CameraEdition,
    with_mends: bool,
) -> Answer:
    view = view_of(house, device, sheet)
    best = view.deciding
    estimate = None if best is None or best.density == 0.0 else _density(catalogue, device, best)
    is_outside = not is_inside(house, device)
    is_covered = device.is_covered_when_home is True
    verdict = _verdict(
        view, estimate, face=face_task(catalogue, edition), is_outside=is_outside, is_covered=is_covered
    )
    return Answer(
        question=NUMBER,
        subject=device.name,
        subject_id=device.id,
        measure=MEASURE
        if estimate is None or best is None
        else f"density of the picture at {best.named.name}",
        estimate=estimate,
        reason=None if estimate is not None else NOTHING_SHOWN,
        verdict=verdict,
        parts=_parts(catalogue, device, view, edition=edition),
        notes=camera_notes(house, catalogue, view, sheet=sheet, edition=edition, is_outside=is_outside),
        mends=camera_mends(house, catalogue, device, view=view, edition=edition)
        if with_mends and verdict != "good"
        else (),
        sketches=_sketches(house, catalogue, device, view=view, edition=edition),
    )


def _density(catalogue: Catalogue, device: Device, one: Shown) -> Estimate:
    """The density at one place, less what focus, movement and noise take of it."""
    left = catalogue.figure("density-left")
    swing = one.density * (left.high - left.low)
    return Estimate(
        value=one.density * left.value,
        low=one.density * left.low,
        high=one.density * left.high,
        unit="px/m",
        drivers=(Driver(name="focus, movement and noise", swing=swing, basis="default"),),
        basis=weakest("default", device.basis_of("mount"), device.basis_of("tilt_deg")),
    )


def _verdict(
    view: View, estimate: Estimate | None, *, face: Task | None, is_outside: bool, is_covered: bool
) -> Verdict:
    """How good a view is: a face must be told; nothing private may be seen, nor what is beyond the boundary."""
    if view.private and not is_covered:
        return "bad"
    if face is None:
        return "unknown"
    if estimate is None or estimate.value < face.density_px_m:
        return "bad"
    sees_out = is_outside and (view.beyond_m2 is None or view.beyond_m2 > 0.0 or bool(view.windows))
    return "thin" if estimate.low < face.density_px_m or sees_out else "good"


def _parts(
    catalogue: Catalogue, device: Device, view: View, *, edition: CameraEdition
) -> tuple[PartAnswer, ...]:
    parts = []
    for one in view.shown:
        if one.density > 0.0:
            parts.append(PartAnswer(name=f"at {one.named.name}", estimate=_density(catalogue, device, one)))
        else:
            parts.append(PartAnswer(name=f"at {one.named.name}", estimate=None, reason=one.why_not))
    face = face_task(catalogue, edition)
    if face is not None:
        far = float(distance_of(face.density_px_m, view.lens.across, view.lens.angle))
        told = Estimate(value=far, low=far, high=far, unit="m", basis="told")
        parts.append(PartAnswer(name=f"enough to {face.name} a face, straight ahead, up to", estimate=told))
    for name, area in (
        ("street that it sees", view.street_m2),
        ("other ground beyond the boundary", view.others_m2),
    ):
        if area is not None:
            parts.append(
                PartAnswer(
                    name=name,
                    estimate=Estimate(
                        value=area, low=area, high=area, unit="m2", basis=device.basis_of("mount")
                    ),
                )
            )
    return tuple(parts)


def _sketches(
    house: Site, catalogue: Catalogue, device: Device, *, view: View, edition: CameraEdition
) -> tuple[Sketch, ...]:
    """A task word at each place that it shows, and one line: to the place that matters most."""
    found = []
    for one in view.shown:
        if one.density > 0.0:
            x, y, _ = one.named.at
            word = task_word(catalogue, edition, one.density)
            found.append(Sketch(role="task", storey=one.named.storey, points=((x, y),), label=word))
    best, at = view.deciding, standing(house, device)
    if best is not None and best.density > 0.0:
        x, y, _ = best.named.at
        found.append(Sketch(role="task-line", storey=at.storey, points=((at.x_m, at.y_m), (x, y))))
    return tuple(found)
