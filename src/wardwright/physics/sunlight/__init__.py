"""Sunlight: where the sun stands all the year, and what it shines on through panes."""
