"""Siting rules, one file each, named as the fault."""
