"""One file a command; thin: read, call, answer."""
