"""What is said beside a camera's numbers: task words of both editions, mask, neighbours, private rooms, night."""

from __future__ import annotations

from wardwright.model.camera_rows import CameraEdition
from wardwright.model.catalogue import Catalogue
from wardwright.model.device_sheets import CameraSheet
from wardwright.model.site import Site
from wardwright.rules.camera_view import View, steepest_face_deg, task_of

EDITIONS: tuple[CameraEdition, ...] = ("2014", "2025")
NO_TASK = "too coarse"
"""In place of a task word, where the picture is dense enough for none."""


def camera_notes(
    house: Site,
    catalogue: Catalogue,
    view: View,
    *,
    sheet: CameraSheet,
    edition: CameraEdition,
    is_outside: bool,
) -> tuple[str, ...]:
    """Facts that go with one camera's answer.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Tasks and limits.
    view : View
        What the camera shows and sees.
    sheet : CameraSheet
        Its lens and lamp.
    edition : {"2014", "2025"}
        Whose task words count.
    is_outside : bool
        Whether it hangs in the open.

    Returns
    -------
    tuple of str
        Each a short sentence without a full stop.
    """
    return (
        *_words(catalogue, view),
        *_steepness(house, catalogue, view),
        *(_beyond(view) if is_outside else ()),
        *_others(house, view),
        f"at night its own lamp carries {sheet.night_reach_m:g} m"
        if sheet.night_reach_m > 0.0
        else "it has no lamp of its own, or its sheet is silent: by night it may show nothing",
        "the edition of 2014 was withdrawn in October 2025: check which one is asked for"
        if edition == "2014"
        else "the densities of the edition of 2025 are from trade pages: check with the standard",
    )


def _words(catalogue: Catalogue, view: View) -> list[str]:
    found = []
    for one in view.shown:
        if one.density > 0.0:
            words = ", ".join(
                f"{task_word(catalogue, each, one.density)} by the edition of {each}" for each in EDITIONS
            )
            found.append(f"at {one.named.name}: {words}")
    return found


def _steepness(house: Site, catalogue: Catalogue, view: View) -> list[str]:
    steepest = steepest_face_deg(catalogue, house.place.rule_pack)
    best = view.deciding
    if best is None or best.density == 0.0 or best.down_deg <= steepest:
        return []
    return [f"at {best.named.name} faces are looked down at by {best.down_deg:.0f} degrees: hats hide them"]


def _beyond(view: View) -> list[str]:
    if view.beyond_m2 is None:
        return ["how much it sees beyond the boundary is not computable: no boundary is drawn"]
    return [mask_words(view)] if view.mask else []


def _others(house: Site, view: View) -> list[str]:
    found = []
    if view.windows:
        found.append(f"sees windows or walls of neighbours: {', '.join(view.windows)}")
    if view.private:
        found.append("sees into private rooms: " + ", ".join(house.space(one).name for one in view.private))
    return found


def mask_words(view: View) -> str:
    """A mask in words."""
    if not view.is_mask_of_use:
        return f"a mask would cover {100.0 * view.mask_share:.0f} % of the picture: turn the camera first"
    lowest = max(down for _, down in view.mask)
    share = f"{100.0 * lowest:.0f} %"
    text = f"a mask over the upper part of the picture, down to {share} of its height at most, hides what is beyond"
    if view.own_share_masked > 0.0:
        text += f"; it hides {100.0 * view.own_share_masked:.0f} % of our own ground in view as well"
    return text


def task_word(catalogue: Catalogue, edition: CameraEdition, density: float) -> str:
    """The task word of a density."""
    task = task_of(catalogue, edition, density)
    return NO_TASK if task is None else task.name
