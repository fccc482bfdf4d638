"""What a camera shows: density of picture elements, edges of the picture, and what stands in the way."""
