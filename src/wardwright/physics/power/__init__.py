"""How long cells and stand-by batteries last."""
