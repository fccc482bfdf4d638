"""Plain arrays: sight, rasters, outlines, routes. Knows no domain word but wall-like panel."""
