"""Radio within a house: what distance, walls, floors, leaves and bodies take from a level."""
