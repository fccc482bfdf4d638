"""Ink: each writer turns content into bytes."""
