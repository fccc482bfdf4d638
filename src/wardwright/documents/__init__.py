"""Content first, ink later: what people read."""
