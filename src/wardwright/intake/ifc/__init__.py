"""A house from an IFC file, 2x3 or 4."""
