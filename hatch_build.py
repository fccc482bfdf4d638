"""Builds the page while the package is built or installed; web/build.py does the work."""

from __future__ import annotations

import importlib.util
from pathlib import Path
from types import ModuleType
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface


class PageHook(BuildHookInterface[Any]):
    """Builds the page if it is not built of these sources already."""

    PLUGIN_NAME = "custom"

    def _page(self) -> ModuleType:
        place = Path(self.root) / "web" / "build.py"
        spec = importlib.util.spec_from_file_location("wardwright_page", place)
        if spec is None or spec.loader is None:
            raise RuntimeError(f"{place} is not there")
        module = importlib.util.module_from_spec(spec)
        spec.loader.exec_module(module)
        return module

    def dependencies(self) -> list[str]:
        """A Node.js as a wheel, asked for only where it is needed and the machine has none."""
        page = self._page()
        return [page.NODE_WHEEL] if page.is_wanted() and page.own_node() is None else []

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Build it; an editable install gets the tools of the tests as well."""
        del build_data
        page = self._page()
        if page.is_wanted():
            page.build(with_tools=version == "editable")
