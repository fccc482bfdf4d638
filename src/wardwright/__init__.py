"""Ask a house about its intruder alarm, before anything is stuck to a wall."""

__version__ = "0.1.0"
