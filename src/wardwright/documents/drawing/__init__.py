"""Drawings as recorded verbs."""
