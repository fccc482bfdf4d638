"""Edits: each makes a new site that shares all that did not change."""

from __future__ import annotations

from typing import Any

from wardwright.model.device import Device, Mount
from wardwright.model.site import Site


def replaced(site: Site, **changes: Any) -> Site:  # noqa: ANN401 - a site's fields have no common type
    """A site with some of its fields replaced.

    Parameters
    ----------
    site : Site
        The site.
    **changes
        New values by the name of the field, already of the right type.

    Returns
    -------
    Site
        A new site; what is not named is shared with the old one.

    Raises
    ------
    KeyError
        If a site has no such field.

    Examples
    --------
    >>> from wardwright.model.fabric import Storey
    >>> hut = Site(name="hut", storeys=(Storey(id="ground", name="ground floor", elevation_m=0.0),))
    >>> cabin = replaced(hut, name="cabin")
    >>> cabin.name, cabin.storeys is hut.storeys
    ('cabin', True)
    """
    for name in changes:
        if name not in Site.model_fields:
            raise KeyError(name)
    return site.model_copy(update=changes)


def moved(site: Site, device_id: str, mount: Mount) -> Site:
    """A site with one device fixed somewhere else.

    Parameters
    ----------
    site : Site
        The site.
    device_id : str
        The device.
    mount : Mount
        Where it goes.

    Returns
    -------
    Site
        A new site that shares everything but that device.

    Raises
    ------
    KeyError
        If there is no such device.
    """
    return with_device(site, site.device(device_id).model_copy(update={"mount": mount}))


def with_device(site: Site, device: Device) -> Site:
    """A site with one device put in, in the place of the one with its id where there is one.

    Parameters
    ----------
    site : Site
        The site.
    device : Device
        The device.

    Returns
    -------
    Site
        A new site that shares everything but that device.
    """
    is_new = all(one.id != device.id for one in site.devices)
    kept = tuple(device if one.id == device.id else one for one in site.devices)
    return replaced(site, devices=(*kept, device) if is_new else kept)
