"""Whether the parts of a site fit together, one file a subject; `validation` asks them all."""
