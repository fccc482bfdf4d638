"""Jobs: one SQLite file each, with every revision of its site, what was attached, and the answers as signed."""
