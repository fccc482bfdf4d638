"""Engines that do not know each other; each has one thin `from_site` module."""
