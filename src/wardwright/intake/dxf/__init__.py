"""A house from a DXF drawing: the plan of one storey."""
