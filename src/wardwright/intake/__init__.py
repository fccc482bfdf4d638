"""A house from bytes. What is guessed is marked."""
