"""What a site is: frozen records, where things are, and whether they hold together."""
