"""The three houses that each rule has."""

from __future__ import annotations

from typing import NamedTuple

from wardwright.model.site import Site


class Houses(NamedTuple):
    """Three houses for one rule."""

    fires: Site
    silent: Site
    cannot_run: Site
    is_mend_computed: bool = True
    """Whether each finding of the first house carries a mend."""
