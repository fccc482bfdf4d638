"""How soon somebody gets from here to there."""
