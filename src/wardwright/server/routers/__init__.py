"""One file a noun of the interface."""
