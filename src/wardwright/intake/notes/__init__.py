"""A house, or facts about one, from lines of notes."""
