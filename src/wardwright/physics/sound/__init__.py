"""How loud a sounder is where somebody lies, stands or lives next door."""
