"""The questions a fitter asks, one file each, and the table of them."""
