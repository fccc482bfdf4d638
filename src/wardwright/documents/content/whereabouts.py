"""Which storey and which things an answer is about, so that a long list can be cut down."""

from __future__ import annotations

from wardwright.model.device import OpeningMount
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.questions.answer import Answer


def storeys_by_thing(site: Site) -> dict[str, str]:
    """The storey of each thing of a site that stands on one, by its id.

    Parameters
    ----------
    site : Site
        The house and all in it.

    Returns
    -------
    dict of str
        Without what is nowhere, such as the programme or the weather.

    Examples
    --------
    >>> from wardwright.store.samples import read_sample
    >>> storeys_by_thing(read_sample("terrace"))["bathroom-window"]
    'first'
    """
    walls = {wall.id: wall.storey for wall in site.walls}
    found = {space.id: space.storey for space in site.spaces}
    found |= {thing.id: thing.storey for thing in site.fixtures} | {
        thing.id: thing.storey for thing in site.outlets
    }
    found |= {opening.id: walls[opening.wall] for opening in site.openings}
    found |= {target.id: found[target.space] for target in site.targets if target.space in found}
    found |= {person.id: found[person.bed] for person in site.people if person.bed in found}
    return found | {device.id: standing(site, device).storey for device in site.devices}


def things_of(site: Site, answer: Answer) -> tuple[str, ...]:
    """Ids of what an answer is about: its subject, the leaf that this is on, its zone, and what its mends change.

    Parameters
    ----------
    site : Site
        The house and all in it.
    answer : Answer
        Of any question.

    Returns
    -------
    tuple of str
        Its subject first; each once.
    """
    found = [answer.subject_id]
    mounts = {device.id: device.mount for device in site.devices}
    mount = mounts.get(answer.subject_id)
    if isinstance(mount, OpeningMount):
        found.append(mount.opening)
    found += [one for one, on in mounts.items() if isinstance(on, OpeningMount) and on.opening == found[0]]
    found += [one for zone in site.zones if zone.id == found[0] for one in zone.devices]
    found += [mend.subject for mend in answer.mends]
    return tuple(dict.fromkeys(found))
