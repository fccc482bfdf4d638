"""The server on this machine: read, call, answer. It holds no rule, no formula and no default."""
