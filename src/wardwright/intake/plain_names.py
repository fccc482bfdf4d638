"""Names as a drawing program wrote them, made such as can be shown."""

from __future__ import annotations

from wardwright.model.site import Site
from wardwright.model.wording import is_plain, made_plain

_NAMED = ("storeys", "spaces", "openings", "stairs", "fixtures")


def with_plain_names(site: Site) -> Site:
    """The house, its names without tabs, line ends and whatever else cannot be shown."""
    changes: dict[str, object] = {} if is_plain(site.name) else {"name": made_plain(site.name)}
    for kind in _NAMED:
        entries = getattr(site, kind)
        if not all(is_plain(entry.name) for entry in entries):
            changes[kind] = tuple(
                entry.model_copy(update={"name": made_plain(entry.name) or entry.id}) for entry in entries
            )
    return site.model_copy(update=changes) if changes else site
